package wattle.loads;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.model.Leg;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;

/** Currents of legs and neutral, unfolded to what is connected between which conductors. */
public final class LegCurrents {
  private static final String PHASORS = "Currents add as phasors, each by the angle of its voltage and its power factor.";

  private LegCurrents() {}

  /** Of the leg that carries most. */
  public static Derivation heaviest(String name, LegLoads load, SupplySystem system) {
    Leg most = system.legs().get(0);
    for (Leg leg : system.legs()) {
      // Of legs as heavy the first, whatever the last bits of the sums are.
      if (load.amperes(leg, system) > load.amperes(most, system) * (1 + 1e-12)) {
        most = leg;
      }
    }
    return leg(name, load, most, system);
  }

  /** Of one leg. */
  public static Derivation leg(String name, LegLoads load, Leg leg, SupplySystem system) {
    return sum(name, "I_" + leg, load, system, load.amperes(leg, system), leg);
  }

  /** Of the neutral. */
  public static Derivation neutral(String name, LegLoads load, SupplySystem system) {
    return sum(name, "I_N", load, system, load.neutralAmperes(system), null);
  }

  private static Derivation sum(
      String name, String symbol, LegLoads load, SupplySystem system, double amperes, Leg leg) {
    List<Derivation> inputs = new ArrayList<>();
    List<String> terms = new ArrayList<>();
    boolean toNeutral = false;
    boolean across = false;
    for (Map.Entry<Ends, Flow> flow : load.flows().entrySet()) {
      boolean single = flow.getKey().legs().size() == 1;
      if (leg == null ? !single : !flow.getKey().legs().contains(leg)) {
        continue;
      }
      String legs = String.join("", flow.getKey().legs().stream().map(Leg::name).toList());
      terms.add("S_" + legs + " / " + (single ? "U" : "U_L"));
      inputs.add(between(flow.getKey(), flow.getValue(), "S_" + legs));
      toNeutral |= single;
      across |= !single;
    }
    if (toNeutral) {
      inputs.add(volts("voltage from leg to neutral", "U", system.legToNeutralVolts()));
    }
    if (across) {
      inputs.add(volts("voltage between legs", "U_L", system.legToLegVolts()));
    }
    String formula = terms.size() < 2 ? String.join("", terms) : "|" + String.join(" + ", terms) + "|";
    Derivation sum = Derivation.computed(name, symbol, formula, amount(amperes, Units.AMPERE), inputs);
    return terms.size() < 2 ? sum : sum.remarking(PHASORS);
  }

  private static Derivation between(Ends ends, Flow flow, String symbol) {
    String legs = ends.legs().size() == 1
        ? "from leg " + ends.legs().get(0) + " to the neutral"
        : "between legs " + ends.legs().get(0) + " and " + ends.legs().get(1);
    double apparent = flow.power().magnitude();
    double factor = apparent == 0 ? 1 : flow.power().re() / apparent;
    Derivation load = Derivation.computed("load " + legs, symbol, "Σ S", amount(apparent, Units.VOLT_AMPERE), List.of());
    return load.remarking(
        (factor > 0.9995 ? "" : "Power factor " + Quantity.plain(factor, 3) + " of the total; watts and reactive power add separately. ")
            + "Its devices are unfolded under the load of the leg.");
  }

  private static Derivation volts(String name, String symbol, double volts) {
    return Derivation.stated(name, symbol, Quantity.of(volts, Units.VOLT));
  }

  private static Value amount(double value, Unit unit) {
    return new Value.Amount(Quantity.of(value, unit));
  }
}
