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
  private record Setting(PageRoom room, double scale, Packing packing) {
    boolean isSparse() {
      return packing.isSparse(room.height() / scale);
    }
  }

  /**
   * @param legend explains its signs; that of the view, or an empty one where another legend explains them
   * @param upright the paper of the document
   */
  public static PagePicture of(View view, Legend legend, Paper upright) {
    PageRoom page = PageRoom.upright(upright);
    PageRoom turned = PageRoom.turned(upright);
    return Optional.<Setting>empty()
        .or(() -> upright(view, legend, page, Sheets.READABLE_TYPE))
        .or(() -> turned(view, legend, turned, Sheets.READABLE_TYPE))
        .or(() -> upright(view, legend, page, LEAST_TYPE))
        .or(() -> turned(view, legend, turned, LEAST_TYPE))
        .or(() -> turned(view, legend, turned, 0))
        .map(s -> of(view, s))
        .orElseThrow(() -> new IllegalStateException("no scale makes " + view.title() + " fit a page"));
  }

  /**
   * Two parts to a page where that cuts the view no more often; else parts somewhat higher, beside which a box that cannot be cut may be
   * as high as the page; else as high as the view makes them.
   */
  private static Optional<Setting> upright(View view, Legend legend, PageRoom page, double leastType) {
    Optional<Setting> halves = largest(view, legend, page, page.height() * HALF, page.height() * HALF, leastType);
    Optional<Setting> parts = largest(view, legend, page, page.height() * PART, page.height() * PART, leastType);
    if (halves.isPresent() && (parts.isEmpty() || halves.get().packing.count() <= parts.get().packing.count())) {
      return halves;
    }
    return parts.or(() -> largest(view, legend, page, page.height() * PART, page.height(), leastType))
        .or(() -> largest(view, legend, page, page.height(), page.height(), leastType));
  }

  /** As high as the page, unless that leaves a page nearly empty which pieces that are less high would fill. */
  private static Optional<Setting> turned(View view, Legend legend, PageRoom page, double leastType) {
    Optional<Setting> whole = largest(view, legend, page, page.height(), page.height(), leastType);
    if (whole.isEmpty() || !whole.get().isSparse()) {
      return whole;
    }
    return largest(view, legend, page, page.height() * PART, page.height(), leastType).filter(s -> !s.isSparse()).or(() -> whole);
  }

  /**
   * The largest scale at which each piece fits and which takes no more parts than the least.
   *
   * @param tallest what the view is asked to keep its pieces to
   * @param bound what a piece may not exceed
   */
  private static Optional<Setting> largest(View view, Legend legend, PageRoom room, double tallest, double bound, double leastType) {
    double smallest = Math.min(NUMBER, Sheets.smallestType(view.pieces(room.width(), tallest)));
    double readable = Sheets.READABLE_TYPE * Sheets.PIXELS_PER_POINT / smallest;
    double least = leastType > 0 ? Math.min(readable, leastType * Sheets.PIXELS_PER_POINT / smallest) : STEP;
    Optional<Setting> fewest = Optional.empty();
    if (leastType > 0) {
      fewest = setting(view, legend, room, tallest, bound, least);
      if (fewest.isEmpty()) {
        return fewest;
      }
    }
    for (double scale = readable; scale > least; scale -= STEP) {
      Optional<Setting> found = setting(view, legend, room, tallest, bound, scale);
      if (found.isPresent() && (fewest.isEmpty() || found.get().packing.count() <= fewest.get().packing.count())) {
        return found;
      }
    }
    return fewest;
  }

  private static Optional<Setting> setting(
      View view, Legend legend, PageRoom room, double tallest, double bound, double scale) {
    double width = room.width() / scale;
    double asked = (tallest - NUMBER_LINE) / scale;
    double height = (bound - NUMBER_LINE) / scale;
    double together = room.turned() ? height : bound > tallest ? asked : Math.min(asked, room.height() * TOGETHER / scale);
    if (legend.items().isEmpty() && legend.notes().isEmpty()) {
      return packing(view.pieces(width, asked), width, height, together).map(p -> new Setting(room, scale, p));
    }
    double larger = SheetFrame.LEGEND_SCALE / scale;
    Piece signs = new Piece(LEGEND, legend.sketch(width / larger).scaled(larger).shapes());
    Optional<Packing> usual = withLegend(view.pieces(width, asked), signs, width, height, together);
    if (usual.isEmpty() || !usual.get().isAlone(LEGEND)) {
      return usual.map(p -> new Setting(room, scale, p));
    }
    // It would be a part by itself: parts of the view that leave room for it are as good where they are no more.
    double less = asked - signs.bounds().height() - Packing.GAP;
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
              i == 0 ? view.description() : "Continued from the previous part."));
    }
    return new PagePicture(drawings, setting.room.turned());
  }
}
