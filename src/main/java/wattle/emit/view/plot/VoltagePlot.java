package wattle.emit.view.plot;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Plate;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.UnitSystem;
import wattle.quantity.Units;
import wattle.trials.VoltageProfile;

/**
 * Draws the voltage along a branch, over the length of cable from its panel; beneath, on the same scale of length, the
 * figures of every box.
 */
public final class VoltagePlot {
  private static final double WIDE = 560;
  private static final double HIGH = 300;
  private static final double LEFT = 150;
  private static final double LANE = 17;
  private static final int MOST_LANES = 24;
  private static final double TYPE = 10;

  /** Height of a label beside the frame. */
  private static final double LABEL = 14;

  private final VoltageProfile profile;
  private final Optional<Double> branchLimit;
  private final Optional<Double> wholeLimit;
  private final Sketch sketch = new Sketch();
  private final UnitSystem units;
  private final Unit unit;
  private final LinearScale distances;
  private final LinearScale fall;
  private final double left;

  private VoltagePlot(VoltageProfile profile, Library library, UnitSystem units) {
    this.profile = profile;
    this.units = units;
    left = TripPlot.left(profile.stops().stream().limit(MOST_LANES).map(VoltageProfile.Stop::name).toList(), LEFT);
    unit = units.shown(Units.METER);
    branchLimit = limit(library, "voltage-fall-branch").map(l -> 1 - profile.stops().get(0).fullLoad() + l);
    wholeLimit = limit(library, "voltage-fall-whole");
    double farthest = profile.stops().stream().mapToDouble(this::distance).max().orElseThrow();
    double deepest = profile.stops().stream().mapToDouble(s -> 1 - s.fullLoad()).max().orElseThrow();
    double stated = profile.stops().stream().flatMap(s -> s.stated().stream()).mapToDouble(s -> 1 - s).max().orElse(0);
    double end = Math.max(Math.max(deepest, stated), Math.max(branchLimit.orElse(0.0), wholeLimit.orElse(0.0)));
    distances = new LinearScale(0, Math.max(1, farthest * 1.05), 0, WIDE);
    double highest = profile.stops().stream().flatMap(s -> Stream.concat(s.stated().stream(), Stream.of(s.fullLoad())))
        .mapToDouble(s -> 1 - s)
        .min().orElse(0);
    fall = new LinearScale(Math.min(0, highest), end > 0 ? end * 1.08 : 0.01, 0, HIGH);
  }

  private static Optional<Double> limit(Library library, String name) {
    return library.limit(name).map(Limit::value).map(Quantity::si);
  }

  public static Drawing of(VoltageProfile profile, Library library, UnitSystem units) {
    return plate(profile, library, units).drawing();
  }

  /** The plot for sheets. */
  public static Plate plate(VoltageProfile profile, Library library, UnitSystem units) {
    return new VoltagePlot(profile, library, units).plate();
  }

  private double distance(VoltageProfile.Stop stop) {
    return Quantity.of(stop.meters(), Units.METER).in(unit);
  }

  private Plate plate() {
    grid();
    limits();
    for (VoltageProfile.Stop stop : profile.stops()) {
      double x = distances.at(distance(stop));
      double y = fall.at(1 - stop.fullLoad());
      if (stop.before() >= 0) {
        VoltageProfile.Stop before = profile.stops().get(stop.before());
        sketch.line(distances.at(distance(before)), fall.at(1 - before.fullLoad()), x, y, Stroke.THICK);
      }
      sketch.dot(x, y);
    }
    worst().ifPresent(s -> sketch.add(new Shape.Circle(distances.at(distance(s)), fall.at(1 - s.fullLoad()), 4, Stroke.THIN, Fill.ALARM)));
    profile.stops().forEach(
        s -> s.stated()
            .ifPresent(v -> sketch.add(new Shape.Circle(distances.at(distance(s)), fall.at(1 - v), 3.2, Stroke.THIN, Fill.PAPER))));
    lanes(HIGH + 52);
    sketch.fitted(
        -left + 20, -38, Quantity.plain(profile.amperes(), 3) + " A; " + profile.branch().wiring().text(), 11, false, Anchor.START, WIDE);
    sketch.text(-left + 20, -14, "Voltage drop", TYPE, true, Anchor.START);
    return new Plate(sketch.shapes(), legend(), title(), "", TripPlot.BY_AXES, description());
  }

  private String title() {
    String name = profile.branch().name();
    return "Voltage along " + name + profile.branch().label().map(l -> ", " + l).orElse("");
  }

  /** Where the least is left at full load, beyond the panel. */
  private Optional<VoltageProfile.Stop> worst() {
    return profile.stops().stream().skip(1).min(Comparator.comparingDouble(VoltageProfile.Stop::fullLoad));
  }

  private void grid() {
    for (double tick : distances.ticks(distances.step(10))) {
      sketch.line(distances.at(tick), 0, distances.at(tick), HIGH, Stroke.FAINT);
      sketch.text(distances.at(tick), HIGH + 15, Quantity.plain(tick, 3) + " " + unit.symbol(), TYPE, false, Anchor.MIDDLE);
    }
    for (double tick : fall.ticks(fall.step(8))) {
      sketch.line(0, fall.at(tick), WIDE, fall.at(tick), Stroke.FAINT);
      sketch.text(-8, fall.at(tick) + 3.5, percent(tick), TYPE, false, Anchor.END);
    }
    sketch.box(0, 0, WIDE, HIGH, Stroke.THIN, Fill.NONE);
    sketch.text(WIDE, HIGH + 32, "Cable from the panel", TYPE, true, Anchor.END);
  }

