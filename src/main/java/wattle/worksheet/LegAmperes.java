package wattle.worksheet;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.model.Leg;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * From volt-amperes to the amperes of each leg and of the neutral, as the examples of Annex D of NFPA 70 do it: what is not placed is
 * spread evenly over the legs, single loads to the neutral stand whole on their own leg (D1(b)), and of two legs of a wye what is between
 * the legs is divided by their voltage and the rest by twice that to the neutral (D5(a)). On three phases each line is spread as
 * what it counts is wired.
 */
final class LegAmperes {
  private final Inputs inputs;
  private final SupplySystem system;
  private final Figures figures;

  LegAmperes(Inputs inputs, Figures figures) {
    this.inputs = inputs;
    system = inputs.system();
    this.figures = figures;
  }

  /** Amperes of each leg, in order. */
  Map<Leg, Derivation> legs(String name, Derivation total, Tally tally) {
    Map<Leg, Derivation> legs = new EnumMap<>(Leg.class);
    if (system.legs().size() == 2) {
      Derivation even = even("balanced part of the " + name, total, tally, placed(tally));
      for (Leg leg : system.legs()) {
        Derivation own = Sums.sum("loads to the neutral on leg " + leg, tally.placed(leg));
        legs.put(
            leg, own.si() == 0
                ? even.named(name + ", leg " + leg, "I")
                : Derivation.computed(
                    name + ", leg " + leg, "I", "I_b + P_l / U_n", even.si() + own.si() / system.legToNeutralVolts(), Units.AMPERE,
                    even.named(even.name(), "I_b"), own.named(own.name(), "P_l"), toNeutral()));
      }
      return legs;
    }
    Map<Leg, Derivation> factors = LegSpread.factors(inputs, figures, tally);
    Derivation mean = mean(name, total);
    for (Leg leg : system.legs()) {
      Derivation factor = factors.get(leg);
      legs.put(leg, (factor == null ? mean : spread(name, mean, total, tally, factor)).named(name + ", leg " + leg, "I"));
    }
    return legs;
  }

  /**
   * What governs: the leg that carries most, with no word of a leg where all carry the same. On two legs of a wye it is the whole load by
   * the voltage between the legs where that is more, as example D5(b) gives it first.
   */
  Derivation governing(String name, Derivation total, Map<Leg, Derivation> legs) {
    Derivation most = heaviest(name, legs);
    Derivation whole = mean(name, total);
    return system.kind() == SupplySystem.Kind.TWO_LEGS_OF_WYE && whole.si() > most.si() ? whole : most;
  }

  private static Derivation heaviest(String name, Map<Leg, Derivation> legs) {
    Derivation most = legs.values().stream().max(Comparator.comparingDouble(Derivation::si)).orElseThrow();
    boolean alike = legs.values().stream().allMatch(d -> d.si() > most.si() * (1 - 1e-9) - 1e-9);
    return most.named(alike ? name : name + ", " + (legs.size() == 2 ? "heavier" : "heaviest") + " leg", "I");
  }

  /**
   * The neutral: of single loads on both legs the larger of each pair counts, largest with largest, as in example D1(b); the largest motor
   * of them has its quarter.
   */
  Derivation neutral(String name, Derivation total, Tally tally) {
    Derivation paired = paired(name, total, tally);
    Derivation whole = mean(name, total).named(name, "I_n");
    return system.kind() == SupplySystem.Kind.TWO_LEGS_OF_WYE && whole.si() > paired.si() ? whole : paired;
  }

  private Derivation paired(String name, Derivation total, Tally tally) {
    if (system.legs().size() != 2) {
      Derivation mean = mean(name, total);
      return LegSpread.factors(inputs, figures, tally).values().stream()
          .max(Comparator.comparingDouble(Derivation::si))
          .filter(f -> f.si() > 1 + 1e-6 && total.si() > 0)
          .map(f -> spread(name, mean, total, tally, f).named(name + ", heaviest leg", "I_n"))
          .orElse(mean)
          .named(name, "I_n");
    }
    List<Derivation> apart = new ArrayList<>(placed(tally));
    apart.addAll(tally.single());
    Derivation even = even("balanced part of the " + name, total, tally, apart);
    if (apart.isEmpty()) {
      return even.named(name, "I_n");
    }
    List<Derivation> larger = larger(tally.placed(Leg.A), tally.placed(Leg.B), system.legs());
    larger.addAll(tally.single());
    Derivation single = Sums.sum("single loads, of each pair the larger", larger);
    return Derivation.computed(
        name, "I_n", "I_b + P_s / U_n", even.si() + single.si() / system.legToNeutralVolts(), Units.AMPERE, even.named(even.name(), "I_b"),
        single.named(single.name(), "P_s"), toNeutral())
        .remarking("Of a load on each leg the larger counts for the neutral, as in example D1(b) of Annex D.");
  }

