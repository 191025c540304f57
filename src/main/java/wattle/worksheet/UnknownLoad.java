package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Severity;
import wattle.model.Doubt;
import wattle.model.Doubts;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * Services and feeders whose load cannot be calculated for want of a figure. They are held against the least that the load is: what
 * the plan does state, by the smallest of the methods, with no floor area where none is known.
 */
final class UnknownLoad {
  static final String NAME = "calculated-load-unknown";
  /** The load is known, and what it is held against is not. */
  static final String RATING = "supply-rating-unknown";

  /** Objections that are about a floor area alone: without it the rest can still be calculated. */
  private static final Set<String> OF_AREA = Set.of(Areas.MISSING, Conditions.DWELLING_MISSING,
      Conditions.FLOOR_AREA_MISSING, Conditions.WORKPLACE);

  /** An area that adds nothing, in square meters: the methods want one above nothing. */
  private static final double NO_AREA = 1e-6;

  private final HouseWorksheets worksheets;
  private final Doubts doubts;

  UnknownLoad(HouseWorksheets worksheets, Doubts doubts) {
    this.worksheets = worksheets;
    this.doubts = doubts;
  }

  /** Why no method gives a load, each reason once; empty where one does, or where a mistake in the plan may be the reason. */
  List<Objection> reasons(HouseInputs.Read read) {
    if (worksheets.least(read).isPresent()) {
      return List.of();
    }
    List<Objection> reasons = new ArrayList<>(read.objections());
    worksheets.usual(read.inputs()).ifPresent(m -> reasons.addAll(worksheets.calculate(m, read).objections()));
    if (reasons.stream().noneMatch(o -> o.severity() == Severity.ERROR)) {
      reasons.add(noMethod(read.inputs()));
    }
    return reasons.stream().filter(o -> o.severity() == Severity.ERROR && !inDoubt(o)).distinct().toList();
  }

  private Objection noMethod(Inputs inputs) {
    int dwellings = inputs.dwellingCount();
    String what = dwellings == 1 ? "one dwelling" : dwellings + " dwellings";
    return Objection.error(
        "method-missing", inputs.name(), "no method of the code is for what is on '" + inputs.name() + "', " + what,
        "Its methods are " + String.join(", ", worksheets.methods().stream().map(Method::name).toList()) + ".",
        "name a code with a method for it, or calculate it by hand and state the rating that it needs");
  }

  private boolean inDoubt(Objection objection) {
    return doubts.has(Doubt.DWELLING) || doubts.has(Doubt.ROOMS) || doubts.has(Doubt.PANELS) || doubts.has(Doubt.SERVICES)
        || doubts.has(Doubt.ROOM, objection.element()) || doubts.has(Doubt.SUPPLY, objection.element());
  }

  /** The least that the load is; absent where more than a floor area is missing, and where nothing is connected. */
  Optional<Worksheet> least(HouseInputs.Read read) {
    List<Objection> others = read.objections().stream().filter(o -> !OF_AREA.contains(o.rule())).toList();
    if (read.objections().stream().anyMatch(o -> o.rule().equals(Conditions.WORKPLACE))) {
      // Lights and receptacles as stated: a workplace has no circuits that only dwellings have.
      return worksheets.least(new HouseInputs.Read(read.inputs().asPart(), others)).filter(w -> w.total().si() > 0);
    }
    return worksheets.least(new HouseInputs.Read(withoutArea(read.inputs()), others)).filter(w -> w.total().si() > 0);
  }

  private static Inputs withoutArea(Inputs inputs) {
    if (inputs.scope() == Inputs.Scope.PART) {
      return inputs;
    }
    if (inputs.dwellings().isEmpty()) {
      // Its lights and receptacles are counted by the floor area of whatever dwelling it is.
      List<ConnectedLoad> classed = inputs.common().stream().filter(l -> !UnitReader.isGeneral(l.loadClass())).toList();
      return inputs.withoutCommon().of(List.of(new DwellingUnit(
          inputs.name(), Optional.of(nothing()), Optional.empty(), Circuits.NONE, Circuits.NONE, classed, List.of(), 1)));
    }
    return inputs.of(inputs.dwellings().stream().map(UnknownLoad::withoutArea).toList());
  }

  private static DwellingUnit withoutArea(DwellingUnit unit) {
    return unit.floorArea().filter(a -> a.si() > 0).isPresent()
        ? unit
        : new DwellingUnit(
            unit.name(), Optional.of(nothing()), unit.basementArea(), unit.smallAppliance(), unit.laundry(), unit.loads(),
            unit.outlets(), unit.alike());
  }

  private static Quantity nothing() {
    return Quantity.of(NO_AREA, Units.SQUARE_METER);
  }
}
