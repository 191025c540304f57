package wattle.emit.oneline;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.emit.drawing.Fit;
import wattle.emit.drawing.Legend;
import wattle.emit.drawing.Piece;
import wattle.emit.drawing.Plate;
import wattle.emit.drawing.Shape;
import wattle.emit.drawing.Shape.Anchor;
import wattle.emit.drawing.Sketch;
import wattle.emit.drawing.Symbols;
import wattle.emit.drawing.View;
import wattle.model.BreakerId;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;

/**
 * The one-line diagram for sheets. Where it does not fit as a whole, each panel is a piece, or several with a part of its
 * rows each; the service stands with the first panel that it feeds. What comes from or goes to another piece says on which
 * sheet that is.
 */
final class OneLineView implements View {
  private static final double BETWEEN = 40;

  private final House house;
  private final Plate whole;
  private final Map<String, Block> services;
  private final Map<String, PanelBlock> panels;

  OneLineView(House house, Plate whole, Map<String, Block> services, Map<String, PanelBlock> panels) {
    this.house = house;
    this.whole = whole;
    this.services = services;
    this.panels = panels;
  }

  @Override
  public String title() {
    return whole.title();
  }

  @Override
  public String description() {
    return whole.description();
  }

  @Override
  public Legend legend() {
    return whole.legend();
  }

  @Override
  public String scale() {
    return whole.scale();
  }

  @Override
  public List<Piece> pieces(double width, double height) {
    List<Piece> one = whole.pieces(width, height);
    if (one.stream().map(Piece::bounds).allMatch(b -> b.width() <= width && b.height() <= height)) {
      return one;
    }
    List<Piece> pieces = new ArrayList<>();
    Set<String> begun = new LinkedHashSet<>();
    Map<String, String> pieceOfService = new HashMap<>();
    for (String service : services.keySet()) {
      List<Panel> fed = house.panels().values().stream().filter(p -> p.supply().equals(new PanelSupply.FromService(service))).toList();
      boolean beside = !fed.isEmpty() && services.get(service).width() + BETWEEN + panels.get(fed.get(0).name()).width() <= width;
      pieceOfService.put(service, beside ? pieceOf(fed.get(0).name(), 0) : pieceOf(service));
      if (!beside) {
        pieces.add(alone(service, services.get(service), fed));
      }
      for (int i = 0; i < fed.size(); i++) {
        panel(pieces, begun, pieceOfService, fed.get(i), height, beside && i == 0 ? Optional.of(services.get(service)) : Optional.empty());
      }
    }
    house.panels().values().forEach(p -> panel(pieces, begun, pieceOfService, p, height, Optional.empty()));
    return pieces;
  }

  /** A service with the sheets on which what it feeds begins. */
  private static Piece alone(String service, Block block, List<Panel> fed) {
    Sketch sketch = new Sketch().add(block.sketch(), 0, 0);
    double y = block.exits().isEmpty() ? 0 : block.exits().values().iterator().next().height();
    for (Panel panel : fed) {
      sketch.add(
          new Shape.Continuation(block.width() + 8, y + 3.6, "to panel " + panel.name() + ", sheet ", pieceOf(panel.name(), 0), "", 10, Anchor.START, 200));
      y += 15;
    }
    return new Piece(pieceOf(service), sketch.shapes());
  }

  /** Names of pieces: those of services and panels may be alike, so a sign tells them apart. */
  private static String pieceOf(String service) {
    return "service " + service;
  }

  private static String pieceOf(String panel, int part) {
    return "panel " + panel + " " + part;
  }

  /** A panel, and then those that it feeds. */
  private void panel(List<Piece> pieces, Set<String> begun, Map<String, String> pieceOfService, Panel panel, double height, Optional<Block> service) {
    if (!begun.add(panel.name())) {
      return;
    }
    PanelBlock block = panels.get(panel.name());
    int parts = parts(block, height);
    int each = rowsEach(block, height);
    for (int part = 0; part < parts; part++) {
      Optional<String> before = part == 0 ? Optional.empty() : Optional.of(pieceOf(panel.name(), part - 1));
      Optional<String> after = part == parts - 1 ? Optional.empty() : Optional.of(pieceOf(panel.name(), part + 1));
      Sketch sketch =
          block.draw(
              part * each, Math.min(block.rows(), (part + 1) * each),
              Optional.of(new PanelBlock.Links(before, after, fed -> pieceOf(fed, 0))));
      if (part == 0) {
        supply(sketch, panel, height, service, pieceOfService);
      }
      pieces.add(new Piece(pieceOf(panel.name(), part), sketch.shapes()));
    }
    for (Panel next : house.panels().values()) {
      if (next.supply() instanceof PanelSupply.FromBreaker from && from.breaker().panel().equals(panel.name())) {
        panel(pieces, begun, pieceOfService, next, height, Optional.empty());
      }
    }
  }

  private static int parts(PanelBlock block, double height) {
    int most = PanelBlock.rowsWithin(height);
    return Math.max(1, (block.rows() + most - 1) / most);
  }

  /** Parts are of about one length, which reads better than a last one with a row or two. */
  private static int rowsEach(PanelBlock block, double height) {
    int parts = parts(block, height);
    return Math.max(1, (block.rows() + parts - 1) / parts);
  }

  /** What comes in from the left: the service itself, or a mark that says where the line comes from. */
  private void supply(Sketch sketch, Panel panel, double height, Optional<Block> service, Map<String, String> pieceOfService) {
    if (service.isPresent()) {
      double x = -BETWEEN - service.get().width();
      double y = PanelBlock.ENTRY - service.get().exits().get(panel.name()).height();
      sketch.add(service.get().sketch(), x, y).line(-BETWEEN, PanelBlock.ENTRY, 0, PanelBlock.ENTRY);
      return;
    }
    if (panel.supply() instanceof PanelSupply.FromService from && services.containsKey(from.service())) {
      mark(sketch, "from " + from.service(), Optional.of(pieceOfService.get(from.service())));
    } else if (panel.supply() instanceof PanelSupply.FromBreaker from) {
      BreakerId id = from.breaker();
      Optional<String> piece =
          Optional.ofNullable(panels.get(id.panel()))
              .flatMap(p -> p.rowOf(panel.name()).map(row -> pieceOf(id.panel(), row / rowsEach(p, height))));
      mark(sketch, "from " + id, piece);
    }
  }

  private static void mark(Sketch sketch, String words, Optional<String> piece) {
    double y = PanelBlock.ENTRY;
    double length = Math.min(120, Math.max(70, Fit.width(words, 10, false) + 14));
    sketch.line(-length, y, -8, y);
    Symbols.head(sketch, 0, y);
    sketch.fitted(-length, y - 6, words, 10, false, Anchor.START, length - 10);
    piece.ifPresent(p -> sketch.add(new Shape.Continuation(-length, y + 14, "sheet ", p, "", 10, Anchor.START, length - 10)));
  }
}
