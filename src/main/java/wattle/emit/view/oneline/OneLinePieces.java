package wattle.emit.view.oneline;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Piece;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.Symbols;
import wattle.model.BreakerId;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;

/**
 * A one-line diagram in pieces for a room on a sheet. Each panel is a piece, or several with a part of its rows each; a
 * service stands with the first panel that it feeds, beside it or over it. What comes from or goes to another piece
 * says on which sheet that is.
 */
final class OneLinePieces {
  private static final double BETWEEN = 40;
  private static final double SIZE = PanelColumns.SIZE;
  private static final double LONGEST_MARK = 120;

  /** Of a line that comes in without words beside it. */
  private static final double STUB = 14;

  /** Between a service and the line that goes round it to the panel beneath. */
  private static final double ROUND = 10;

  /** Baseline of words over the name of a panel. */
  private static final double ABOVE = -10;

  private final House house;
  private final Map<String, Block> services;
  private final Map<String, PanelBlock> panels;
  private final double width;
  private final double height;
  private final List<Piece> pieces = new ArrayList<>();
  private final Set<String> begun = new HashSet<>();
  private final Map<String, String> pieceOfService = new HashMap<>();

  /** Services that stand over the first panel that they feed, by the name of the panel. */
  private final Map<String, Block> over = new HashMap<>();

  OneLinePieces(House house, Map<String, Block> services, Map<String, PanelBlock> panels, double width, double height) {
    this.house = house;
    this.services = services;
    this.panels = panels;
    this.width = width;
    this.height = height;
  }

  List<Piece> pieces() {
    for (Map.Entry<String, Block> service : services.entrySet()) {
      List<Panel> fed = house.panels().values().stream().filter(p -> p.supply().equals(new PanelSupply.FromService(service.getKey())))
          .toList();
      Optional<PanelBlock> first = fed.stream().findFirst().map(p -> panels.get(p.name()));
      boolean beside = first.isPresent() && service.getValue().width() + BETWEEN + first.get().width() <= width;
      boolean above = !beside && first.isPresent() && first.get().hasRoomIn(height - stacked(service.getValue()));
      pieceOfService.put(service.getKey(), beside || above ? pieceOf(fed.get(0).name(), 0) : pieceOf(service.getKey()));
      if (above) {
        over.put(fed.get(0).name(), service.getValue());
      } else if (!beside) {
        alone(service.getKey(), service.getValue(), fed);
      }
      for (int i = 0; i < fed.size(); i++) {
        panel(fed.get(i), beside && i == 0 ? Optional.of(service.getValue()) : Optional.empty());
      }
    }
    house.panels().values().forEach(p -> panel(p, Optional.empty()));
    return List.copyOf(pieces);
  }

  /** Names of pieces: those of services and panels may be alike, so a word tells them apart. */
  private static String pieceOf(String service) {
    return "service " + service;
  }

  private static String pieceOf(String panel, int part) {
    return "panel " + panel + " " + part;
  }

  /** What a service over a panel takes of the height. */
  private static double stacked(Block service) {
    return service.height() + ROUND + BETWEEN / 2;
  }

  /** A service with the sheets on which what it feeds begins. */
  private void alone(String name, Block block, List<Panel> fed) {
    Sketch sketch = new Sketch().add(block.sketch(), 0, 0);
    double y = block.entry();
    for (Panel panel : fed) {
      sketch.add(
          new Shape.Continuation(
              block.width() + 8, y + 3.6, "to panel " + panel.name() + ", ", pieceOf(panel.name(), 0), "", SIZE, Anchor.START, 200));
      y += 15;
    }
    pieces.add(new Piece(pieceOf(name), sketch.shapes()));
  }