  private List<Derivation> placed(Tally tally) {
    return system.legs().stream().flatMap(l -> tally.placed(l).stream()).toList();
  }

  private static List<Derivation> larger(List<Derivation> one, List<Derivation> other, List<Leg> legs) {
    List<Derivation> first = new ArrayList<>(one);
    List<Derivation> second = new ArrayList<>(other);
    Comparator<Derivation> falling = Comparator.comparingDouble((Derivation d) -> d.si()).reversed();
    Collections.sort(first, falling);
    Collections.sort(second, falling);
    List<Derivation> larger = new ArrayList<>();
    for (int i = 0; i < Math.max(first.size(), second.size()); i++) {
      boolean fromFirst = i >= second.size() || i < first.size() && first.get(i).si() >= second.get(i).si();
      larger.add(fromFirst ? first.get(i) : second.get(i));
    }
    return larger;
  }

  /** What is left when single loads are taken off, spread evenly over two legs. */
  private Derivation even(String name, Derivation total, Tally tally, List<Derivation> apart) {
    Derivation load = total;
    double single = apart.stream().mapToDouble(Derivation::si).sum();
    if (single > 0) {
      List<Derivation> terms = new ArrayList<>(List.of(total.named(total.name(), "P")));
      Derivation off = Sums.sum("single loads to the neutral", apart);
      terms.add(off.named(off.name(), "P_s"));
      load = Derivation.computed(
          "load without single loads to the neutral", "P", "P − P_s", new Value.Amount(Sums.voltAmperes(Math.max(0, total.si() - single))),
          terms);
    }
    if (system.kind() != SupplySystem.Kind.TWO_LEGS_OF_WYE) {
      return mean(name, load);
    }
    double between = Math.min(tally.betweenLegs(), load.si());
    if (between >= load.si() * (1 - 1e-9)) {
      return mean(name, load);
    }
    Derivation across = Derivation.computed("part of it between the legs", "P_a", "", new Value.Amount(Sums.voltAmperes(between)),
        List.of())
        .remarking("What of the counted loads is between the legs.");
    return Derivation.computed(
        name, "I", "(P − P_a) / (2 × U_n) + P_a / U",
        (load.si() - between) / (2 * system.legToNeutralVolts()) + between / system.legToLegVolts(), Units.AMPERE,
        load.named(load.name(), "P"),
        across, toNeutral(), betweenLegs())
        .remarking("Loads to the neutral by the voltage to the neutral, loads between the legs by theirs, as in example D5(a) of Annex D.");
  }

  private Derivation mean(String name, Derivation load) {
    boolean threePhase = system.kind() == SupplySystem.Kind.THREE_PHASE_WYE;
    if (system.legs().size() == 1) {
      return Derivation.computed(
          name, "I", "P / U_n", load.si() / system.legToNeutralVolts(), Units.AMPERE, load.named(load.name(), "P"), toNeutral());
    }
    double volts = (threePhase ? Math.sqrt(3) : 1) * system.legToLegVolts();
    return Derivation.computed(
        name, "I", threePhase ? "P / (√3 × U)" : "P / U", load.si() / volts, Units.AMPERE, load.named(load.name(), "P"), betweenLegs());
  }

  private Derivation betweenLegs() {
    return Derivation.stated("voltage between legs", "U", Quantity.of(system.legToLegVolts(), Units.VOLT));
  }

  private Derivation toNeutral() {
    return Derivation.stated("voltage to the neutral", "U_n", Quantity.of(system.legToNeutralVolts(), Units.VOLT));
  }

  /** On three phases, a leg as wired; what is counted for the heaviest already is not spread once more. */
  private static Derivation spread(String name, Derivation mean, Derivation total, Tally tally, Derivation factor) {
    if (total.si() == 0) {
      return mean;
    }
    double share = (total.si() - tally.onHeaviest()) / total.si();
    Derivation part = Derivation.computed(
        "part of it that is spread as wired", "a", "", new Value.Amount(Quantity.of(100 * share, Units.PERCENT)), List.of())
        .remarking("The rest, ranges and dryers by 220.54 and 220.55, is counted for the heaviest leg already.");
    return Derivation.computed(
        name, mean.symbol(), "I_m × (1 + a × (k − 1))", mean.si() * (1 + share * (factor.si() - 1)), Units.AMPERE,
        mean.named(mean.name(), "I_m"), part, factor);
  }
}
