package wattle.worksheet;

import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** A single dwelling by CSA C22.1 8-200 1), its service or a feeder to a part of it. */
final class CanadianSingle implements Calculation {
  @Override
  public List<Objection> objections(Inputs inputs, Figures figures) {
    return Conditions.single(inputs);
  }

  @Override
  public Worksheet calculate(Method method, Inputs inputs, Figures figures) {
    Tally load = new Tally();
    Tally neutral = new Tally();
    add(inputs, figures, load, neutral);
    return Capacity.of(method, inputs, figures, load, neutral, Optional.empty());
  }

  static void add(Inputs all, Figures figures, Tally load, Tally neutral) {
    EnergyManagement management = EnergyManagement.of(all);
    Inputs inputs = management.rest();
    for (DwellingUnit unit : inputs.dwellings()) {
      new CanadianDwelling(unit, figures, false).add(load, neutral);
    }
    new CanadianClimate(inputs, figures).add(load, neutral);
    CanadianCommon.add(inputs, figures, load, neutral);
    if (inputs.scope() != Inputs.Scope.PART) {
      raise(least(inputs.dwellings().get(0), figures), inputs.dwellings().get(0), inputs.system(), 0, load);
    }
    management.list(load);
  }

  /** 8-200 1) b): not less than a figure that depends on the floor area, basement left out. */
  static Derivation least(DwellingUnit unit, Figures figures) {
    boolean large = unit.floorArea().orElseThrow().si() >= figures.limit("single-least-area").si();
    return figures.limit(large ? "single-least-large" : "single-least-small");
  }

  /**
   * Adds what a dwelling lacks to the least that the code sets for the whole of it.
   *
   * @param beside its heating or cooling in watts, where that is added elsewhere; 0 where it is in the load
   */
  static void raise(Derivation least, DwellingUnit unit, SupplySystem system, double beside, Tally load) {
    if (load.sum() + beside < least.si()) {
      Derivation own = load.total("calculated so far").named("calculated so far", "P_c");
      Derivation missing = beside == 0
          ? Derivation.computed(
              "up to the least load", "P", "P_l − P_c", least.si() - load.sum(), Units.WATT, least.named(least.name(), "P_l"), own)
          : Derivation.computed(
              "up to the least load", "P", "P_l − P_c − P_h", least.si() - load.sum() - beside, Units.WATT,
              least.named(least.name(), "P_l"), own,
              Derivation.stated("its heating or cooling, added below", "P_h", Quantity.of(beside, Units.WATT)));
      double volts = system.legs().size() == 1 ? system.legToNeutralVolts() : system.legToLegVolts();
      double phases = system.legs().size() > 2 ? Math.sqrt(3) : 1;
      String amperes = ", " + Quantity.plain(Math.round(10 * least.si() / volts / phases) / 10.0, 4) + " A at "
          + Quantity.plain(volts, 4) + " V" + (phases > 1 ? ", three-phase" : "");
      load.add(
          "up to the minimum load of a dwelling", least, Optional.empty(), missing, List.of(unit.name()),
          "The code sets a minimum load for a dwelling of this size: " + least.value().text() + amperes + ".");
    }
  }
}
