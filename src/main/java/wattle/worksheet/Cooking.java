package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.model.LoadClass;
import wattle.quantity.Units;

/**
 * Household cooking equipment by table 220.55 of NFPA 70: its three columns and their notes. Column C covers everything;
 * what is small enough for columns A and B may be taken there instead. Of the ways allowed the least is taken.
 */
final class Cooking {
  private final Inputs inputs;
  private final Figures figures;
  private final List<ConnectedLoad> inTable = new ArrayList<>();
  private final List<ConnectedLoad> tooLarge = new ArrayList<>();
  private final List<ConnectedLoad> tooSmall = new ArrayList<>();

  Cooking(Inputs inputs, Figures figures) {
    this.inputs = inputs;
    this.figures = figures;
    double least = figures.limit("cooking-from").si();
    double most = figures.limit("cooking-most").si();
    for (ConnectedLoad load : inputs.all(LoadClass.COOKING)) {
      (load.voltAmperes() <= least ? tooSmall : load.voltAmperes() > most ? tooLarge : inTable).add(load);
    }
  }

  /** Those that the table does not count: they are appliances like others. */
  List<ConnectedLoad> tooSmall() {
    return tooSmall;
  }

  /** Those above the end of the table: taken as they are. */
  List<ConnectedLoad> tooLarge() {
    return tooLarge;
  }

  /** A part of the equipment with its demand. */
  private record Part(String name, List<ConnectedLoad> loads, Optional<Derivation> factor, Derivation demand,
      boolean onThree) {}

  void add(Tally load, Tally neutral) {
    List<Part> parts = new ArrayList<>(inTable.isEmpty() ? List.of() : least());
    if (!tooLarge.isEmpty()) {
      Derivation rated = Sums.ofLoads("cooking above the table", tooLarge);
      parts.add(new Part("cooking equipment above the table", tooLarge, Optional.empty(), rated, false));
    }
    for (Part part : parts) {
      List<String> names = Sums.names(part.loads);
      Derivation connected = Sums.ofLoads("cooking equipment", part.loads);
      load.add(part.name, connected, part.factor, part.demand, names, "");
      Derivation factor = figures.neutralAppliance(inputs.system());
      neutral.add(part.name, part.demand, factor, names);
      load.betweenLegs(part.demand.si());
      neutral.betweenLegs(part.demand.si() * factor.si());
      if (part.onThree) {
        load.countForHeaviestLeg(LoadClass.COOKING, part.demand.si());
        neutral.countForHeaviestLeg(LoadClass.COOKING, part.demand.si() * factor.si());
      }
    }
  }

  private boolean isOnThree(List<ConnectedLoad> loads) {
    return PhasePairs.applies(inputs, loads);
  }

  private Derivation number(List<ConnectedLoad> loads) {
    return isOnThree(loads) ? PhasePairs.entered(inputs, loads) : Sums.counted("appliances", loads);
  }

  private List<Part> least() {
    List<Part> together = List.of(columnC(inTable));
    double small = figures.limit("cooking-small").si();
    double middle = figures.limit("cooking-middle").si();
    List<ConnectedLoad> a = inTable.stream().filter(l -> l.voltAmperes() < small).toList();
    List<ConnectedLoad> b = inTable.stream().filter(l -> l.voltAmperes() >= small && l.voltAmperes() <= middle).toList();
    List<ConnectedLoad> c = inTable.stream().filter(l -> l.voltAmperes() > middle).toList();
    List<Part> apart = new ArrayList<>();
    if (!a.isEmpty()) {
      apart.add(percent("A", "column-a", a));
    }
    if (!b.isEmpty()) {
      apart.add(percent("B", "column-b", b));
    }
    if (!c.isEmpty()) {
      apart.add(columnC(c));
    }
    return demand(apart) < demand(together) ? apart : together;
  }

  private static double demand(List<Part> parts) {
    return parts.stream().mapToDouble(p -> p.demand.si()).sum();
  }

  private Part percent(String letter, String column, List<ConnectedLoad> loads) {
    int count = Sums.count(loads);
    boolean threePhase = isOnThree(loads);
    Derivation number = number(loads);
    Derivation factor = figures.find(
        "cooking-demand", "column " + letter + " for " + Math.round(number.si()), column, number);
    Derivation connected = Sums.ofLoads("cooking equipment", loads);
    String name = "cooking equipment, column " + letter + ", " + count;
    if (!threePhase) {
      return new Part(name, loads, Optional.of(factor), Sums.times("demand of cooking equipment", connected, factor), false);
    }
    Derivation mean = Derivation.computed(
        "mean rating", "P_a", "P / n", connected.si() / count, Units.VOLT_AMPERE, connected, Sums.number("appliances", count));
    Derivation demand = Derivation.computed(
        "demand of " + Math.round(number.si()), "P_d", "n × P_a × f", number.si() * mean.si() * factor.si(), Units.VOLT_AMPERE,
        number, mean, factor);
    return new Part(name, loads, Optional.empty(), PhasePairs.onThree(demand), true);
  }

  private Part columnC(List<ConnectedLoad> loads) {
    int count = Sums.count(loads);
    boolean threePhase = isOnThree(loads);
    Derivation number = number(loads);
    int entered = (int) Math.round(number.si());
    Derivation base = figures.find("cooking-demand", "column C for " + entered, "column-c", number).named("column C", "P_c");
    Derivation each = figures.find("cooking-demand", "for each", "each", number).named("for each", "P_n");
    Derivation demand = Derivation.computed(
        "column C for " + entered, "P_C", each.si() == 0 ? "P_c" : "P_c + n × P_n", base.si() + entered * each.si(),
        Units.VOLT_AMPERE, base, each, number);
    demand = enlarged(demand, loads, count);
    if (threePhase) {
      demand = PhasePairs.onThree(demand);
    }
    return new Part("cooking equipment, column C, " + count, loads, Optional.empty(), demand, threePhase);
  }

  /** Notes 1 and 2: 5 % for each kW, or major fraction of one, that the average is above 12 kW. */
  private Derivation enlarged(Derivation demand, List<ConnectedLoad> loads, int count) {
    Derivation large = figures.limit("cooking-large").named("12 kW", "P_l");
    double sum = loads.stream().mapToDouble(l -> l.count() * Math.max(l.voltAmperes(), large.si())).sum();
    double average = sum / count;
    double over = Math.floor((average - large.si()) / 1000 + 0.5);
    if (over <= 0) {
      return demand.named(demand.name(), "P");
    }
    Derivation addition = figures.limit("cooking-addition").named("addition for each kW", "f_a");
    Derivation kilowatts = Derivation.computed(
        "kW above, to the nearest", "k", "P_a − P_l", over, Units.ONE,
        Derivation.computed(
            "average rating, none taken below " + large.value().text(), "P_a", "mean of the ratings", average,
            Units.VOLT_AMPERE, Sums.ofLoads("cooking equipment", loads), large),
        large);
    return Derivation.computed(
        "column C enlarged", "P", "P_C × (1 + k × f_a)", demand.si() * (1 + over * addition.si()), Units.VOLT_AMPERE,
        demand.named(demand.name(), "P_C"), kilowatts, addition);
  }
}
