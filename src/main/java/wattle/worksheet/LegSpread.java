package wattle.worksheet;

import java.util.EnumMap;
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
 * How what is connected to three phases is spread over them, as wired: dwellings between the two legs that their panels have, loads
 * outside the dwellings between their own. Demand is taken to be spread as the ratings are, so that the heaviest leg carries as much
 * more than the mean of the three in the calculation as it does of all that is connected, added as phasors.
 */
final class LegSpread {
  private final Inputs inputs;
  private final Figures figures;
  private final Set<LoadClass> apart;
  private final Map<Ends, Double> between = new EnumMap<>(Ends.class);
  private double evenly;

  private LegSpread(Inputs inputs, Figures figures, Set<LoadClass> apart) {
    this.inputs = inputs;
    this.figures = figures;
    this.apart = apart;
    inputs.dwellings().forEach(this::add);
    inputs.common().forEach(l -> add(inputs.placement().of(l), l.total()));
  }

  /**
   * The current of each leg as a part of the mean; empty where there are not three legs, or nothing says what is on which.
   *
   * @param apart classes that the calculation has counted for the heaviest leg already
   */
  static Map<Leg, Derivation> factors(Inputs inputs, Figures figures, Set<LoadClass> apart) {
    if (inputs.system().kind() != SupplySystem.Kind.THREE_PHASE_WYE) {
      return Map.of();
    }
    LegSpread spread = new LegSpread(inputs, figures, apart);
    return spread.between.isEmpty() ? Map.of() : spread.factors();
  }

  private void add(DwellingUnit unit) {
    Optional<Ends> all = inputs.placement().ofDwelling(unit);
    add(all, general(unit));
    unit.outlets().forEach(o -> add(unit.alike() > 1 ? Optional.empty() : inputs.placement().of(o), o.total() * unit.alike()));
    for (ConnectedLoad load : unit.loads()) {
      if (!apart.contains(load.loadClass())) {
        add(unit.alike() > 1 ? Optional.empty() : all.or(() -> inputs.placement().of(load)), load.total() * unit.alike());
      }
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
    Derivation even = amperes("the same spread evenly", "I_e", mean);
    Map<Leg, Derivation> factors = new EnumMap<>(Leg.class);
    for (Leg leg : system.legs()) {
      Derivation own = amperes("leg " + leg + " of all that is connected, as wired", "I_h", all.amperes(leg, system));
      factors.put(
          leg,
          Derivation.computed(
              "leg " + leg + " against an even spread", "k", "I_h / I_e", new Value.Amount(Quantity.of(own.si() / even.si(), Units.ONE)),
              List.of(own, even))
              .remarking("Ratings without demand factors, each between the legs that it is wired to, added as phasors."));
    }
    return factors;
  }

  private static Derivation amperes(String name, String symbol, double amperes) {
    return Derivation.computed(name, symbol, "", new Value.Amount(Quantity.of(amperes, Units.AMPERE)), List.of())
        .remarking("From the panels and branches of the plan, at nominal voltage.");
  }
}
