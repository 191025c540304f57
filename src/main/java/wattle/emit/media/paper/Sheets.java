package wattle.emit.media.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.emit.media.drawing.Bounds;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Piece;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.View;
import wattle.emit.media.picture.Paper;

/**
 * Puts a view on sheets. Of the ways in which the paper can lie and the sizes that its type can have, that one is taken
 * that needs the fewest sheets, then tears it into the fewest pieces, then shows it largest. Type has {@link #READABLE_TYPE} points or
 * more where each piece of the view fits so, and never fewer than {@link #SMALLEST_TYPE}.
 */
public final class Sheets {
  /** In points, as printed. */
  public static final double SMALLEST_TYPE = 6;

  /** Likewise: what is read at arm's length. */
  public static final double READABLE_TYPE = 9;

  /** Likewise: what is read well, where larger type would leave sheets nearly empty. */
  static final double FAIR_TYPE = 8;

  private static final double ROUNDING = 1e-6;

  static final double PIXELS_PER_POINT = 96 / 72.0;

  /** How much larger than its least scale a view is set at most, where that takes no more sheets. */
  private static final double LARGEST = 1.3;

  private static final double STEP = 0.05;

  private Sheets() {}

  /** One way of setting a view, with type of so many points. */
  private record Setting(SheetFrame frame, double scale, Packing packing, double points) {
    /** Type that is read at arm's length comes before few sheets, but a sheet for a single small thing is worse than somewhat less. */
    int rank() {
      boolean sparse = packing.isSparse(frame.room().height() / scale);
      boolean fair = points > FAIR_TYPE - ROUNDING;
      boolean readable = points > READABLE_TYPE - ROUNDING;
      return sparse ? readable ? 1 : 0 : readable ? 3 : fair ? 2 : 0;
    }

    boolean takesLessThan(Setting other) {
      return packing.count() != other.packing.count() ? packing.count() < other.packing.count() : packing.pieces() < other.packing.pieces();
    }

    boolean isBetterThan(Setting other) {
      return rank() != other.rank() ? rank() > other.rank() : takesLessThan(other) || !other.takesLessThan(this) && scale > other.scale;
    }
  }

  /**
   * @param papers the paper as it may lie; of ways that are equally good the first is taken
   * @return a drawing as large as the paper for each sheet; empty where a part of the view is too large for the paper
   */
  public static List<Drawing> of(View view, TitleBlock block, List<Paper> papers) {
    Optional<Setting> best = Optional.empty();
    for (Paper paper : papers) {
      SheetFrame frame = new SheetFrame(paper.width() * PIXELS_PER_POINT, paper.height() * PIXELS_PER_POINT, view.legend(), block,
          view.title());
      Optional<Setting> setting = best(view, frame);
      if (best.isEmpty() || setting.isPresent() && setting.get().isBetterThan(best.get())) {
        best = setting;
      }
    }
    return best.map(s -> drawings(view, block, s)).orElse(List.of());
  }

  /** The smaller a view is set, the fewer sheets it takes; the largest scale is sought that takes no more than the least that will do. */
  private static Optional<Setting> best(View view, SheetFrame frame) {
    double smallest = smallestType(view.pieces(frame.room().width(), frame.room().height()));
    double point = PIXELS_PER_POINT / smallest;
    double least = Math.min(1, SMALLEST_TYPE * point);
    double scale = READABLE_TYPE * point;
    Optional<Setting> fewest = setting(view, frame, scale, point);
    while (scale > least && (fewest.isEmpty() || fewest.get().rank() < 2 && scale > FAIR_TYPE * point)) {
      // Type that is fair is tried however the steps fall.
      scale = Math.max(scale > FAIR_TYPE * point ? FAIR_TYPE * point : least, scale - STEP);
      Optional<Setting> smaller = setting(view, frame, scale, point);
      fewest = smaller.isPresent() && (fewest.isEmpty() || smaller.get().rank() > fewest.get().rank()) ? smaller : fewest;
    }
    double found = fewest.map(Setting::scale).orElse(scale);
    for (double larger = Math.max(found, 1) * LARGEST; fewest.isPresent() && larger > found; larger -= STEP) {
      Optional<Setting> setting = setting(view, frame, larger, point);
      if (setting.isPresent() && setting.get().rank() >= fewest.get().rank() && !fewest.get().takesLessThan(setting.get())) {
        return setting;
      }
    }
    return fewest;
  }

  private static Optional<Setting> setting(View view, SheetFrame frame, double scale, double point) {
    double width = frame.room().width() / scale;
    double height = frame.room().height() / scale;
    return Packing.of(view.pieces(width, height), width, height).map(p -> new Setting(frame, scale, p, scale / point));
  }

  static double smallestType(List<Piece> pieces) {
    return pieces.stream()
        .flatMap(p -> p.shapes().stream())
        .mapToDouble(s -> s instanceof Shape.Text t ? t.size() : s instanceof Shape.Continuation c ? c.size() : Double.MAX_VALUE)
        .min()
        .orElse(Double.MAX_VALUE);
  }

  private static List<Drawing> drawings(View view, TitleBlock block, Setting setting) {
    List<Drawing> drawings = new ArrayList<>();
    List<List<Shape>> sheets = setting.packing.sheets("sheet");
    for (int i = 0; i < sheets.size(); i++) {
      Sketch content = new Sketch();
      sheets.get(i).forEach(s -> content.add(s.scaled(setting.scale)));
      Sketch sheet = setting.frame.sketch(block, view, i + 1, sheets.size());
      Bounds room = setting.frame.room();
      Bounds bounds = content.bounds();
      // A picture of one sheet stands in the middle, and somewhat above it, which looks like the middle.
      double x = room.left() + (room.width() - bounds.width()) / 2 - bounds.left();
      double y = room.top() + Math.min(sheets.size() == 1 ? 60 : 12, (room.height() - bounds.height()) / 2) - bounds.top();
      sheet.add(content, x, y);
      String number = sheets.size() == 1 ? "" : ", sheet " + (i + 1) + " of " + sheets.size();
      drawings.add(
          new Drawing(
              setting.frame.width(), setting.frame.height(), sheet.shapes(), view.title() + ": " + block.plan() + number,
              view.description()));
    }
    return drawings;
  }
}
