package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import wattle.model.SupplySystem;

/** Conditions that several methods share. */
final class Conditions {
  /** Names of findings about a floor area. */
  static final String DWELLING_MISSING = "dwelling-missing";
  static final String FLOOR_AREA_MISSING = "floor-area-missing";

  static final String WORKPLACE = "workplace-without-method";

  private Conditions() {}

  /** Of what a service or feeder brings to a place that is no dwelling and no farm building. */
  static Objection workplace(String name) {
    return Objection.error(
        WORKPLACE, name, "no method here is for a workplace such as that on '" + name + "'",
        "Its lighting is figured by its kind and area, which the methods for dwellings do not have.",
        "figure it by hand, its lighting by NFPA 70 Table 220.42(A) or CSA C22.1 Table 14, and state the rating that it needs; mark the"
            + " panel of a farm building farm; if it is a dwelling after all, give its floor-area in a dwelling line");
  }

  /** One dwelling, whose floor area is known. */
  static List<Objection> single(Inputs inputs) {
    List<Objection> objections = areas(inputs);
    if (inputs.dwellingCount() > 1) {
      objections.add(
          Objection.error(
              "method-for-one-dwelling", inputs.name(),
              inputs.dwellingCount() + " dwellings are fed from '" + inputs.name() + "', and this method is for one",
              "Several dwellings do not all draw at once; their method allows for that.",
              "use the method for several dwellings, or one panel of one dwelling (--panel)"));
    }
    return objections;
  }

  /** At least so many dwellings, of known floor areas. */
  static List<Objection> several(Inputs inputs, int least) {
    List<Objection> objections = areas(inputs);
    if (inputs.dwellingCount() < least) {
      objections.add(
          Objection.error(
              "method-for-several-dwellings", inputs.name(),
              count(inputs.dwellingCount()) + " on '" + inputs.name() + "', and this method is for " + least + " or more",
              "Its factors are for many households that do not all draw at once.",
              "use the method for a single dwelling"));
    }
    return objections;
  }

  static String count(int dwellings) {
    return dwellings == 1 ? "one dwelling is" : dwellings + " dwellings are";
  }

  /** Every dwelling says how large it is, except the part of one that a feeder serves. */
  static List<Objection> areas(Inputs inputs) {
    List<Objection> objections = new ArrayList<>();
    if (inputs.dwellings().isEmpty() && inputs.scope() != Inputs.Scope.PART) {
      objections.add(
          Objection.error(
              DWELLING_MISSING, inputs.name(), "the plan does not describe the dwelling on '" + inputs.name() + "'",
              "General lighting and outlets are counted by floor area.", "add a line such as dwelling { floor-area 120 m2 }"));
    }
    for (DwellingUnit unit : inputs.dwellings()) {
      if (unit.floorArea().isEmpty() && inputs.scope() != Inputs.Scope.PART) {
        objections.add(
            Objection.error(
                FLOOR_AREA_MISSING, unit.name(), "the floor area of '" + unit.name() + "' is not stated",
                "General lighting and outlets are counted by floor area; no other figure replaces it.",
                "write floor-area 120 m2, with the true figure, in its dwelling block"));
      }
    }
    return objections;
  }

  /** A method whose factors hold only for whole dwellings. */
  static List<Objection> whole(Inputs inputs) {
    return inputs.scope() != Inputs.Scope.PART
        ? List.of()
        : List.of(
            Objection.error(
                "method-for-whole-dwelling", inputs.name(),
                "'" + inputs.name() + "' feeds a part of a dwelling, and this method is for all of it",
                "Its factors assume loads that a part of a dwelling may not have.", "use the standard method"));
  }

  /** A dwelling that is there already. */
  static List<Objection> standing(Inputs inputs) {
    return inputs.isStanding() || inputs.dwellings().isEmpty()
        ? List.of()
        : List.of(
            Objection.error(
                "dwelling-not-existing", inputs.name(), "nothing on '" + inputs.name() + "' is existing",
                "This method is for added load on an existing dwelling, not for a new one.",
                "write existing after the service, the panel and what they feed, or use the standard or the optional method"));
  }

  /** A supply of two hots and a neutral. */
  static List<Objection> threeWires(Inputs inputs) {
    SupplySystem.Kind kind = inputs.system().kind();
    return kind == SupplySystem.Kind.SPLIT_PHASE || kind == SupplySystem.Kind.TWO_LEGS_OF_WYE
        ? List.of()
        : List.of(
            Objection.error(
                "optional-supply", inputs.name(),
                "'" + inputs.name() + "' has " + inputs.system().text() + ", and the optional method is for three wires",
                "It covers 120/240 V and 208Y/120 V with two legs and a neutral.", "use the standard method"));
  }
}
