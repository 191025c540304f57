package wattle.worksheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.quantity.Units;

/**
 * Several dwellings by CSA C22.1 8-202 3), apartments or, by 8-200 2), row housing: the heaviest dwelling in full, the
 * next ones by less and less; heating, cooling and what is outside the dwellings beside them.
 */
final class CanadianSeveral implements Calculation {
  private final boolean apartments;

  CanadianSeveral(boolean apartments) {
    this.apartments = apartments;
  }

  @Override
  public List<Objection> objections(Inputs inputs, Figures figures) {
    return Conditions.several(inputs, apartments && inputs.scope() == Inputs.Scope.FEEDER ? 1 : 2);
  }

  /** A dwelling's own load, heating and cooling left out. */
  private record Own(DwellingUnit unit, Derivation load, Derivation neutral, List<Line> lines) {
    private Own {
      lines = List.copyOf(lines);
    }
  }

  @Override
  public Worksheet calculate(Method method, Inputs inputs, Figures figures) {
    Tally load = new Tally();
    Tally neutral = new Tally();
    add(inputs, figures, apartments, load, neutral);
    return Capacity.of(method, inputs, figures, load, neutral, Optional.empty());
  }

  static void add(Inputs all, Figures figures, boolean apartments, Tally load, Tally neutral) {
    EnergyManagement management = EnergyManagement.of(all);
    Inputs inputs = management.rest();
    List<Own> owns = new ArrayList<>();
    for (DwellingUnit unit : inputs.dwellings()) {
      owns.add(own(inputs, unit, figures, apartments));
    }
    owns.sort(Comparator.comparingDouble((Own o) -> o.load.si()).reversed());
    if (inputs.dwellingCount() > 1) {
      addRanked(owns, figures, load, neutral);
      new CanadianClimate(inputs, figures).add(load, neutral);
    } else {
      single(inputs, figures, apartments, load, neutral);
    }
    CanadianCommon.add(inputs, figures, load, neutral);
    management.list(load);
  }

  private static void single(Inputs inputs, Figures figures, boolean apartments, Tally load, Tally neutral) {
    DwellingUnit unit = inputs.dwellings().get(0);
    new CanadianDwelling(unit, figures, apartments).add(load, neutral);
    new CanadianClimate(inputs, figures).add(load, neutral);
    CanadianSingle.raise(figures.limit("apartment-least"), unit, inputs.system(), 0, load);
  }

  /** The least load is that of the whole dwelling, so what its heating or cooling adds below is not made up for here. */
  private static Own own(Inputs inputs, DwellingUnit unit, Figures figures, boolean apartments) {
    Tally load = new Tally();
    Tally neutral = new Tally();
    new CanadianDwelling(unit, figures, apartments).add(load, neutral);
    Tally climate = new Tally();
    new CanadianClimate(inputs.only(unit.alone()), figures).add(climate, new Tally());
    Derivation least = apartments ? figures.limit("apartment-least") : CanadianSingle.least(unit, figures);
    CanadianSingle.raise(least, unit, inputs.system(), climate.sum(), load);
    return new Own(unit, load.total("load of " + unit.name()), neutral.total("neutral load of " + unit.name()), load.lines());
  }

  /** Dwellings in falling order, a line for each kind of dwelling and each factor. */
  private static void addRanked(List<Own> owns, Figures figures, Tally load, Tally neutral) {
    int rank = 1;
    for (Own own : owns) {
      for (Line line : own.lines) {
        line.result().ifPresent(r -> load.list(own.unit.name() + ": " + line.name(), r, line.devices(), line.article()));
      }
      int left = own.unit.alike();
      while (left > 0) {
        Derivation factor = factor(figures, rank);
        int alike = 1;
        while (alike < left && Math.abs(factor(figures, rank + alike).si() - factor.si()) < 1e-12) {
          alike++;
        }
        String name = own.unit.name() + (alike == 1 ? "" : ", " + alike + " alike");
        load.add(name, many(own.load, alike), factor, List.of(own.unit.name()));
        neutral.add(name, many(own.neutral, alike), factor, List.of(own.unit.name()));
        rank += alike;
        left -= alike;
      }
    }
  }

  private static Derivation factor(Figures figures, int rank) {
    return figures.find("dwellings-demand", "factor", "factor", Sums.number("place in falling order", rank));
  }

  private static Derivation many(Derivation one, int count) {
    return count == 1
        ? one
        : Derivation.computed(
            count + " × " + one.name(), "P", "n × P", count * one.si(), Units.VOLT_AMPERE, Sums.number("dwellings", count),
            one.named(one.name(), "P"));
  }
}
