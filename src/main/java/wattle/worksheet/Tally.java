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
import wattle.derivation.Derivation;
import wattle.model.Leg;
import wattle.model.LoadClass;

/** Gathers the lines of a worksheet, with their running sum. */
final class Tally {
  private final List<Line> lines = new ArrayList<>();
  private final List<Derivation> results = new ArrayList<>();
  private final Map<Leg, List<Derivation>> onLegs = new EnumMap<>(Leg.class);
  private final Set<LoadClass> apart = EnumSet.noneOf(LoadClass.class);
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

  /** Volt-amperes of the placed loads of a leg. */
  Derivation onLeg(Leg leg) {
    return Sums.sum("appliances to the neutral on leg " + leg, onLegs.getOrDefault(leg, List.of()));
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
          return source.place().split(", as ")[0];
        }
      }
      next.addAll(at.inputs());
    }
    return "";
  }
}
