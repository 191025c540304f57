package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wattle.derivation.Derivation;
import wattle.quantity.Units;

/**
 * Load added to an existing service or feeder by CSA C22.1 8-106 8): the highest demand of the last twelve months as measured, and the new
 * loads with the demand factors of the code. The rule puts the sum under 8-104 5) and 6), so that a rating that is not marked for more
 * carries 80 % of it. Of several dwellings the new loads of each count by themselves: nothing says that they do not run together.
 */
final class CanadianMeasured implements Calculation {
  @Override
  public List<Objection> objections(Inputs inputs, Figures figures) {
    return inputs.measuredPeak().isPresent()
        ? Stream.of(Conditions.areas(inputs), Conditions.standing(inputs)).flatMap(List::stream).toList()
        : List.of(MeasuredMethod.peakMissing(inputs));
  }

  @Override
  public Worksheet calculate(Method method, Inputs inputs, Figures figures) {
    Tally load = new Tally();
    Derivation peak = Derivation.stated("measured peak", "P", inputs.measuredPeak().orElseThrow());
    load.add(
        "measured peak", peak,
        figures.limit("measured-peak").remarking("Hourly averages are below the true peak; the authority says how to correct them."),
        List.of());
    add(inputs, figures, load);
    return Capacity.of(method, inputs, figures, load, neutral(inputs, figures), Optional.empty());
  }

  /** What is new, each with its own demand factor; a line names its dwelling where there are several. */
  private static void add(Inputs all, Figures figures, Tally load) {
    EnergyManagement management = EnergyManagement.of(all);
    Inputs inputs = management.rest();
    List<DwellingUnit> added = new ArrayList<>();
    for (DwellingUnit unit : inputs.dwellings()) {
      DwellingUnit own = unit.addedAlone();
      added.add(own);
      Tally tally = new Tally();
      CanadianDwelling.ofAdded(own, figures, unit.hasStandingRange()).add(tally, new Tally());
      boolean several = inputs.dwellingCount() > 1;
      for (Line line : tally.lines()) {
        load.addLine(several ? of(unit, line) : line);
      }
    }
    List<ConnectedLoad> common = inputs.common().stream().filter(ConnectedLoad::added).toList();
    Inputs growing = inputs.of(added).withCommon(common);
    new CanadianClimate(growing, figures).add(load, new Tally());
    CanadianCommon.add(growing, figures, load, new Tally());
    management.onlyAdded().list(load);
  }

  /** The line of one dwelling, times those that are alike. */
  private static Line of(DwellingUnit unit, Line line) {
    int alike = unit.alike();
    Optional<Derivation> result = line.result().map(
        r -> alike == 1
            ? r
            : Derivation.computed(
                alike + " × " + r.name(), "P", "n × P", alike * r.si(), Units.VOLT_AMPERE, Sums.number("dwellings", alike),
                r.named(r.name(), "P")));
    return new Line(
        line.name() + ", " + unit.name() + (alike == 1 ? "" : ", " + alike + " alike"), line.article(), line.connected(), line.factor(),
        result, line.runningSum(), line.devices(), line.remark());
  }

  private static Tally neutral(Inputs inputs, Figures figures) {
    Tally neutral = new Tally();
    if (inputs.dwellingCount() > 1) {
      CanadianSeveral.add(inputs, figures, false, new Tally(), neutral);
    } else {
      CanadianSingle.add(inputs, figures, new Tally(), neutral);
    }
    return neutral;
  }
}
