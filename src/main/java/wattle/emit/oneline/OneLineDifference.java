package wattle.emit.oneline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wattle.compare.Comparison;
import wattle.compare.Thing;
import wattle.emit.drawing.Drawing;
import wattle.emit.drawing.Legend;
import wattle.emit.drawing.Plate;
import wattle.emit.drawing.Shape;
import wattle.emit.drawing.Shape.Anchor;
import wattle.emit.drawing.Shape.Stroke;
import wattle.emit.drawing.Sketch;
import wattle.model.House;
import wattle.model.Service;

/**
 * The one-line diagrams of two revisions in one: what both have, what came, what went, and what changed with what it was.
 * A house is a tree from its services, so that no graph has to be laid out: each panel stands in the column of its depth,
 * as high as its feeder, or as far beneath as the panels above it need.
 */
public final class OneLineDifference {
  private static final double BETWEEN_COLUMNS = 84;

  /** Left of a panel, where the signs of its lines stand. */
  private static final double SIGNS = 34;

  /** Between the signs and the column before, where feeders go up and down. */
  private static final double TRACKS = BETWEEN_COLUMNS - SIGNS - 6;

  private static final double BETWEEN_BLOCKS = 36;
  private static final double SIZE = 9;

  private final House before;
  private final House after;
  private final Revisions revisions;
  private final Map<String, DifferencePanel.Drawn> panels = new LinkedHashMap<>();
  private final Sketch sketch = new Sketch();
  private final Map<Integer, Double> free = new HashMap<>();
  private final Map<String, double[]> corners = new LinkedHashMap<>();
  private final Map<Integer, Double> widths = new HashMap<>();
  private final Map<String, Integer> depths = new LinkedHashMap<>();
  private final Map<Double, List<Link>> links = new LinkedHashMap<>();

  public OneLineDifference(House before, House after, Comparison comparison) {
    this.before = before;
    this.after = after;
    revisions = new Revisions(before, after, comparison);
    revisions.panels().forEach(key -> panels.put(key, DifferencePanel.of(revisions, key)));
  }

  /** The whole diagram with its legend. */
  public Drawing drawing() {
    Map<String, Block> services = services();
    double serviceWidth = services.values().stream().mapToDouble(Block::width).max().orElse(0);
    services.keySet().forEach(service -> fedBy(service).forEach(panel -> depth(panel, 0)));
    // What nothing feeds, or only itself, is a finding; it is shown all the same.
    panels.keySet().forEach(panel -> depth(panel, 0));
    double y = 0;
    for (Map.Entry<String, Block> service : services.entrySet()) {
      Block block = service.getValue();
      List<String> fed = fedBy(service.getKey());
      double top = fed.isEmpty() ? y : Math.max(y, free.getOrDefault(0, 0.0) + panels.get(fed.get(0)).entry() - block.entry());
      sketch.add(block.sketch(), 0, top);
      for (String panel : fed) {
        place(panel, top + block.entry(), serviceWidth);
      }
      links(block.width(), top + block.entry(), fed);
      y = top + block.height() + BETWEEN_BLOCKS;
    }
    panels.keySet().stream().filter(p -> !corners.containsKey(p)).toList().forEach(p -> place(p, free.getOrDefault(0, 0.0), serviceWidth));
    panels.forEach((key, drawn) -> sketch.add(drawn.sketch(), corners.get(key)[0], corners.get(key)[1]));
    panels.forEach(this::feeders);
    links.values().forEach(this::draw);
    return new Plate(sketch.shapes(), legend(), title(), description()).drawing();
  }

  private List<String> fedBy(String service) {
    return panels.keySet().stream().filter(p -> revisions.serviceOf(p).filter(service::equals).isPresent()).toList();
  }

  /** How many feeders a panel is from its service, and with it how wide each column is. */
  private void depth(String panel, int depth) {
    if (panels.containsKey(panel) && depths.putIfAbsent(panel, depth) == null) {
      widths.merge(depth, panels.get(panel).width(), Math::max);
      panels.get(panel).exits().keySet().forEach(fed -> depth(fed, depth + 1));
    }
  }

  private void place(String panel, double feeder, double serviceWidth) {
    if (corners.containsKey(panel)) {
      return;
    }
    int depth = depths.get(panel);
    double x = serviceWidth + BETWEEN_COLUMNS;
    for (int d = 0; d < depth; d++) {
      x += widths.get(d) + BETWEEN_COLUMNS;
    }
    DifferencePanel.Drawn drawn = panels.get(panel);
    double y = Math.max(free.getOrDefault(depth, Double.NEGATIVE_INFINITY), feeder - drawn.entry());
    corners.put(panel, new double[] {x, y});
    free.put(depth, y + drawn.height() + BETWEEN_BLOCKS);
    drawn.exits().entrySet().stream()
        .filter(e -> panels.containsKey(e.getKey()) && depths.get(e.getKey()) == depth + 1)
        .sorted(Map.Entry.comparingByValue())
        .forEach(e -> place(e.getKey(), y + e.getValue(), serviceWidth));
  }

