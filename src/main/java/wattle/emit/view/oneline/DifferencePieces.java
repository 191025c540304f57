package wattle.emit.view.oneline;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.emit.media.drawing.Piece;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Sketch;

/**
 * The diagrams of two revisions in pieces for sheets: each service, and each panel in as many parts as a sheet's height asks
 * for. What comes from or goes to another piece says on which sheet that is.
 */
final class DifferencePieces {
  /** Between pieces on a sheet, with what rounding takes. */
  private static final double BETWEEN = 44;

  /** Of the height of a sheet. */
  private static final double MOST_OVER = 0.5;

  private final Revisions revisions;
  private final Map<String, Block> services;
  private final double width;
  private final double height;
  private final Map<String, DifferencePanel> panels = new LinkedHashMap<>();
  private final Map<String, List<List<DifferenceRow>>> parts = new HashMap<>();
  private final List<Piece> pieces = new ArrayList<>();
  private final Set<String> begun = new HashSet<>();

  DifferencePieces(Revisions revisions, Map<String, Block> services, double width, double height) {
    this.revisions = revisions;
    this.services = services;
    this.width = width;
    this.height = height;
    for (String key : revisions.panels()) {
      panels.put(key, DifferencePanel.onSheets(revisions, key));
      parts.put(key, panels.get(key).parts(height - over(key), height));
    }
  }

  /** What a service takes of the height that comes before the first panel that it feeds, where that leaves room for a part of the panel. */
  private double over(String panel) {
    double over = services.entrySet().stream()
        .filter(s -> revisions.fedBy(s.getKey()).stream().findFirst().filter(panel::equals).isPresent())
        .mapToDouble(s -> s.getValue().height() + BETWEEN).sum();
    return over < height * MOST_OVER ? over : 0;
  }

  List<Piece> pieces() {
    for (Map.Entry<String, Block> service : services.entrySet()) {
      service(service.getKey(), service.getValue());
      revisions.fedBy(service.getKey()).forEach(this::panel);
    }
    panels.keySet().forEach(this::panel);
    return List.copyOf(pieces);
  }

  /** Names of pieces: those of services and panels may be alike, so a word tells them apart. */
  private static String pieceOf(String service) {
    return "service " + service;
  }

  private static String pieceOf(String panel, int part) {
    return "panel " + panel + " " + part;
  }

  private void service(String key, Block block) {
    Sketch sketch = new Sketch().add(block.sketch(), 0, 0);
    double y = block.entry();
    for (String panel : revisions.fedBy(key)) {
      sketch.add(
          new Shape.Continuation(
              block.width() + 8, y + 3.6, "to panel " + panel + ", ", pieceOf(panel, 0), "", PanelColumns.SIZE, Anchor.START, 200));
      y += 15;
    }
    pieces.add(new Piece(pieceOf(key), sketch.shapes()));
  }

  /** A panel, and then those that it feeds. */
  private void panel(String key) {
    if (!begun.add(key)) {
      return;
    }
    List<List<DifferenceRow>> rows = parts.get(key);
    for (int part = 0; part < rows.size(); part++) {
      Optional<String> before = part == 0 ? Optional.empty() : Optional.of(pieceOf(key, part - 1));
      Optional<String> after = part == rows.size() - 1 ? Optional.empty() : Optional.of(pieceOf(key, part + 1));
      PanelBlock.Links links = new PanelBlock.Links(before, after, fed -> pieceOf(fed, 0));
      DifferencePanel.Drawn drawn = panels.get(key).draw(rows.get(part), Optional.of(links));
      if (part == 0) {
        supply(drawn, key);
      }
      pieces.add(new Piece(pieceOf(key, part), drawn.sketch().shapes()));
    }
    rows.stream().flatMap(List::stream).map(DifferenceRow::panel).filter(panels::containsKey).forEach(this::panel);
  }

  /** A mark that says where the line comes from. */
  private void supply(DifferencePanel.Drawn drawn, String key) {
    Optional<String> service = revisions.serviceOf(key).filter(services::containsKey);
    if (service.isPresent()) {
      from(drawn, service.get(), pieceOf(service.get()));
    } else {
      feeder(key).ifPresent(f -> from(drawn, "panel " + f.panel(), pieceOf(f.panel(), f.part())));
    }
  }

  private void from(DifferencePanel.Drawn drawn, String source, String piece) {
    OneLinePieces.from(drawn.sketch(), source, Optional.of(piece), drawn.entry(), drawn.width(), width);
  }

  private record Feeder(String panel, int part) {}

  private Optional<Feeder> feeder(String fed) {
    for (Map.Entry<String, List<List<DifferenceRow>>> panel : parts.entrySet()) {
      for (int part = 0; part < panel.getValue().size(); part++) {
        if (panel.getValue().get(part).stream().anyMatch(r -> r.panel().equals(fed))) {
          return Optional.of(new Feeder(panel.getKey(), part));
        }
      }
    }
    return Optional.empty();
  }
}
