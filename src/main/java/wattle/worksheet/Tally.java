package wattle.worksheet;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import wattle.derivation.Derivation;
import wattle.model.Leg;
import wattle.model.LoadClass;
import wattle.quantity.Units;

/** Gathers the lines of a worksheet, with their running sum. */
final class Tally {
  /** Where a place goes on with the page on which it was read. */
  private static final Pattern REPRINT = Pattern.compile("[,;] (?:as |for \\S+ to \\S+ as )");

  private final List<Line> lines = new ArrayList<>();
  private final List<Derivation> results = new ArrayList<>();
  private final Map<Leg, List<Derivation>> onLegs = new EnumMap<>(Leg.class);
  private final Set<LoadClass> apart = EnumSet.noneOf(LoadClass.class);
  private final List<Derivation> single = new ArrayList<>();
  private double betweenLegs;
  private boolean parted;
  private double onHeaviest;
  private double sum;

  /** A line that lists what a later one counts. */
  void list(String name, Derivation connected, List<String> devices) {
    list(name, connected, devices, article(connected));
  }

  /** The same, by an article that its figures do not name. */
  void list(String name, Derivation connected, List<String> devices, String article) {
    line(name, Optional.of(connected), Optional.empty(), Optional.empty(), devices, "", article);
  }

  /** A line for what is left out, and why. */
  void leaveOut(String name, Derivation connected, List<String> devices, String article, String why) {
    line(name, Optional.of(connected), Optional.empty(), Optional.empty(), devices, why, article);
  }

  /** A line that is its load times a factor. */
  void add(String name, Derivation connected, Derivation factor, List<String> devices) {
    add(name, connected, Optional.of(factor), Sums.times(name, connected, factor), devices, factor.remark());
  }

  /** A line with a result of its own. */
  void add(
      String name,
      Derivation connected,
      Optional<Derivation> factor,
      Derivation result,
      List<String> devices,
      String remark) {
    results.add(result.named(name, "P"));
    sum += result.si();
    String article = factor.map(Tally::article).filter(a -> !a.isEmpty()).orElseGet(() -> article(result));
    line(name, Optional.of(connected), factor, Optional.of(result), devices, remark, article);
  }

  /** A line of another sheet, with its result if it has one. */
  void addLine(Line line) {
    line.result().ifPresent(r -> {
      results.add(r.named(line.name(), "P"));
      sum += r.si();
    });
    line(line.name(), line.connected(), line.factor(), line.result(), line.devices(), line.remark(), line.article());
  }

  private void line(
      String name,
      Optional<Derivation> connected,
      Optional<Derivation> factor,
      Optional<Derivation> result,
      List<String> devices,
      String remark,
      String article) {
    lines.add(new Line(name, article, connected, factor, result, sum, devices, remark));
  }

  /** Notes the legs of single loads to the neutral, which may not balance. */
  void place(List<ConnectedLoad> loads, Derivation factor) {
    for (ConnectedLoad load : loads) {
      load.leg()
          .filter(l -> load.neutral())
          .ifPresent(
              l -> onLegs
                  .computeIfAbsent(l, leg -> new ArrayList<>())
                  .add(Sums.times(load.name(), load.neutralPart().derivation(), factor)));
    }
  }

  /** Notes that a part of a load is on one leg, to the neutral, an equal part of it on each of so many. */
  void place(Leg leg, Derivation load, int legs) {
    onLegs.computeIfAbsent(leg, l -> new ArrayList<>())
        .add(
            legs == 1
                ? load
                : Derivation.computed(
                    load.name() + ", on leg " + leg, "P", "P / n", load.si() / legs, Units.VOLT_AMPERE, load.named(load.name(), "P"),
                    Sums.number("legs", legs)));
  }

  /** Notes a load of the neutral that nothing balances. */
  void single(Derivation load) {
    single.add(load);
  }

  /** Notes that so much of what has been added is between two legs. */
  void betweenLegs(double voltAmperes) {
    betweenLegs += voltAmperes;
  }

  /** Notes what of these loads is between two legs. */
  void betweenLegs(List<ConnectedLoad> loads, Derivation factor) {
    loads.forEach(l -> betweenLegs(factor.si() * l.total() * (1 - l.neutralShare())));
  }

  /** Says that every load between two legs is noted, so that the rest is to the neutral. */
  void partAllByConnection() {
    parted = true;
  }

  /** What is between two legs; all of it where that is not noted. */
  double betweenLegs() {
    return parted ? betweenLegs : sum - onLegs.values().stream().flatMap(List::stream).mapToDouble(Derivation::si).sum();
  }

  /** The placed loads of a leg, each to the neutral. */
  List<Derivation> placed(Leg leg) {
    return List.copyOf(onLegs.getOrDefault(leg, List.of()));
  }

  /** Loads of the neutral that nothing balances. */
  List<Derivation> single() {
    return List.copyOf(single);
  }

  /** Notes that a result is that of the heaviest leg taken on all three, so that it is not to be spread as wired once more. */
  void countForHeaviestLeg(LoadClass loadClass, double voltAmperes) {
    apart.add(loadClass);
    onHeaviest += voltAmperes;
  }

  /** Volt-amperes counted for the heaviest leg. */
  double onHeaviest() {
    return onHeaviest;
  }

  /** Classes of what is counted so. */
  Set<LoadClass> apart() {
    return apart;
  }

  double sum() {
    return sum;
  }

  List<Line> lines() {
    return lines;
  }

  Derivation total(String name) {
    return Sums.sum(name, results);
  }

  /** Where the nearest figure of a code that a derivation rests on was published; empty where there is none. */
  static String article(Derivation derivation) {
    Deque<Derivation> next = new ArrayDeque<>(List.of(derivation));
    while (!next.isEmpty()) {
      Derivation at = next.poll();
      for (var source : at.sources()) {
        if (!source.place().isEmpty()) {
          // The page on which a figure was read belongs to its derivation, not into a column of articles.
          return REPRINT.split(source.place())[0];
        }
      }
      next.addAll(at.inputs());
    }
    return "";
  }
}