  private void links(double from, double level, List<String> fed) {
    for (String panel : fed) {
      double[] corner = corners.get(panel);
      link(new Link(from, level, corner[0], corner[1] + panels.get(panel).entry(), revisions.ofPanel(panel).line()));
    }
  }

  private void feeders(String key, DifferencePanel.Drawn drawn) {
    double[] corner = corners.get(key);
    drawn.exits().forEach(
        (fed, height) -> {
          double[] to = corners.get(fed);
          if (to != null && to[0] > corner[0]) {
            link(new Link(corner[0] + drawn.width(), corner[1] + height, to[0], to[1] + panels.get(fed).entry(), drawn.feeders().get(fed).line()));
          }
        });
  }

  private record Link(double x1, double y1, double x2, double y2, Stroke stroke) {}

  private void link(Link link) {
    links.computeIfAbsent(link.x2, x -> new ArrayList<>()).add(link);
  }

  /**
   * All that come to one column, at right angles. None goes up, and each upright piece has a track of its own: the upper
   * ones turn farther to the right, so that none crosses another.
   */
  private void draw(List<Link> column) {
    List<Link> ordered = column.stream().sorted(Comparator.comparingDouble(Link::y1)).toList();
    double track = Math.min(6, TRACKS / ordered.size());
    for (int i = 0; i < ordered.size(); i++) {
      Link link = ordered.get(i);
      double x = link.x2 - SIGNS - track * i;
      if (link.y1 == link.y2) {
        sketch.line(link.x1, link.y1, link.x2, link.y2, link.stroke);
      } else {
        sketch.line(link.x1, link.y1, x, link.y1, link.stroke).line(x, link.y1, x, link.y2, link.stroke).line(x, link.y2, link.x2, link.y2, link.stroke);
      }
    }
  }

  // ---- Services

  private Map<String, Block> services() {
    Map<String, Block> blocks = new LinkedHashMap<>();
    int number = 0;
    for (String key : revisions.services()) {
      Service service = revisions.service(key);
      Block block = ServiceBlock.of(service, List.of(), "n" + number++);
      Difference difference = revisions.ofService(key);
      String was = revisions.was(Thing.Kind.SERVICE, key);
      Sketch marked = new Sketch();
      double height = block.height() + (was.isEmpty() ? 0 : 16);
      difference.ground(-30, -6, block.width() + 30, height + 8).forEach(marked::add);
      difference.sign(marked, -24, 8);
      marked.add(block.sketch(), 0, 0);
      if (!was.isEmpty()) {
        marked.fitted(0, block.height() + 10, was, SIZE, false, Anchor.START, block.width() - 4);
      }
      blocks.put(key, new Block(block.id(), marked, block.width(), height, block.entry(), block.exits(), block.label()));
    }
    return blocks;
  }

  // ---- Words

  private String title() {
    String plan = after.title().or(before::title).orElse("untitled plan");
    String was = before.revision().map(Object::toString).orElse("");
    String is = after.revision().map(Object::toString).orElse("");
    return "What changed: " + plan + (was.equals(is) ? "" : ", revision " + (was.isEmpty() ? "none" : was) + " to " + (is.isEmpty() ? "none" : is));
  }

  private String description() {
    List<String> words = new ArrayList<>();
    panels.keySet().forEach(
        key -> revisions.rows(key).stream()
            .filter(r -> r.difference() != Difference.SAME)
            .forEach(r -> words.add("panel " + key + " " + r.row().slots() + " " + r.row().what() + ": " + r.difference().name().toLowerCase(java.util.Locale.ROOT)
                + (r.was().isEmpty() ? "" : ", " + r.was()))));
    return words.isEmpty() ? "No line of a panel differs." : String.join(". ", words) + ".";
  }

  private static Legend legend() {
    List<Legend.Item> items = new ArrayList<>();
    items.add(item(Difference.ADDED, "added: a square with a plus, whole outline"));
    items.add(item(Difference.REMOVED, "removed: a circle with a minus, dashed outline and line"));
    items.add(item(Difference.CHANGED, "changed: a triangle, with what it was beneath"));
    return new Legend(
        items,
        List.of(
            "What has no sign is the same in both. Figures stand as they are in the later revision.",
            "Length: from the panel to the farthest box. A stroke across a line for each hot.",
            "An aid to planning: the adopted local code and a licensed person decide. Switch off, lock, and prove dead before work."));
  }

  private static Legend.Item item(Difference difference, String words) {
    Sketch sign = new Sketch();
    difference.ground(0, -9, 30, 18).forEach(sign::add);
    difference.sign(sign, 9.5, 0);
    List<Shape> shapes = sign.shapes();
    return new Legend.Item(shapes, 32, words);
  }
}
