package wattle.emit.view.oneline;

import guru.nidi.graphviz.engine.Engine;
import guru.nidi.graphviz.engine.Format;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Plate;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.file.Mark;
import wattle.emit.media.graphviz.DotEngine;
import wattle.emit.media.text.Escape;
import wattle.figures.HouseFigures;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Service;

/**
 * The one-line diagram of a house. Every service and panel is a block of a size that is known before the layout; the
 * layout ranks them from the service to the right and orders them so that feeders do not cross; then each block is drawn
 * where it came to stand, and the feeders between them at right angles.
 */
public final class OneLine {
  /** Room between two ranks of blocks, for the upright parts of feeders. */
  private static final double BETWEEN_RANKS = 60;

  private static final double BETWEEN_BLOCKS = 36;

  private static final String TITLE = "One-line diagram";

  private final House house;
  private final Map<String, Block> services = new LinkedHashMap<>();
  private final Map<String, PanelBlock> parts = new LinkedHashMap<>();
  private final Map<String, Block> panels = new LinkedHashMap<>();

  /**
   * @param house what is drawn: the house of the figures, or a part of it
   */
  public OneLine(House house, HouseFigures figures) {
    this.house = house;
    PanelFigures panelFigures = new PanelFigures(figures);
    int number = 0;
    for (Service service : house.services().values()) {
      services.put(service.name(),
          ServiceBlock.of(service, fedFrom(service), PanelRow.isMetered(house, service), "n" + number++, house.units()));
    }
    for (Panel panel : house.panels().values()) {
      PanelBlock block = new PanelBlock(house, figures.loads(), panel, panelFigures.of(panel));
      parts.put(panel.name(), block);
      panels.put(panel.name(), block.block("n" + number++));
    }
  }

  private List<Panel> fedFrom(Service service) {
    return house.panels().values().stream()
        .filter(p -> p.supply() instanceof PanelSupply.FromService from && from.service().equals(service.name()))
        .toList();
  }

  /** A feeder or service entrance. */
  private record Link(Block from, String panel, Block to) {
    Block.Exit exit() {
      return from.exits().get(panel);
    }
  }

  private List<Link> links() {
    List<Link> links = new ArrayList<>();
    List<Block> all = new ArrayList<>(services.values());
    all.addAll(panels.values());
    for (Panel panel : house.panels().values()) {
      for (Block block : all) {
        if (block.exits().containsKey(panel.name())) {
          links.add(new Link(block, panel.name(), panels.get(panel.name())));
        }
      }
    }
    // Graphviz keeps what a block feeds in this order, from the top, so that feeders need not cross.
    links.sort(Comparator.comparingDouble(l -> l.exit().height()));
    return links;
  }

  /** The graph that is laid out, in the DOT language: it says the same in words, for those who want to draw it otherwise. */
  public String dot() {
    StringBuilder out = new StringBuilder("digraph {\n");
    out.append("  rankdir=LR; splines=false; ordering=out; ranksep=").append(inches(Math.max(BETWEEN_RANKS, Feeders.room(mostInRank()))));
    out.append("; nodesep=").append(inches(BETWEEN_BLOCKS)).append(";\n");
    out.append("  graph [label=").append(Escape.dotString(title())).append(", labelloc=t, fontname=\"DejaVu Sans\"];\n");
    out.append("  node [shape=plain, fontname=\"DejaVu Sans\", fontsize=9];\n  edge [dir=none];\n");
    services.values().forEach(b -> node(out, b));
    panels.values().forEach(b -> node(out, b));
    for (Link link : links()) {
      out.append("  ").append(link.from.id()).append(':').append(link.exit().port()).append(":e -> ").append(link.to.id())
          .append(":in:w;\n");
    }
    return Mark.dot(out.append("}\n").toString());
  }

  /** Feeders that come to one column of blocks, each of which needs a track of its own. */
  private int mostInRank() {
    int most = 0;
    List<Link> links = links();
    List<Block> rank = new ArrayList<>(services.values());
    for (int steps = 0; steps <= panels.size() && !rank.isEmpty(); steps++) {
      List<Block> above = rank;
      rank = links.stream().filter(l -> above.contains(l.from)).map(Link::to).toList();
      most = Math.max(most, rank.size());
    }
    return most;
  }