  /** A panel, and then those that it feeds. */
  private void panel(Panel panel, Optional<Block> service) {
    if (!begun.add(panel.name())) {
      return;
    }
    PanelBlock block = panels.get(panel.name());
    PanelParts cut = cut(panel.name());
    int parts = cut.count();
    for (int part = 0; part < parts; part++) {
      Optional<String> before = part == 0 ? Optional.empty() : Optional.of(pieceOf(panel.name(), part - 1));
      Optional<String> after = part == parts - 1 ? Optional.empty() : Optional.of(pieceOf(panel.name(), part + 1));
      PanelBlock.Links links = new PanelBlock.Links(before, after, fed -> pieceOf(fed, 0));
      Sketch sketch = block.draw(cut.from(part), cut.to(part), Optional.of(links));
      if (part == 0) {
        supply(sketch, panel, service);
      }
      pieces.add(new Piece(pieceOf(panel.name(), part), sketch.shapes()));
    }
    for (Panel next : house.panels().values()) {
      if (next.supply() instanceof PanelSupply.FromBreaker from && from.breaker().panel().equals(panel.name())) {
        panel(next, Optional.empty());
      }
    }
  }

  private PanelParts cut(String panel) {
    PanelBlock block = panels.get(panel);
    double taken = over.containsKey(panel) ? stacked(over.get(panel)) : 0;
    return new PanelParts(block.rows(), block.rowsWithin(height - taken), block.rowsWithin(height));
  }

  /** What comes in: the service itself, or a mark that says where the line comes from. */
  private void supply(Sketch sketch, Panel panel, Optional<Block> service) {
    if (service.isPresent()) {
      double x = -BETWEEN - service.get().width();
      double y = PanelBlock.ENTRY - service.get().entry();
      sketch.add(service.get().sketch(), x, y).line(-BETWEEN, PanelBlock.ENTRY, 0, PanelBlock.ENTRY);
    } else if (over.containsKey(panel.name())) {
      above(sketch, over.get(panel.name()));
    } else if (panel.supply() instanceof PanelSupply.FromService from && services.containsKey(from.service())) {
      from(sketch, panel, from.service(), Optional.of(pieceOfService.get(from.service())));
    } else if (panel.supply() instanceof PanelSupply.FromBreaker from) {
      BreakerId id = from.breaker();
      Optional<String> piece = Optional.ofNullable(panels.get(id.panel()))
          .flatMap(p -> p.rowOf(panel.name()).map(row -> pieceOf(id.panel(), cut(id.panel()).of(row))));
      from(sketch, panel, id.toString(), piece);
    }
  }

  /** The service over the panel; its line goes round beneath it to where the supply of the panel comes in. */
  private static void above(Sketch sketch, Block service) {
    double top = -stacked(service);
    double out = top + service.entry();
    double beneath = top + service.height() + ROUND;
    double right = service.width() + ROUND;
    sketch.add(service.sketch(), 0, top)
        .line(service.width(), out, right, out).line(right, out, right, beneath).line(right, beneath, -STUB, beneath)
        .line(-STUB, beneath, -STUB, PanelBlock.ENTRY).line(-STUB, PanelBlock.ENTRY, 0, PanelBlock.ENTRY);
  }

  private void from(Sketch sketch, Panel panel, String source, Optional<String> piece) {
    from(sketch, source, piece, PanelBlock.ENTRY, panels.get(panel.name()).width(), width);
  }

  /**
   * Where the line of a panel comes from: the mark at its left; over it where there is no room beside.
   *
   * @param source its name: {@code main}
   * @param entry height at which the line comes in, beneath the upper edge of the panel at 0
   * @param panel how wide the panel is
   * @param width of the sheet
   */
  static void from(Sketch sketch, String source, Optional<String> piece, double entry, double panel, double width) {
    double length = length("from " + source);
    boolean beside = length + panel <= width;
    double start = beside ? -length : -STUB;
    sketch.line(start, entry, -8, entry);
    Symbols.head(sketch, 0, entry);
    if (beside) {
      sketch.fitted(start, entry - 6, "from " + source, SIZE, false, Anchor.START, length - 10);
      piece.ifPresent(p -> sketch.add(new Shape.Continuation(start, entry + 14, "", p, "", SIZE, Anchor.START, length - 10)));
      return;
    }
    String words = "fed from " + source;
    if (piece.isPresent()) {
      sketch.add(new Shape.Continuation(0, ABOVE, words + ", ", piece.get(), "", SIZE, Anchor.START, width));
    } else {
      sketch.text(0, ABOVE, words, SIZE);
    }
  }

  private static double length(String words) {
    return Math.min(LONGEST_MARK, Math.max(70, Fit.width(words, SIZE, false) + 14));
  }
}
