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
 * The one-line diagram of a house. Every service and panel is a block of a size that is known beforehand. A house is a tree from its
 * services, so that the blocks are placed in columns without an engine for graphs; whoever asks for one gets its layout. Then each block is
 * drawn where it came to stand, and the feeders between them at right angles.
 */
public final class OneLine {
  private static final String TITLE = "One-line diagram";

  private final House house;
  private final Map<String, Block> services = new LinkedHashMap<>();
  private final Map<String, PanelBlock> parts = new LinkedHashMap<>();
  private final Map<String, Block> panels = new LinkedHashMap<>();
  private final List<Link> links;
  private final BlockColumns columns;

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
    links = links();
    columns = new BlockColumns(blocks(), links);
  }

  private List<Panel> fedFrom(Service service) {
    return house.panels().values().stream()
        .filter(p -> p.supply() instanceof PanelSupply.FromService from && from.service().equals(service.name()))
        .toList();
  }

  private List<Block> blocks() {
    List<Block> all = new ArrayList<>(services.values());
    all.addAll(panels.values());
    return all;
  }

  private List<Link> links() {
    List<Link> found = new ArrayList<>();
    for (Panel panel : house.panels().values()) {
      for (Block block : blocks()) {
        if (block.exits().containsKey(panel.name())) {
          found.add(new Link(block, block.exits().get(panel.name()), panels.get(panel.name())));
        }
      }
    }
    // What a block feeds stands in this order, from the top, so that feeders need not cross.
    found.sort(Comparator.comparingDouble(l -> l.exit().height()));
    return found;
  }

  /** The graph in the DOT language: it says the same in words, for those who want to draw it otherwise. */
  public String dot() {
    StringBuilder out = new StringBuilder("digraph {\n");
    out.append("  rankdir=LR; splines=false; ordering=out; ranksep=").append(inches(columns.between()));
    out.append("; nodesep=").append(inches(BlockColumns.BETWEEN_BLOCKS)).append(";\n");
    out.append("  graph [label=").append(Escape.dotString(title())).append(", labelloc=t, fontname=\"DejaVu Sans\"];\n");
    out.append("  node [shape=plain, fontname=\"DejaVu Sans\", fontsize=9];\n  edge [dir=none];\n");
    services.values().forEach(b -> node(out, b));
    panels.values().forEach(b -> node(out, b));
    for (Link link : links) {
      out.append("  ").append(link.from().id()).append(':').append(link.exit().port()).append(":e -> ").append(link.to().id())
          .append(":in:w;\n");
    }
    return Mark.dot(out.append("}\n").toString());
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

  /** The diagram in one piece, its blocks placed in columns. */
  public Drawing drawing() {
    return plate(columns.corners()).drawing();
  }

  /** The same, its blocks ranked and ordered by an engine. */
  public Drawing drawing(DotEngine engine) {
    return plate(corners(engine)).drawing();
  }

  private Plate plate(Map<String, double[]> corners) {
    Sketch sketch = new Sketch();
    blocks().forEach(b -> sketch.add(b.sketch(), corners.get(b.id())[0], corners.get(b.id())[1]));
    Feeders feeders = new Feeders();
    for (Link link : links) {
      double[] from = corners.get(link.from().id());
      double[] to = corners.get(link.to().id());
      if (to[0] > from[0]) { // else the feeders run in a circle, which is a finding
        feeders.add(from[0] + link.from().width(), from[1] + link.exit().height(), to[0], to[1] + link.to().entry());
      }
    }
    feeders.draw(sketch);
    return new Plate(sketch.shapes(), OneLineLegend.of(house), TITLE, plan(), Plate.NO_SCALE, description());
  }

  /** The diagram for sheets: in one piece where it fits, else panel by panel. */
  public OneLineView view() {
    return new OneLineView(house, plate(columns.corners()), services, parts);
  }

  /** The same, its blocks ranked and ordered by an engine. */
  public OneLineView view(DotEngine engine) {
    return new OneLineView(house, plate(corners(engine)), services, parts);
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
    columns.align(corners);
    return corners;
  }

  private String description() {
    long branches = house.branches().size();
    return house.services().size() + " service, " + house.panels().size() + " panels: "
        + String.join(", ", house.panels().keySet()) + "; " + branches + " branches. Each line of a panel names its slots,"
        + " legs, breaker, wiring, the run to its farthest box, and what it feeds.";
  }
}