  private void limits() {
    branchLimit.ifPresent(l -> sketch.line(0, fall.at(l), WIDE, fall.at(l), Stroke.DASHED));
    wholeLimit.ifPresent(l -> sketch.line(0, fall.at(l), WIDE, fall.at(l), Stroke.DASHED));
    // Beside the frame, where no line of the grid strikes through; what would stand on each other is pushed apart.
    double branch = branchLimit.map(fall::at).orElse(0.0);
    double whole = wholeLimit.map(fall::at).orElse(0.0);
    boolean close = branchLimit.isPresent() && wholeLimit.isPresent() && Math.abs(branch - whole) < LABEL;
    double apart = close ? (LABEL - Math.abs(branch - whole)) / 2 : 0;
    double up = branch <= whole ? -apart : apart;
    branchLimit.ifPresent(l -> sketch.text(WIDE + 8, branch + up + 3.5, percent(alongBranch(l)) + " along the branch", TYPE));
    wholeLimit.ifPresent(l -> sketch.text(WIDE + 8, whole - up + 3.5, percent(l) + " from the service", TYPE));
  }

  /** The limit of the branch alone, of what it is from the service. */
  private double alongBranch(double limit) {
    return limit - (1 - profile.stops().get(0).fullLoad());
  }

  private double lanes(double top) {
    double y = top;
    sketch.text(-left + 20, y, "Left at full load", TYPE, true, Anchor.START);
    y += LANE;
    int shown = Math.min(MOST_LANES, profile.stops().size());
    for (VoltageProfile.Stop stop : profile.stops().subList(0, shown)) {
      double x = distances.at(distance(stop));
      sketch.fitted(-8, y, stop.name(), TYPE, false, Anchor.END, left - 28);
      sketch.dot(x, y - 3.5);
      String words = Quantity.plain(stop.fullLoad() * stop.nominalVolts(), 4) + " V of " + Quantity.plain(stop.nominalVolts(), 4) + " V"
          + stop.stated().map(s -> "; as stated " + Quantity.plain(s * stop.nominalVolts(), 4) + " V").orElse("");
      boolean right = x < WIDE / 2;
      sketch.text(right ? x + 8 : x - 8, y, words, TYPE, false, right ? Anchor.START : Anchor.END);
      y += LANE;
    }
    if (profile.stops().size() > shown) {
      sketch.text(0, y, (profile.stops().size() - shown) + " more boxes: see table --of voltage", TYPE);
      y += LANE;
    }
    return y;
  }

  private Legend legend() {
    List<Legend.Item> items = new ArrayList<>();
    items.add(
        new Legend.Item(
            new Sketch().line(0, 0, 24, 0, Stroke.THICK).shapes(), 24,
            "The full rating of the breaker drawn at one place, power factor 1, nothing else on"));
    if (worst().isPresent()) {
      items.add(
          new Legend.Item(
              new Sketch().add(new Shape.Circle(12, 0, 4, Stroke.THIN, Fill.ALARM)).shapes(), 24,
              "Largest drop: " + worst().get().name()));
    }
    if (profile.stops().stream().anyMatch(s -> s.stated().isPresent())) {
      items.add(
          new Legend.Item(
              new Sketch().add(new Shape.Circle(12, 0, 3.2, Stroke.THIN, Fill.PAPER)).shapes(), 24, "Every stated load on at once"));
    }
    if (branchLimit.isPresent() || wholeLimit.isPresent()) {
      String words = branchLimit.map(l -> percent(alongBranch(l)) + " along the branch").orElse("");
      String whole = wholeLimit.map(l -> percent(l) + " from the service").orElse("");
      items.add(
          new Legend.Item(
              new Sketch().line(0, 0, 24, 0, Stroke.DASHED).shapes(), 24,
              "Advised limit: " + words + (words.isEmpty() || whole.isEmpty() ? "" : "; ") + whole));
    }
    return new Legend(
        items, List.of("Conductors at " + units.known(Quantity.of(75, Units.CELSIUS))
            + ", nominal voltage where the service run begins. Advice, not a rule; the local code decides."));
  }

  private static String percent(double share) {
    return Quantity.plain(Math.abs(share) < 1e-12 ? 0 : share * 100, 2) + " %";
  }

  private String description() {
    VoltageProfile.Stop worst = profile.stops().stream().min(java.util.Comparator.comparingDouble(VoltageProfile.Stop::fullLoad))
        .orElseThrow();
    return "Voltage over length of cable. With " + Quantity.plain(profile.amperes(), 3) + " A at " + worst.name() + " "
        + Quantity.plain(worst.fullLoad() * worst.nominalVolts(), 4) + " V of " + Quantity.plain(worst.nominalVolts(), 4) + " V are left, "
        + percent(1 - worst.fullLoad()) + " less.";
  }
}
