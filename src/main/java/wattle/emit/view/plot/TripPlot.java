package wattle.emit.view.plot;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Plate;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;
import wattle.faults.TimeCurrent;
import wattle.faults.Withstand;
import wattle.quantity.Quantity;
import wattle.quantity.UnitSystem;
import wattle.quantity.Units;
import wattle.words.BreakerWords;
import wattle.words.Caution;

/**
 * Draws the time-current plot of a branch: the band that its breaker trips in, what the weakest conductor withstands, and
 * beneath, on the same scale of current, from what to what a fault at each box drives.
 */
public final class TripPlot {
  private static final double WIDE = 560;
  private static final double HIGH = 420;
  /** Room for the names of boxes: as wide as the longest of them, within these. */
  private static final double LEFT = 130;
  private static final double MOST_LEFT = 300;
  private static final double LANE = 17;
  private static final int MOST_LANES = 16;
  private static final double SHORTEST = 0.01;
  private static final double LONGEST = 10000;
  private static final double TYPE = 10;

  /** What title blocks say of a plot. */
  static final String BY_AXES = "as on the axes";

  private final TimeCurrent study;
  private final UnitSystem units;
  private final Sketch sketch = new Sketch();
  private final LogScale amperes;
  private final double left;
  private final LogScale seconds = new LogScale(SHORTEST, LONGEST, HIGH, 0);

  private TripPlot(TimeCurrent study, UnitSystem units) {
    this.study = study;
    this.units = units;
    left = left(study.boxes().stream().limit(MOST_LANES).map(TimeCurrent.Box::name).toList(), LEFT);
    double most = study.boxes().stream().mapToDouble(TimeCurrent.Box::mostAmperes).max().orElse(0);
    double least = study.boxes().stream().mapToDouble(TimeCurrent.Box::leastAmperes).min().orElse(Double.MAX_VALUE);
    double rating = study.curve().rating();
    amperes = new LogScale(
        LogScale.roundDown(Math.min(rating * 0.8, Math.max(least, rating / 1000))),
        LogScale.roundUp(Math.max(most, study.curve().shownTo() * rating) * 1.2), 0, WIDE);
  }

  /** @param least what is taken where names are short */
  static double left(List<String> names, double least) {
    double longest = names.stream().mapToDouble(n -> Fit.width(n, TYPE, false)).max().orElse(0);
    return Math.max(least, Math.min(MOST_LEFT, longest + 29));
  }

  public static Drawing of(TimeCurrent study, UnitSystem units) {
    return plate(study, units).drawing();
  }

  /** The plot for sheets. */
  public static Plate plate(TimeCurrent study, UnitSystem units) {
    return new TripPlot(study, units).plate();
  }

  private Plate plate() {
    band();
    grid();
    edges();
    if (isWithstandShown()) {
      withstand(study.weakest().orElseThrow());
    }
    Optional<TimeCurrent.Box> worst = study.boxes().stream().min(Comparator.comparingDouble(TimeCurrent.Box::leastAmperes));
    worst.ifPresent(this::least);
    lanes(HIGH + 52, worst);
    sketch.fitted(
        -left + 20, -38,
        (study.curve().isFuse() ? "Fuse " : "Breaker ") + study.breaker().id() + ", " + BreakerWords.rating(study.breaker()) + "; "
            + study.branch().wiring().text(),
        11,
        false, Anchor.START, WIDE + left - 20);
    sketch.text(-left + 20, -14, "Time", TYPE, true, Anchor.START);
    return new Plate(sketch.shapes(), legend(worst), title(), "", BY_AXES, description(worst));
  }

  /** The least fault of the branch, which is the worst for it: its line is named over the frame. */
  private void least(TimeCurrent.Box worst) {
    double x = amperes.at(worst.leastAmperes());
    sketch.line(x, 0, x, HIGH, Stroke.DASHED);
    String words = "least fault " + amperes(worst.leastAmperes());
    double half = Fit.width(words, TYPE, false) / 2;
    sketch.text(Math.min(Math.max(x, half), WIDE - half), -5, words, TYPE, false, Anchor.MIDDLE);
    sketch.add(new Shape.Circle(x, HIGH, 4, Stroke.THIN, Fill.ALARM));
  }

  private String title() {
    String name = study.branch().name();
    String label = study.branch().label().or(study.breaker()::label).orElse(name);
    return "Time and current: " + name + (label.equals(name) ? "" : ", " + label);
  }

