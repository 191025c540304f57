package wattle.worksheet;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.loads.Ends;
import wattle.loads.Flow;
import wattle.loads.LegLoads;
import wattle.model.Leg;
import wattle.model.LoadClass;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * How a load on three phases is spread over them, as wired: each line of the calculation as the loads that it counts are, those of
 * dwellings between the two legs that their panels have, loads outside the dwellings between their own. So a demand factor on what one
 * dwelling has takes nothing off a leg that it is not on.
 */
final class LegSpread {
  private final Inputs inputs;
  private final Figures figures;
  private final Map<String, List<Member>> members = new HashMap<>();
  private final Map<Ends, Double> between = new EnumMap<>(Ends.class);
  private double evenly;

  /** A part of what a line counts, with its rating. */
  private record Member(Optional<Ends> ends, LoadClass loadClass, double voltAmperes) {}

  private LegSpread(Inputs inputs, Figures figures, Tally tally) {
    this.inputs = inputs;
    this.figures = figures;
    inputs.dwellings().forEach(this::gather);
    inputs.common().forEach(l -> gather(l, inputs.placement().of(l), 1));
    for (Line line : tally.lines()) {
      line.result().filter(r -> r.si() > 0).ifPresent(r -> add(line, r.si(), tally.apart()));
    }
  }

  /**
   * The current of each leg as a part of the mean; empty where there are not three legs, or nothing says what is on which. Lines that the
   * calculation has counted for the heaviest leg already are left out.
   */
  static Map<Leg, Derivation> factors(Inputs inputs, Figures figures, Tally tally) {
    if (inputs.system().kind() != SupplySystem.Kind.THREE_PHASE_WYE) {
      return Map.of();
    }
    LegSpread spread = new LegSpread(inputs, figures, tally);
    return spread.between.isEmpty() ? Map.of() : spread.factors();
  }

  private void gather(DwellingUnit unit) {
    Optional<Ends> all = inputs.placement().ofDwelling(unit);
    unit.outlets().forEach(o -> gather(o, unit.alike() > 1 ? Optional.empty() : inputs.placement().of(o), unit.alike()));
    unit.loads().forEach(
        l -> gather(l, unit.alike() > 1 ? Optional.empty() : all.or(() -> inputs.placement().of(l)), unit.alike()));
  }

  private void gather(ConnectedLoad load, Optional<Ends> ends, int alike) {
    members.computeIfAbsent(load.name(), n -> new ArrayList<>()).add(new Member(ends, load.loadClass(), load.total() * alike));
  }

  private void add(Line line, double voltAmperes, Set<LoadClass> apart) {
    List<Member> own = new ArrayList<>();
    line.devices().stream().distinct().forEach(d -> own.addAll(members.getOrDefault(d, List.of())));
    if (!own.isEmpty() && own.stream().allMatch(m -> apart.contains(m.loadClass))) {
      return;
    }
    // What is no load by its name is a circuit or a dwelling: the line counts lighting and circuits too.
    if (own.isEmpty() || !members.keySet().containsAll(line.devices())) {
      inputs.dwellings().forEach(u -> own.add(new Member(inputs.placement().ofDwelling(u), LoadClass.LIGHTING, general(u))));
    }
    double all = own.stream().mapToDouble(Member::voltAmperes).sum();
    if (all > 0) {
      own.forEach(m -> add(m.ends, voltAmperes * m.voltAmperes / all));
    } else {
      evenly += voltAmperes;
    }
  }

  /** What a floor area stands for: the basic load where the code has one, else lighting and circuits. */
  private double general(DwellingUnit unit) {
    if (unit.floorArea().isEmpty()) {
      return 0;
    }
    return figures.maybe("basic-load").isPresent()
        ? unit.alike() * new CanadianDwelling(unit, figures, false).basic().si()
        : new GeneralLoad(inputs.only(unit), figures).list(new Tally()).si();
  }

  private void add(Optional<Ends> ends, double voltAmperes) {
    if (ends.isPresent() && voltAmperes > 0) {
      between.merge(ends.get(), voltAmperes, Double::sum);
    } else {
      evenly += voltAmperes;
    }
  }

  private Map<Leg, Derivation> factors() {
    Map<Ends, Flow> flows = new EnumMap<>(Ends.class);
    between.forEach((ends, load) -> flows.put(ends, Flow.of(load, 1)));
    for (Ends ends : List.of(Ends.A_B, Ends.B_C, Ends.C_A)) {
      flows.merge(ends, Flow.of(evenly / 3, 1), Flow::plus);
    }
    LegLoads all = new LegLoads(flows, 0);
    SupplySystem system = inputs.system();
    double mean = all.total() / (Math.sqrt(3) * system.legToLegVolts());
    Derivation even = amperes("what is spread as wired, spread evenly", "I_e", mean);
    Map<Leg, Derivation> factors = new EnumMap<>(Leg.class);
    for (Leg leg : system.legs()) {
      Derivation own = amperes("leg " + leg + " of that, as wired", "I_h", all.amperes(leg, system));
      factors.put(
          leg,
          Derivation.computed(
              "leg " + leg + " against an even spread", "k", "I_h / I_e", new Value.Amount(Quantity.of(own.si() / even.si(), Units.ONE)),
              List.of(own, even))
              .remarking("Each line of the calculation between the legs that what it counts is wired to, added as phasors."));
    }
    return factors;
  }

  private static Derivation amperes(String name, String symbol, double amperes) {
    return Derivation.computed(name, symbol, "", new Value.Amount(Quantity.of(amperes, Units.AMPERE)), List.of())
        .remarking("From the panels and branches of the plan, at nominal voltage.");
  }
}
