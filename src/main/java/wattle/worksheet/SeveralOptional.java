package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.model.LoadClass;

/** Three dwellings or more by the optional method of NFPA 70 220.84; what is outside the dwellings by the standard one. */
final class SeveralOptional implements Calculation {
  @Override
  public List<Objection> objections(Inputs inputs, Figures figures) {
    List<Objection> objections = new ArrayList<>(Conditions.several(inputs, 3));
    objections.addAll(unfit(inputs));
    return objections;
  }

  /** Dwellings without electric cooking, or without electric heat and cooling: 220.84(A)(2) and (3). */
  static List<Objection> unfit(Inputs inputs) {
    List<Objection> objections = new ArrayList<>();
    for (DwellingUnit unit : inputs.dwellings()) {
      boolean cooks = has(unit, LoadClass.COOKING);
      boolean climate = has(unit, LoadClass.HEATING) || has(unit, LoadClass.ROOM_HEATING) || has(unit, LoadClass.STORAGE_HEATING)
          || has(unit, LoadClass.HEAT_PUMP) || has(unit, LoadClass.COOLING);
      if (!cooks || !climate) {
        objections.add(
            Objection.error(
                "optional-dwelling-unfit", unit.name(),
                "'" + unit.name() + "' has no electric " + (cooks ? "heating or cooling" : "cooking"),
                "The factors of this method apply where every dwelling has electric cooking, and electric heating or cooling.",
                "use the standard method for several dwellings"));
      }
    }
    return objections;
  }

  private static boolean has(DwellingUnit unit, LoadClass loadClass) {
    return unit.loads().stream().anyMatch(l -> l.loadClass() == loadClass);
  }

  @Override
  public Worksheet calculate(Method method, Inputs inputs, Figures figures) {
    Tally load = new Tally();
    add(inputs.withoutCommon(), figures, load);
    addCommon(inputs, figures, load);
    return Capacity.of(
        method, inputs, figures, load, StandardMethod.neutral(inputs, figures), Optional.empty());
  }

  /** What is connected in the dwellings, in volt-amperes. */
  static double connected(Inputs dwellings, Figures figures) {
    return OptionalGeneral.list(dwellings, figures, new Tally(), "").si() + Sums.total(new Climate(dwellings, figures).larger());
  }

  /** The dwellings, with their factor. */
  static void add(Inputs dwellings, Figures figures, Tally load) {
    Derivation general = OptionalGeneral.list(dwellings, figures, load, "220.84(C)");
    List<ConnectedLoad> climate = new Climate(dwellings, figures).larger();
    Derivation heat = Sums.ofLoads("heating or cooling, the larger", climate);
    load.list("heating or cooling, the larger", heat, Sums.names(climate), "220.84(C)");
    Derivation all = Sums.sum("all loads of the dwellings", List.of(general, heat));
    int count = dwellings.dwellingCount();
    Derivation number = Sums.number("dwellings", count);
    Derivation factor = figures.find("dwellings-demand", "factor for " + count + " dwellings", "factor", number);
    List<String> devices = new ArrayList<>(OptionalGeneral.devices(dwellings, figures));
    devices.addAll(Sums.names(climate));
    load.add("all loads of " + count + " dwellings", all, factor, devices);
    load.betweenLegs(load.sum());
  }

  /** What is outside the dwellings, by Part III, 220.84(B), and farm loads by Part V. */
  static void addCommon(Inputs inputs, Figures figures, Tally load) {
    if (!inputs.common().isEmpty()) {
      StandardMethod.add(inputs.onlyCommon(), figures, load, new Tally());
    }
    new FarmLoads(inputs, figures).add(load, new Tally());
  }
}
