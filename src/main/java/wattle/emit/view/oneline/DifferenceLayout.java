package wattle.emit.view.oneline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;

/**
 * Places the services and panels of two revisions in one picture. A house is a tree from its services, so that no graph has
 * to be laid out: each panel stands in the column of its depth, as high as its feeder, or as far beneath as the panels above
 * it need.
 */
final class DifferenceLayout {
  private static final double BETWEEN_COLUMNS = 84;

  /** Left of a panel, where the signs of its lines stand. */
  private static final double SIGNS = 34;

  /** Between the signs and the column before, where feeders go up and down. */
  private static final double TRACKS = BETWEEN_COLUMNS - SIGNS - 6;

  private static final double BETWEEN_BLOCKS = 36;

  private final Revisions revisions;
  private final Map<String, DifferencePanel.Drawn> panels = new LinkedHashMap<>();
  private final Sketch sketch = new Sketch();
  private final Map<Integer, Double> free = new HashMap<>();
  private final Map<String, double[]> corners = new LinkedHashMap<>();
  private final Map<Integer, Double> widths = new HashMap<>();
  private final Map<String, Integer> depths = new LinkedHashMap<>();
  private final Map<Double, List<Link>> links = new LinkedHashMap<>();

  private DifferenceLayout(Revisions revisions) {
    this.revisions = revisions;
    revisions.panels().forEach(key -> panels.put(key, DifferencePanel.of(revisions, key)));
  }

  static Sketch of(Revisions revisions, Map<String, Block> services) {
    DifferenceLayout layout = new DifferenceLayout(revisions);
    layout.draw(services);
    return layout.sketch;
  }

  private void draw(Map<String, Block> services) {
    double serviceWidth = services.values().stream().mapToDouble(Block::width).max().orElse(0);
    services.keySet().forEach(service -> revisions.fedBy(service).forEach(panel -> depth(panel, 0)));
    // What nothing feeds, or only itself, is a finding; it is shown all the same.
    panels.keySet().forEach(panel -> depth(panel, 0));
    double y = 0;
    for (Map.Entry<String, Block> service : services.entrySet()) {
      Block block = service.getValue();
      List<String> fed = revisions.fedBy(service.getKey());
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
    corners.put(panel, new double[]{x, y});
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
            link(new Link(corner[0] + drawn.width(), corner[1] + height, to[0], to[1] + panels.get(fed).entry(),
                drawn.feeders().get(fed).line()));
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
        sketch.line(link.x1, link.y1, x, link.y1, link.stroke).line(x, link.y1, x, link.y2, link.stroke).line(x, link.y2, link.x2, link.y2,
            link.stroke);
      }
    }
  }
}
