package wattle.emit.media.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Piece;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.View;
import wattle.emit.media.picture.Paper;

/**
 * A view among the text of a printed document: cut in parts that follow each other, each with its number, where it does not fit a page
 * with type that is read at arm's length. Parts of a page that is not turned are no higher than a good half of it where the view can be
 * cut so, and thus no page is left half empty before one of them.
 *
 * @param parts in order, each as large as it is printed, in CSS pixels
 * @param turned whether they are for pages that lie on their longer side
 */
public record PagePicture(List<Drawing> parts, boolean turned) {
  /** In points: no type of a part is smaller, except where one box or row is wider than a page. */
  public static final double LEAST_TYPE = Sheets.FAIR_TYPE;

  /** Of the height of an upright page, what leaves room for another part of that height. */
  private static final double HALF = 0.51;

  /** Likewise, what a part takes where it can be cut. */
  private static final double PART = 0.58;

  /** Likewise, up to where small pieces are put together in one part. */
  private static final double TOGETHER = 0.4;

  private static final double STEP = 0.01;

  /** Of the words over a part. */
  private static final double NUMBER = Sheets.READABLE_TYPE * Sheets.PIXELS_PER_POINT;

  private static final double NUMBER_LINE = 22;

  private static final String LEGEND = "legend";

  public PagePicture {
    parts = List.copyOf(parts);
  }

  /** One way of setting it. */
  private record Setting(PageRoom room, double scale, Packing packing) {}

  /**
   * @param legend explains its signs; that of the view, or an empty one where another legend explains them
   * @param upright the paper of the document
   */
  public static PagePicture of(View view, Legend legend, Paper upright) {
    PageRoom page = PageRoom.upright(upright);
    PageRoom turned = PageRoom.turned(upright);
    return Optional.<Setting>empty()
        .or(() -> inParts(view, legend, page, Sheets.READABLE_TYPE))
        .or(() -> inParts(view, legend, page, LEAST_TYPE))
        .or(() -> largest(view, legend, page, page.height(), LEAST_TYPE))
        .or(() -> largest(view, legend, turned, turned.height(), LEAST_TYPE))
        .or(() -> largest(view, legend, turned, turned.height(), 0))
        .map(s -> of(view, s))
        .orElseThrow(() -> new IllegalStateException("no scale makes " + view.title() + " fit a page"));
  }

  /** Two parts to a page where that cuts the view no more often; nine points are tried before eight. */
  private static Optional<Setting> inParts(View view, Legend legend, PageRoom page, double leastType) {
    Optional<Setting> halves = largest(view, legend, page, page.height() * HALF, leastType);
    Optional<Setting> parts = largest(view, legend, page, page.height() * PART, leastType);
    boolean as = halves.isPresent() && (parts.isEmpty() || halves.get().packing.count() <= parts.get().packing.count());
    return as ? halves : parts;
  }

  /** The largest scale at which each piece fits and which takes no more parts than the least. */
  private static Optional<Setting> largest(View view, Legend legend, PageRoom room, double tallest, double leastType) {
    double smallest = Math.min(NUMBER, Sheets.smallestType(view.pieces(room.width(), tallest)));
    double readable = Sheets.READABLE_TYPE * Sheets.PIXELS_PER_POINT / smallest;
    double least = leastType > 0 ? Math.min(readable, leastType * Sheets.PIXELS_PER_POINT / smallest) : STEP;
    Optional<Setting> fewest = Optional.empty();
    if (leastType > 0) {
      fewest = setting(view, legend, room, tallest, least);
      if (fewest.isEmpty()) {
        return fewest;
      }
    }
    for (double scale = readable; scale > least; scale -= STEP) {
      Optional<Setting> found = setting(view, legend, room, tallest, scale);
      if (found.isPresent() && (fewest.isEmpty() || found.get().packing.count() <= fewest.get().packing.count())) {
        return found;
      }
    }
    return fewest;
  }

  private static Optional<Setting> setting(View view, Legend legend, PageRoom room, double tallest, double scale) {
    double width = room.width() / scale;
    double height = (tallest - NUMBER_LINE) / scale;
    double together = room.turned() ? height : Math.min(height, room.height() * TOGETHER / scale);
    if (legend.items().isEmpty() && legend.notes().isEmpty()) {
      return packing(view.pieces(width, height), width, height, together).map(p -> new Setting(room, scale, p));
    }
    double larger = SheetFrame.LEGEND_SCALE / scale;
    Piece signs = new Piece(LEGEND, legend.sketch(width / larger).scaled(larger).shapes());
    Optional<Packing> usual = withLegend(view.pieces(width, height), signs, width, height, together);
    if (usual.isEmpty() || !usual.get().isAlone(LEGEND)) {
      return usual.map(p -> new Setting(room, scale, p));
    }
    // It would be a part by itself: parts of the view that leave room for it are as good where they are no more.
    double less = height - signs.bounds().height() - Packing.GAP;
    return withLegend(view.pieces(width, less), signs, width, height, together)
        .filter(p -> p.count() <= usual.get().count() && !p.isAlone(LEGEND))
        .or(() -> usual)
        .map(p -> new Setting(room, scale, p));
  }

  private static Optional<Packing> withLegend(List<Piece> view, Piece legend, double width, double height, double together) {
    List<Piece> pieces = new ArrayList<>(view);
    pieces.add(legend);
    return packing(pieces, width, height, together);
  }

  /** Small pieces are put together in parts of their own, unless one part holds them all. */
  private static Optional<Packing> packing(List<Piece> pieces, double width, double height, double together) {
    Optional<Packing> filled = Packing.of(pieces, width, height);
    return filled.isPresent() && filled.get().count() == 1 ? filled : Packing.of(pieces, width, height, together);
  }

  private static PagePicture of(View view, Setting setting) {
    List<List<Shape>> parts = setting.packing.sheets("part");
    List<Drawing> drawings = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      Sketch sketch = new Sketch();
      parts.get(i).forEach(s -> sketch.add(s.scaled(setting.scale)));
      String number = parts.size() == 1 ? "" : "part " + (i + 1) + " of " + parts.size();
      if (!number.isEmpty()) {
        sketch.text(sketch.bounds().left(), sketch.bounds().top() - NUMBER_LINE + NUMBER, number, NUMBER, true, Anchor.START);
      }
      drawings.add(
          sketch.drawing(1, number.isEmpty() ? view.title() : view.title() + ", " + number,
              i == 0 ? view.description() : "Goes on from the part before."));
    }
    return new PagePicture(drawings, setting.room.turned());
  }
}