  private void band() {
    List<Shape.Corner> corners = new ArrayList<>();
    study.fastest().forEach(p -> corners.add(corner(p)));
    corners.add(new Shape.Corner(WIDE, corners.get(corners.size() - 1).y()));
    List<TimeCurrent.Point> slow = study.slowest();
    corners.add(new Shape.Corner(WIDE, corner(slow.get(slow.size() - 1)).y()));
    for (int i = slow.size() - 1; i >= 0; i--) {
      corners.add(corner(slow.get(i)));
    }
    sketch.add(new Shape.Area(corners));
  }

  private Shape.Corner corner(TimeCurrent.Point point) {
    return new Shape.Corner(amperes.at(point.amperes()), seconds.at(Math.max(SHORTEST, point.seconds())));
  }

  private void grid() {
    double free = Double.NEGATIVE_INFINITY;
    for (double tick : amperes.ticks()) {
      double x = amperes.at(tick);
      double half = Fit.width(amperes(tick), TYPE, false) / 2;
      sketch.line(x, 0, x, HIGH, Stroke.FAINT);
      // Over many decades ticks are closer than their figures are wide.
      if (x - half > free) {
        sketch.text(x, HIGH + 15, amperes(tick), TYPE, false, Anchor.MIDDLE);
        free = x + half + 4;
      }
    }
    for (double tick : seconds.decades()) {
      sketch.line(0, seconds.at(tick), WIDE, seconds.at(tick), Stroke.FAINT);
      sketch.text(-8, seconds.at(tick) + 3.5, Quantity.plain(tick, 2) + " s", TYPE, false, Anchor.END);
    }
    sketch.box(0, 0, WIDE, HIGH, Stroke.THIN, Fill.NONE);
    sketch.text(WIDE, HIGH + 32, "Current", TYPE, true, Anchor.END);
  }

  private static String amperes(double amperes) {
    return amperes >= 1000 ? Quantity.plain(amperes / 1000, 3) + " kA" : Quantity.plain(amperes, 3) + " A";
  }

  private void edges() {
    edge(study.fastest());
    edge(study.slowest());
  }

  private void edge(List<TimeCurrent.Point> points) {
    for (int i = 1; i < points.size(); i++) {
      between(corner(points.get(i - 1)), corner(points.get(i)), Stroke.THIN);
    }
    Shape.Corner last = corner(points.get(points.size() - 1));
    between(last, new Shape.Corner(WIDE, last.y()), Stroke.THIN);
  }

  private void between(Shape.Corner from, Shape.Corner to, Stroke stroke) {
    boolean onFrame = from.y() == to.y() && (from.y() == 0 || from.y() == HIGH);
    if (!onFrame) {
      sketch.line(from.x(), from.y(), to.x(), to.y(), stroke);
    }
  }

  /** Current at the upper end of the line of what the weakest conductor withstands. */
  private double withstandFrom() {
    return Math.max(amperes.least(), Math.sqrt(study.weakest().orElseThrow().ampereSquaredSeconds() / study.adiabaticSeconds()));
  }

  /** A thick conductor withstands more than any current of the plot. */
  private boolean isWithstandShown() {
    return study.weakest().isPresent() && withstandFrom() < amperes.most();
  }

  /** The line and, beside the frame where no line of the grid strikes through, what it is. */
  private void withstand(Withstand weakest) {
    double letThrough = weakest.ampereSquaredSeconds();
    double from = withstandFrom();
    double to = Math.min(amperes.most(), Math.sqrt(letThrough / SHORTEST));
    double high = seconds.at(letThrough / from / from);
    double low = seconds.at(letThrough / to / to);
    sketch.line(amperes.at(from), high, amperes.at(to), low, Stroke.THICK);
    double label = to < amperes.most() ? high : low;
    if (to < amperes.most()) {
      sketch.line(amperes.at(from), high, WIDE, high, Stroke.FAINT);
    }
    double y = Math.min(Math.max(label, 6), HIGH - 16);
    sketch.text(WIDE + 8, y + 3.5, size(weakest), TYPE);
    sketch.text(WIDE + 8, y + 16.5, "withstands", TYPE);
  }

  private static String size(Withstand weakest) {
    return weakest.wire().size() + " " + weakest.wire().metal().word();
  }

