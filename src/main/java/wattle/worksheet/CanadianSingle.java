package wattle.worksheet;

import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;

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
    for (DwellingUnit unit : inputs.dwellings()) {
      new CanadianDwelling(unit, figures, false).add(load, neutral);
    }
    new CanadianClimate(inputs, figures).add(load, neutral);
    CanadianCommon.add(inputs, figures, load, neutral);
    if (inputs.scope() != Inputs.Scope.PART) {
      raise(inputs.dwellings().get(0), figures, load);
    }
    return Capacity.of(method, inputs, figures, load, neutral, Optional.empty());
  }

  /** 8-200 1) b): not less than a figure that depends on the floor area, basement left out. */
  static void raise(DwellingUnit unit, Figures figures, Tally load) {
    boolean large = unit.floorArea().orElseThrow().si() >= figures.limit("single-least-area").si();
    Derivation least = figures.limit(large ? "single-least-large" : "single-least-small");
    raise(least, unit, load);
  }

  static void raise(Derivation least, DwellingUnit unit, Tally load) {
    if (load.sum() < least.si()) {
      Derivation missing = Derivation.computed(
          "up to the least load", "P", "P_l − P_c", least.si() - load.sum(), wattle.quantity.Units.VOLT_AMPERE,
          least.named(least.name(), "P_l"), load.total("calculated so far").named("calculated so far", "P_c"));
      load.add(
          "up to the least load of a dwelling", least, Optional.empty(), missing, List.of(unit.name()),
          "The code sets a least load for a dwelling of this size.");
    }
  }
}