  private static void node(StringBuilder out, Block block) {
    out.append("  ").append(block.id()).append(" [label=<").append(block.label()).append(">];\n");
  }

  private static String inches(double pixels) {
    return String.format(Locale.ROOT, "%.3f", pixels / 72);
  }

  private String title() {
    return TITLE + ": " + plan();
  }

  private String plan() {
    return house.title().orElse("untitled plan") + house.revision().map(r -> ", revision " + r).orElse("");
  }

  /** The diagram, laid out by an engine, in one piece. */
  public Drawing drawing(DotEngine engine) {
    return plate(engine).drawing();
  }

  private Plate plate(DotEngine engine) {
    Map<String, double[]> corners = corners(engine);
    Sketch sketch = new Sketch();
    List<Block> all = new ArrayList<>(services.values());
    all.addAll(panels.values());
    all.forEach(b -> sketch.add(b.sketch(), corners.get(b.id())[0], corners.get(b.id())[1]));
    Feeders feeders = new Feeders();
    for (Link link : links()) {
      double[] from = corners.get(link.from.id());
      double[] to = corners.get(link.to.id());
      feeders.add(
          from[0] + link.from.width(), from[1] + link.exit().height(), to[0], to[1] + link.to.entry());
    }
    feeders.draw(sketch);
    return new Plate(sketch.shapes(), OneLineLegend.of(house), TITLE, plan(), Plate.NO_SCALE, description());
  }

  /** The diagram for sheets: in one piece where it fits, else panel by panel. */
  public OneLineView view(DotEngine engine) {
    return new OneLineView(house, plate(engine), services, parts);
  }

  /** Upper left corner of each block, by its id. */
  private Map<String, double[]> corners(DotEngine engine) {
    Map<String, double[]> corners = new HashMap<>();
    double top = 0;
    for (String line : engine.render(dot(), Engine.DOT, Format.PLAIN).text().split("\n")) {
      String[] words = line.split(" ");
      if (words[0].equals("graph")) {
        top = 72 * Double.parseDouble(words[3]);
      } else if (words[0].equals("node")) {
        double width = 72 * Double.parseDouble(words[4]);
        double height = 72 * Double.parseDouble(words[5]);
        double x = 72 * Double.parseDouble(words[2]) - width / 2;
        double y = top - 72 * Double.parseDouble(words[3]) - height / 2;
        corners.put(words[1], new double[]{x, y});
      }
    }
    align(corners);
    return corners;
  }

  /**
   * Graphviz centers the blocks of a rank; side by side with their left edges they read as one column. A block stands so
   * that its feeder runs straight, or as far beneath as those above it need.
   */
  private void align(Map<String, double[]> corners) {
    List<Link> links = links();
    List<Block> rank = new ArrayList<>(services.values());
    // Feeders that run in a circle are a finding of the binder, and no reason to go round for ever.
    for (int steps = 0; steps <= panels.size() && !rank.isEmpty(); steps++) {
      double left = rank.stream().mapToDouble(b -> corners.get(b.id())[0]).min().orElseThrow();
      rank.forEach(b -> corners.get(b.id())[0] = left);
      List<Block> above = rank;
      ToDoubleFunction<Link> straight = l -> corners.get(l.from.id())[1] + l.exit().height() - l.to.entry();
      List<Link> onward = links.stream().filter(l -> above.contains(l.from)).sorted(Comparator.comparingDouble(straight)).toList();
      double free = Double.NEGATIVE_INFINITY;
      for (Link link : onward) {
        double top = Math.max(free, straight.applyAsDouble(link));
        corners.get(link.to.id())[1] = top;
        free = top + link.to.height() + BETWEEN_BLOCKS;
      }
      rank = onward.stream().map(Link::to).toList();
    }
  }

  private String description() {
    long branches = house.branches().size();
    return house.services().size() + " service, " + house.panels().size() + " panels: "
        + String.join(", ", house.panels().keySet()) + "; " + branches + " branches. Each line of a panel names its slots,"
        + " legs, breaker, wiring, the way to its farthest box, and what it feeds.";
  }
}
