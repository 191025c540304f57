package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.model.LoadClass;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Appliances fastened in place, dryers, vehicle chargers and motors by the standard method. */
final class Appliances {
  static final LoadClass[] FIXED = {
      LoadClass.FIXED_APPLIANCE, LoadClass.WATER_HEATING, LoadClass.INSTANT_WATER_HEATING, LoadClass.POOL_HEATING
  };

  private final Inputs inputs;
  private final Figures figures;

  Appliances(Inputs inputs, Figures figures) {
    this.inputs = inputs;
    this.figures = figures;
  }

  /** NFPA 70 220.53. Cooking equipment too small for its own table is such an appliance. */
  void addFixed(Tally load, Tally neutral, List<ConnectedLoad> smallCooking) {
    List<ConnectedLoad> all = new ArrayList<>(inputs.all(FIXED));
    all.addAll(smallCooking);
    double from = figures.limit("appliance-counted-from").si();
    List<ConnectedLoad> counted = all.stream().filter(l -> l.voltAmperes() >= from).toList();
    List<ConnectedLoad> small = all.stream().filter(l -> l.voltAmperes() < from && l.voltAmperes() > 0).toList();
    if (!counted.isEmpty()) {
      Derivation number = Sums.counted("appliances", counted);
      Derivation factor = figures.find("appliance-demand", "factor for " + Sums.count(counted) + " appliances", "factor", number);
      add("fixed appliances", counted, factor, load, neutral);
    }
    if (!small.isEmpty()) {
      Derivation one = figures.find("appliance-demand", "factor", "factor", Sums.number("appliances", 1));
      add("fixed appliances below " + figures.limit("appliance-counted-from").value().text(), small, one, load, neutral);
    }
  }

  /** NFPA 70 220.54. */
  void addDryers(Tally load, Tally neutral) {
    Derivation least = figures.limit("dryer-least");
    List<ConnectedLoad> dryers = atLeast(inputs.all(LoadClass.DRYER), least);
    if (dryers.isEmpty()) {
      return;
    }
    boolean onThree = PhasePairs.applies(inputs, dryers);
    Derivation number = onThree ? PhasePairs.entered(inputs, dryers) : Sums.counted("dryers", dryers);
    int count = (int) Math.round(number.si());
    Derivation base = figures.find("dryer-demand", "factor", "base", number).named("factor", "f_b");
    Derivation less = figures.find("dryer-demand", "less for each", "less", number).named("less for each", "f_l");
    Derivation above = figures.find("dryer-demand", "above", "above", number).named("above", "n_a");
    Derivation factor = less.si() == 0
        ? base.named("factor for " + count + " dryers", "f")
        : Derivation.computed(
            "factor for " + count + " dryers", "f", "f_b − f_l × (n − n_a)",
            100 * (base.si() - less.si() * (count - above.si())), Units.PERCENT, base, less, number, above);
    Derivation connected = Sums.ofLoads("dryers", dryers);
    Derivation kept = figures.neutralAppliance(inputs.system());
    if (!onThree) {
      load.add("clothes dryers", connected, atLeastRemark(factor, least), Sums.names(dryers));
      load.betweenLegs(connected.si() * factor.si());
      neutral.add("clothes dryers", Sums.times("dryers", connected, factor), kept, Sums.names(dryers));
      neutral.betweenLegs(connected.si() * factor.si() * kept.si());
      return;
    }
    Derivation mean = Derivation.computed(
        "mean rating", "P_a", "P / n", connected.si() / Sums.count(dryers), Units.VOLT_AMPERE, connected,
        Sums.number("dryers", Sums.count(dryers)));
    Derivation demand = PhasePairs.onThree(
        Derivation.computed(
            "demand of " + count + " dryers", "P_d", "n × P_a × f", count * mean.si() * factor.si(), Units.VOLT_AMPERE,
            number.named(number.name(), "n"), mean, factor.named(factor.name(), "f")));
    load.add("clothes dryers", connected, Optional.empty(), demand, Sums.names(dryers), atLeastRemark(factor, least).remark());
    neutral.add("clothes dryers", demand, kept, Sums.names(dryers));
    load.countForHeaviestLeg(LoadClass.DRYER, demand.si());
    neutral.countForHeaviestLeg(LoadClass.DRYER, demand.si() * kept.si());
  }

  /** NFPA 70 220.57. */
  void addVehicles(Tally load, Tally neutral) {
    List<ConnectedLoad> chargers = atLeast(inputs.all(LoadClass.VEHICLE_CHARGING), figures.limit("vehicle-least"));
    if (!chargers.isEmpty()) {
      Derivation connected = Sums.ofLoads("vehicle chargers", chargers);
      Derivation least = figures.limit("vehicle-least");
      load.add("vehicle charging", connected, atLeastRemark(whole(least), least), Sums.names(chargers));
      load.place(chargers, whole(least));
      load.betweenLegs(chargers, whole(least));
      addNeutral("vehicle charging", chargers, whole(figures.limit("vehicle-least")), neutral);
    }
  }

  /** Motors that are neither appliances nor part of heating and cooling. NFPA 70 220.50. */
  void addMotors(Tally load, Tally neutral) {
    List<ConnectedLoad> motors = inputs.all(LoadClass.MOTOR);
    if (!motors.isEmpty()) {
      add("motors", motors, figures.limit("motors"), load, neutral);
    }
  }

  private static void add(String name, List<ConnectedLoad> loads, Derivation factor, Tally load, Tally neutral) {
    load.add(name, Sums.ofLoads(name, loads), factor, Sums.names(loads));
    load.place(loads, factor);
    load.betweenLegs(loads, factor);
    addNeutral(name, loads, factor, neutral);
  }

  private static void addNeutral(String name, List<ConnectedLoad> loads, Derivation factor, Tally neutral) {
    List<ConnectedLoad> onNeutral = Sums.onNeutral(loads);
    if (!onNeutral.isEmpty()) {
      neutral.add(name, Sums.ofLoads(name, onNeutral), factor, Sums.names(onNeutral));
      neutral.place(loads, factor);
    }
  }

  /** The whole of a load, by the same article as another figure. */
  private static Derivation whole(Derivation article) {
    return Derivation.lookedUp(
        "demand factor", "f", new Value.Amount(Quantity.of(100, Units.PERCENT)),
        article.formula(), List.of(), article.sources());
  }

  private static Derivation atLeastRemark(Derivation factor, Derivation least) {
    return factor.remarking("Each counts " + least.value().text() + " at least.");
  }

  static List<ConnectedLoad> atLeast(List<ConnectedLoad> loads, Derivation least) {
    return loads.stream().map(l -> l.voltAmperes() < least.si() ? l.rated(least.si()) : l).toList();
  }
}
