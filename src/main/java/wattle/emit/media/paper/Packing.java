package wattle.emit.media.paper;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.emit.media.drawing.Bounds;
import wattle.emit.media.drawing.Piece;
import wattle.emit.media.drawing.Shape;

/** Pieces set on sheets in their order: side by side while there is room, then beneath, then on the next sheet. */
final class Packing {
  /** Between pieces. */
  static final double GAP = 40;

  /** Of the height of a room, what is nearly nothing. */
  private static final double SPARSE = 0.4;

  private final List<List<Shape>> sheets = new ArrayList<>();
  private final Map<String, Integer> sheetOf = new HashMap<>();

  private Packing() {}

  /** Absent where a piece is larger than the room. */
  static Optional<Packing> of(List<Piece> pieces, double width, double height) {
    return of(pieces, width, height, height);
  }

  /** @param filled where a sheet with several pieces ends; a single one may be higher */
  static Optional<Packing> of(List<Piece> pieces, double width, double height, double filled) {
    Packing packing = new Packing();
    double x = 0;
    double top = 0;
    double bottom = 0;
    for (Piece piece : pieces) {
      Bounds bounds = piece.bounds();
      if (bounds.width() > width || bounds.height() > height) {
        return Optional.empty();
      }
      if (x > 0 && x + bounds.width() > width) {
        x = 0;
        top = bottom + GAP;
      }
      if (packing.sheets.isEmpty() || top + bounds.height() > filled) {
        packing.sheets.add(new ArrayList<>());
        x = 0;
        top = 0;
        bottom = 0;
      }
      packing.put(piece, x - bounds.left(), top - bounds.top());
      x += bounds.width() + GAP;
      bottom = Math.max(bottom, top + bounds.height());
    }
    if (pieces.isEmpty()) {
      packing.sheets.add(List.of());
    }
    return Optional.of(packing);
  }

  private void put(Piece piece, double x, double y) {
    List<Shape> sheet = sheets.get(sheets.size() - 1);
    piece.shapes().forEach(s -> sheet.add(s.moved(x, y)));
    sheetOf.put(piece.name(), sheets.size());
  }

  /** Whether a sheet before the last holds hardly more than one small thing, such as a service by itself. */
  boolean isSparse(double height) {
    return sheets.subList(0, sheets.size() - 1).stream()
        .anyMatch(s -> s.stream().map(Shape::bounds).reduce(Bounds::with).orElseThrow().height() < height * SPARSE);
  }

  /** Whether a sheet of several holds that piece and no other. */
  boolean isAlone(String piece) {
    return sheets.size() > 1
        && sheetOf.entrySet().stream().noneMatch(e -> !e.getKey().equals(piece) && e.getValue().equals(sheetOf.get(piece)));
  }

  int count() {
    return sheets.size();
  }

  int pieces() {
    return sheetOf.size();
  }

  /**
   * The shapes of each sheet, with the numbers of the sheets that they name.
   *
   * @param place what a sheet is called: {@code sheet}
   */
  List<List<Shape>> sheets(String place) {
    return sheets.stream().map(s -> s.stream().map(shape -> numbered(shape, place)).toList()).toList();
  }

  private Shape numbered(Shape shape, String place) {
    if (!(shape instanceof Shape.Continuation continuation)) {
      return shape;
    }
    Integer sheet = sheetOf.get(continuation.target());
    if (sheet == null) {
      throw new IllegalStateException("no piece is called " + continuation.target());
    }
    return continuation.on(place + " " + sheet);
  }
}
