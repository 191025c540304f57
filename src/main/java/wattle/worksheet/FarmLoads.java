package wattle.worksheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * Farm loads, NFPA 70 Article 220 Part V. Of a building with two branch circuits or more the largest of three counts whole: what is
 * expected to run together, 125 % of the largest motor, or the first 60 A; of the rest the next 60 A count half and what is above a
 * quarter (table 220.102). Of several buildings on one service the largest counts whole and the others by their rank (table 220.103);
 * the dwelling is added by Part III or IV.
 */
final class FarmLoads {
  private final Inputs inputs;
  private final Figures figures;

  FarmLoads(Inputs inputs, Figures figures) {
    this.inputs = inputs;
    this.figures = figures;
  }

  /** A load with what it is on the neutral, both in volt-amperes. */
  private record Demand(FarmBuilding building, Derivation load, double neutralShare) {}

  void add(Tally load, Tally neutral) {
    if (inputs.farm().size() == 1 && inputs.dwellings().isEmpty() && inputs.common().isEmpty()) {
      FarmBuilding only = inputs.farm().get(0);
      lines(only).forEach(l -> add(load, neutral, l, only));
      return;
    }
    List<Demand> demands = new ArrayList<>();
    for (FarmBuilding building : inputs.farm()) {
      List<Derivation> results = lines(building).stream().map(FarmPart::result).toList();
      demands.add(new Demand(building, Sums.sum("load of " + building.name() + " by 220.102", results), neutralShare(building)));
    }
    demands.sort(Comparator.comparingDouble((Demand d) -> -d.load.si()));
    for (int i = 0; i < demands.size(); i++) {
      Demand demand = demands.get(i);
      Derivation factor = figures.find("farm-total", "demand factor", "factor", Sums.number("rank", i + 1));
      String name = "farm building " + demand.building.name();
      List<String> devices = Sums.names(demand.building.loads());
      load.add(name, demand.load, factor, devices);
      toNeutral(neutral, name, Sums.times(name, demand.load, factor), demand.neutralShare, devices);
    }
  }

  private record FarmPart(String name, Derivation connected, Derivation factor, Derivation result) {}

  private void add(Tally load, Tally neutral, FarmPart part, FarmBuilding building) {
    List<String> devices = Sums.names(building.loads());
    load.add(part.name, part.connected, Optional.of(part.factor), part.result, devices, part.factor.remark());
    toNeutral(neutral, part.name, part.result, neutralShare(building), devices);
  }

  private static void toNeutral(Tally neutral, String name, Derivation load, double share, List<String> devices) {
    if (share > 0 && load.si() > 0) {
      Derivation factor = Sums.number("part of it that is connected to the neutral", share).named("part that is connected to the neutral",
          "f");
      neutral.add(name, load, Optional.of(factor), Sums.times(name + " to the neutral", load, factor), devices, "");
    }
  }

  private static double neutralShare(FarmBuilding building) {
    double all = Sums.total(building.loads());
    return all > 0 ? Sums.total(Sums.onNeutral(building.loads())) / all : 0;
  }

  /** Volts by which the amperes of the table are turned into volt-amperes. */
  private double volts() {
    SupplySystem system = inputs.system();
    return switch (system.legs().size()) {
      case 1 -> system.legToNeutralVolts();
      case 2 -> system.legToLegVolts();
      default -> Math.sqrt(3) * system.legToLegVolts();
    };
  }

  private Derivation voltAmperes(String name, String limit) {
    Derivation amperes = figures.limit(limit);
    return Derivation.computed(name, "P", "I × U", amperes.si() * volts(), Units.VOLT_AMPERE, amperes.named(amperes.name(), "I"),
        Derivation.stated("voltage that the load is figured at", "U", Quantity.of(volts(), Units.VOLT)));
  }

  private List<FarmPart> lines(FarmBuilding building) {
    Derivation connected = Sums.ofLoads("all that is connected to " + building.name(), building.loads());
    Derivation whole = figures.limit("farm-whole");
    if (building.circuits() < 2) {
      return List.of(part("one branch circuit of " + building.name(), connected, whole));
    }
    List<FarmPart> parts = new ArrayList<>();
    Derivation first = least(connected, voltAmperes("the first amperes", "farm-first"));
    List<ConnectedLoad> together = building.loads().stream().filter(l -> building.together().contains(l.name())).toList();
    Optional<ConnectedLoad> motor = building.loads().stream().filter(ConnectedLoad::motor)
        .max(Comparator.comparingDouble(ConnectedLoad::voltAmperes));
    Derivation motorFactor = figures.limit("farm-motor");
    double ofMotor = motor.map(m -> m.voltAmperes() * motorFactor.si()).orElse(0.0);
    double ofTogether = Sums.total(together);
    double counted;
    if (ofTogether >= Math.max(ofMotor, first.si()) && ofTogether > 0) {
      parts.add(part("loads that run together", Sums.ofLoads("loads that run together", together), whole));
      counted = ofTogether;
    } else if (ofMotor > first.si()) {
      parts.add(part("the largest motor", motor.get().derivation(), motorFactor));
      counted = motor.get().voltAmperes();
    } else {
      Derivation factor = together.isEmpty()
          ? whole.remarking("No load is marked simultaneous: if more is expected to run together, that counts instead.")
          : whole;
      parts.add(part("the first 60 A", first, factor));
      counted = first.si();
    }
    double rest = connected.si() - counted;
    if (rest > 0.5) {
      Derivation others = Derivation.computed("the other loads of " + building.name(), "P", "P_a − P_c", rest, Units.VOLT_AMPERE,
          connected.named(connected.name(), "P_a"), parts.get(0).connected.named(parts.get(0).name, "P_c"));
      Derivation next = least(others, voltAmperes("the next amperes", "farm-next"));
      parts.add(part("the next 60 A of the other loads", next, figures.limit("farm-next-demand")));
      double above = rest - next.si();
      if (above > 0.5) {
        parts.add(part("the rest of the other loads", Derivation.computed("the rest of the other loads", "P", "P_o − P_n", above,
            Units.VOLT_AMPERE, others.named(others.name(), "P_o"), next.named(next.name(), "P_n")), figures.limit("farm-rest-demand")));
      }
    }
    return parts;
  }

  private static Derivation least(Derivation load, Derivation most) {
    return load.si() <= most.si()
        ? load
        : Derivation.computed(most.name() + " of " + load.name(), "P", "min(P, P_m)", most.si(), Units.VOLT_AMPERE,
            load.named(load.name(), "P"),
            most.named(most.name(), "P_m"));
  }

  private static FarmPart part(String name, Derivation connected, Derivation factor) {
    return new FarmPart(name, connected, factor, Sums.times(name, connected, factor));
  }
}