  /** One lane for each box, from its least to its most fault; the y beneath the last. */
  private double lanes(double top, Optional<TimeCurrent.Box> worst) {
    List<TimeCurrent.Box> boxes = study.boxes();
    double y = top;
    sketch.text(-left + 20, y, boxes.isEmpty() ? "No fault current is known" : "Fault at", TYPE, true, Anchor.START);
    y += LANE;
    for (TimeCurrent.Box box : boxes.subList(0, Math.min(MOST_LANES, boxes.size()))) {
      double from = amperes.at(box.leastAmperes());
      double to = amperes.at(box.mostAmperes());
      sketch.fitted(-8, y, box.name(), TYPE, false, Anchor.END, left - 28);
      sketch.line(from, y - 3.5, to, y - 3.5, Stroke.THICK);
      String words = amperes(box.leastAmperes()) + " to " + amperes(box.mostAmperes());
      double wide = Fit.width(words, TYPE, false) + 8;
      // Behind its bar, before it, or where bars from side to side leave no room, beside the frame.
      boolean before = to + wide > WIDE && from - wide > 0;
      double behind = to + wide > WIDE ? WIDE + 8 : to + 8;
      sketch.text(before ? from - 8 : behind, y, words, TYPE, false, before ? Anchor.END : Anchor.START);
      if (worst.filter(box::equals).isPresent()) {
        sketch.add(new Shape.Circle(from, y - 3.5, 4, Stroke.THIN, Fill.ALARM));
      }
      y += LANE;
    }
    if (boxes.size() > MOST_LANES) {
      sketch.text(0, y, (boxes.size() - MOST_LANES) + " more boxes: see table --of faults", TYPE);
      y += LANE;
    }
    return y;
  }

  private Legend legend(Optional<TimeCurrent.Box> worst) {
    List<Legend.Item> items = new ArrayList<>();
    items.add(
        new Legend.Item(
            new Sketch().box(0, -5, 24, 10, Stroke.THIN, Fill.SHADE).shapes(), 24,
            (study.curve().isFuse() ? "The fuse opens" : "The breaker trips") + " somewhere in here: between the bounds"
                + " of " + study.curve().standard() + " and of common practice"));
    if (isWithstandShown()) {
      items.add(
          new Legend.Item(
              new Sketch().line(0, 0, 24, 0, Stroke.THICK).shapes(), 24,
              size(study.weakest().get()) + " withstands a fault up to this line (k² × S² = "
                  + study.weakest().get().letThrough().value().text() + ", up to "
                  + Quantity.plain(study.adiabaticSeconds(), 2) + " s)"));
    }
    worst.ifPresent(
        w -> items.add(
            new Legend.Item(
                new Sketch().line(0, 0, 24, 0, Stroke.DASHED).add(new Shape.Circle(12, 0, 4, Stroke.THIN, Fill.ALARM)).shapes(), 24,
                "The least fault: " + amperes(w.leastAmperes()) + " at " + w.name() + ", " + w.leastKind().words())));
    String beyond = study.weakest().isPresent() && !isWithstandShown()
        ? size(study.weakest().get()) + " withstands more than any current shown, for " + Quantity.plain(study.adiabaticSeconds(), 2)
            + " s. "
        : "";
    return new Legend(
        items,
        List.of(
            beyond + (study.curve().isFuse()
                ? "The band ends where " + study.curve().standard() + " allows the fuse the longest time; most open far sooner."
                : "Checks assume that the breaker trips at once by " + amperes(study.curve().usualAmperes()) + "."),
            "Bolted faults, conductors from " + units.known(Quantity.of(20, Units.CELSIUS))
                + " to the rating of their insulation. Below 0.1 s the maker's let-through decides.",
            "The maker's own curve comes before this one. " + Caution.SHORT));
  }

  private String description(Optional<TimeCurrent.Box> worst) {
    return "A plot of time over current on scales of logarithms. " + (study.curve().isFuse()
        ? "Fuse " + study.breaker().id() + " opens before the end of the band."
        : (study.curve().isFuse() ? "Fuse " : "Breaker ") + study.breaker().id() + " is assumed to trip at once by "
            + amperes(study.curve().usualAmperes()) + ".")
        + worst.map(w -> " The least fault is " + amperes(w.leastAmperes()) + " at " + w.name() + ": it is cleared in "
            + study.curve().at(w.leastAmperes()).text() + ".").orElse("");
  }
}
