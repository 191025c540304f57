package wattle.worksheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import wattle.library.Library;
import wattle.library.LibraryLoader;
import wattle.library.StandardLibrary;
import wattle.model.LoadClass;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** What the tests of worksheets share: packs, houses of published examples, and looking a line up. */
final class Examples {
  static final SupplySystem SPLIT = new SupplySystem(SupplySystem.Kind.SPLIT_PHASE, 120, 240);
  static final SupplySystem WYE = new SupplySystem(SupplySystem.Kind.THREE_PHASE_WYE, 120, 208);
  static final Worksheets US = worksheets("us-2023");
  static final Worksheets CA = worksheets("ca-2021");

  private Examples() {}

  private static Worksheets worksheets(String pack) {
    return new Worksheets(library(pack));
  }

  static Library library(String pack) {
    return LibraryLoader.load(StandardLibrary.files(List.of(pack)).value()).value();
  }

  static DwellingUnit unit(Quantity area, int laundry, ConnectedLoad... loads) {
    return new DwellingUnit(
        "house", Optional.of(area), Optional.empty(), Circuits.of(2), Circuits.of(laundry), List.of(loads), List.of(), 1);
  }

  static DwellingUnit feet(double squareFeet, int laundry, ConnectedLoad... loads) {
    return unit(Quantity.of(squareFeet, Units.SQUARE_FOOT), laundry, loads);
  }

  static DwellingUnit meters(double squareMeters, ConnectedLoad... loads) {
    return unit(Quantity.of(squareMeters, Units.SQUARE_METER), 1, loads);
  }

  static Inputs service(DwellingUnit... units) {
    return new Inputs("main", Inputs.Scope.SERVICE, SPLIT, Optional.empty(), List.of(units), List.of(), Optional.empty());
  }

  static Inputs feeder(SupplySystem system, DwellingUnit... units) {
    return new Inputs("F", Inputs.Scope.FEEDER, system, Optional.empty(), List.of(units), List.of(), Optional.empty());
  }

  static Inputs part(DwellingUnit unit) {
    return new Inputs("G", Inputs.Scope.PART, SPLIT, Optional.empty(), List.of(unit), List.of(), Optional.empty());
  }

  static Inputs rated(Inputs inputs, double amperes) {
    return new Inputs(
        inputs.name(), inputs.scope(), inputs.system(), Optional.of(Quantity.of(amperes, Units.AMPERE)), inputs.dwellings(),
        inputs.common(), inputs.measuredPeak());
  }

  static Worksheet calculate(Worksheets worksheets, String method, Inputs inputs) {
    Outcome outcome = worksheets.calculate(worksheets.method(method).orElseThrow(), inputs);
    assertThat(outcome.objections()).isEmpty();
    return outcome.worksheet().orElseThrow();
  }

  static ConnectedLoad load(String name, LoadClass loadClass, double voltAmperes) {
    return ConnectedLoad.of(name, loadClass, voltAmperes);
  }

  static Line line(List<Line> lines, String name) {
    return lines.stream()
        .filter(l -> l.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new AssertionError(name + " in " + lines.stream().map(Line::name).toList()));
  }

  static double connected(List<Line> lines, String name) {
    return line(lines, name).connected().orElseThrow().si();
  }

  static double result(List<Line> lines, String name) {
    return line(lines, name).result().orElseThrow(() -> new AssertionError(name + " adds nothing")).si();
  }
}
