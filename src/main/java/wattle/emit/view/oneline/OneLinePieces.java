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
 * service stands with the first panel that it feeds. What comes from or goes to another piece says on which sheet that is.
 */
final class OneLinePieces {
  private static final double BETWEEN = 40;
  private static final double SIZE = PanelColumns.SIZE;
  private static final double LONGEST_MARK = 120;

  /** Of a line that comes in without words beside it. */
  private static final double STUB = 14;

  /** Baseline of words over the name of a panel. */
  private static final double ABOVE = -8;

  private final House house;
  private final Map<String, Block> services;
  private final Map<String, PanelBlock> panels;
  private final double width;
  private final double height;
  private final List<Piece> pieces = new ArrayList<>();
  private final Set<String> begun = new HashSet<>();
  private final Map<String, String> pieceOfService = new HashMap<>();

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
      boolean beside = !fed.isEmpty() && service.getValue().width() + BETWEEN + panels.get(fed.get(0).name()).width() <= width;
      pieceOfService.put(service.getKey(), beside ? pieceOf(fed.get(0).name(), 0) : pieceOf(service.getKey()));
      if (!beside) {
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
    int parts = parts(block);
    int each = rowsEach(block);
    for (int part = 0; part < parts; part++) {
      Optional<String> before = part == 0 ? Optional.empty() : Optional.of(pieceOf(panel.name(), part - 1));
      Optional<String> after = part == parts - 1 ? Optional.empty() : Optional.of(pieceOf(panel.name(), part + 1));
      PanelBlock.Links links = new PanelBlock.Links(before, after, fed -> pieceOf(fed, 0));
      Sketch sketch = block.draw(part * each, Math.min(block.rows(), (part + 1) * each), Optional.of(links));
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

  /** No more than the rows need when parts are filled; see {@link #rowsEach}. */
  private int parts(PanelBlock block) {
    int each = rowsEach(block);
    return Math.max(1, (block.rows() + each - 1) / each);
  }

  /** Parts are of about one length, which reads better than a last one with a row or two. */
  private int rowsEach(PanelBlock block) {
    int most = block.rowsWithin(height);
    int parts = Math.max(1, (block.rows() + most - 1) / most);
    return Math.max(1, (block.rows() + parts - 1) / parts);
  }

  /** What comes in from the left: the service itself, or a mark that says where the line comes from. */
  private void supply(Sketch sketch, Panel panel, Optional<Block> service) {
    if (service.isPresent()) {
      double x = -BETWEEN - service.get().width();
      double y = PanelBlock.ENTRY - service.get().entry();
      sketch.add(service.get().sketch(), x, y).line(-BETWEEN, PanelBlock.ENTRY, 0, PanelBlock.ENTRY);
    } else if (panel.supply() instanceof PanelSupply.FromService from && services.containsKey(from.service())) {
      from(sketch, panel, from.service(), Optional.of(pieceOfService.get(from.service())));
    } else if (panel.supply() instanceof PanelSupply.FromBreaker from) {
      BreakerId id = from.breaker();
      Optional<String> piece = Optional.ofNullable(panels.get(id.panel()))
          .flatMap(p -> p.rowOf(panel.name()).map(row -> pieceOf(id.panel(), row / rowsEach(p))));
      from(sketch, panel, id.toString(), piece);
    }
  }

  /** The mark at the left of the panel; over it where there is no room beside. */
  private void from(Sketch sketch, Panel panel, String source, Optional<String> piece) {
    if (length("from " + source) + panels.get(panel.name()).width() <= width) {
      mark(sketch, "from " + source, piece);
      return;
    }
    double y = PanelBlock.ENTRY;
    sketch.line(-STUB, y, -8, y);
    Symbols.head(sketch, 0, y);
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

  static void mark(Sketch sketch, String words, Optional<String> piece) {
    double y = PanelBlock.ENTRY;
    double length = length(words);
    sketch.line(-length, y, -8, y);
    Symbols.head(sketch, 0, y);
    sketch.fitted(-length, y - 6, words, SIZE, false, Anchor.START, length - 10);
    piece.ifPresent(p -> sketch.add(new Shape.Continuation(-length, y + 14, "", p, "", SIZE, Anchor.START, length - 10)));
  }
}
