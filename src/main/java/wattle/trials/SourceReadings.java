package wattle.trials;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.model.Device;
import wattle.model.House;
import wattle.model.Service;
import wattle.network.Complex;
import wattle.network.Solution;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Reads what sources do from a solution: the supplier's network first, then the sources of the house in its order. */
final class SourceReadings {
  /**
   * Of nominal, the voltage over which an inverter that follows has to stop: IEEE 1547-2018, 6.4.1, default of the lower of
   * its two limits of overvoltage; from memory.
   */
  private static final double HIGHEST_SHARE = 1.10;

  /** Of nominal, the voltage below which there is none to rise. */
  private static final double LEAST_SHARE = 0.5;

  /** Volts and watts below which nothing flows but rounding. */
  private static final double NOTHING = 1;

  private final House house;
  private final Scenario scenario;
  private final HouseNetwork network;
  private final Solution solution;
  private final Figures figures;

  SourceReadings(House house, Scenario scenario, HouseNetwork network, Solution solution, Figures figures) {
    this.house = house;
    this.scenario = scenario;
    this.network = network;
    this.solution = solution;
    this.figures = figures;
  }

  List<SourceReading> list() {
    List<SourceReading> readings = new ArrayList<>();
    house.services().values().forEach(s -> readings.add(service(s)));
    for (Supplies.Running running : scenario.supplies().running().values()) {
      List<HouseNetwork.Outlet> outlets = network.outlets().stream().filter(o -> o.device().equals(running.device())).toList();
      if (!outlets.isEmpty()) {
        readings.add(device(house.devices().get(running.device()), running, outlets));
      }
    }
    return readings;
  }

  private SourceReading service(Service service) {
    HouseNetwork.PanelBox box = network.entrances().get(service.name());
    int legs = box.legs().length;
    Complex power = Complex.ZERO;
    double most = 0;
    for (int leg : box.legs()) {
      Complex amps = solution.amps(box.box(), leg);
      power = power.plus(solution.volts(box.box(), leg, box.neutral()).times(amps.conjugate()));
      most = Math.max(most, amps.magnitude());
    }
    double volts = legs > 1
        ? solution.volts(box.box(), box.legs()[0], box.legs()[1]).magnitude()
        : solution.volts(box.box(), box.legs()[0], box.neutral()).magnitude();
    boolean lost = scenario.supplies().lost().contains(service.name());
    SourceReading.State state = lost
        ? volts > NOTHING ? SourceReading.State.BACK_FED : SourceReading.State.LOST
        : power.re() < -NOTHING ? SourceReading.State.TAKES : SourceReading.State.HOLDS;
    Derivation amps = Figures.solved("current of service " + service.name(), most, Units.AMPERE, "Of the leg with the highest current.");
    Optional<Derivation> rating = service.rating().map(r -> Derivation.stated("rating of service " + service.name(), "I_r", r));
    return new SourceReading(
        service.name(), "utility", state,
        Figures.solved("voltage where service " + service.name() + " enters", volts, Units.VOLT, ""),
        amps, rating, rating.map(r -> share(amps, r)), watts("power from service " + service.name(), power.re()), Optional.empty());
  }

  private static Derivation watts(String name, double watts) {
    return Figures.solved(name, watts, Units.WATT, watts < 0 ? "Below zero: power flows into it." : "");
  }

  static Derivation share(Derivation amps, Derivation rating) {
    return Derivation.computed(
        "current as a part of the rating", "", "I / I_r", new Value.Amount(new Quantity(amps.si() / rating.si(), Units.PERCENT)),
        List.of(amps.named(amps.name(), "I"), rating));
  }

  /** @param outlets one, or three of a three-phase source, of which the first stands for its voltage */
  private SourceReading device(Device device, Supplies.Running running, List<HouseNetwork.Outlet> outlets) {
    HouseNetwork.Outlet outlet = outlets.get(0);
    Complex power = Complex.ZERO;
    double most = 0;
    Map<Integer, Complex> ofTerminal = new HashMap<>();
    for (HouseNetwork.Feeding feeding : network.feedings().stream().filter(f -> f.device().equals(device.name())).toList()) {
      if (feeding.holds()) {
        power = solution.sourcePower(feeding.index());
        most = solution.mostSourceAmps(feeding.index());
      } else {
        power = power.minus(solution.elementPower(feeding.index()));
        Complex amps = solution.elementAmps(feeding.index());
        ofTerminal.merge(feeding.outlet().a(), amps, Complex::plus);
        ofTerminal.merge(feeding.outlet().b(), amps.times(-1), Complex::plus);
      }
    }
    most = Math.max(most, ofTerminal.values().stream().mapToDouble(Complex::magnitude).max().orElse(0));
    Derivation volts = figures.volts(outlet);
    Derivation nominal = figures.nominal(outlet);
    Derivation power1 = Derivation.stated("rating of " + device.name(), "S_r", Quantity.of(device.voltAmperes(), Units.VOLT_AMPERE));
    Derivation rating = Derivation.computed("rated current of " + device.name(), "I_r",
        outlets.size() > 1 ? "S_r / (√3 × U_n)" : "S_r / U_n",
        FeedingWriter.ratedAmps(device, outlets), Units.AMPERE, power1, nominal);
    Derivation amps = Figures.solved("current of " + device.name(), most, Units.AMPERE,
        running.part() == Supplies.Part.FOLLOWS ? "Its power at the voltage there." : "What is taken of it.");
    return new SourceReading(
        device.name(), device.kind().name(), state(running, volts.si() / nominal.si(), power.re()), volts, amps, Optional.of(rating),
        Optional.of(share(amps, rating)), watts("power from " + device.name(), power.re()), rise(device, outlet, volts, nominal));
  }

  private static SourceReading.State state(Supplies.Running running, double share, double watts) {
    return switch (running.part()) {
      case STOPPED -> SourceReading.State.STOPPED;
      case HOLDS -> watts < -NOTHING ? SourceReading.State.TAKES : SourceReading.State.HOLDS;
      case FOLLOWS -> share > HIGHEST_SHARE ? SourceReading.State.FOLLOWS_TOO_HIGH : SourceReading.State.FOLLOWS;
    };
  }

  /** Over the voltage at the bus of its panel, where its breaker is. */
  private Optional<Derivation> rise(Device device, HouseNetwork.Outlet outlet, Derivation volts, Derivation nominal) {
    HouseNetwork.PanelBox box = house.branches().get(outlet.branch()).panel().map(network.panels()::get).orElse(null);
    if (box == null || volts.si() < LEAST_SHARE * nominal.si()) {
      return Optional.empty();
    }
    List<Integer> at = outlet.legs().stream()
        .map(l -> house.panels().get(house.branches().get(outlet.branch()).panel().orElseThrow()).legs().indexOf(l)).toList();
    if (at.isEmpty() || at.contains(-1)) {
      return Optional.empty();
    }
    int to = at.size() > 1 ? box.legs()[at.get(1)] : box.neutral();
    double bus = solution.volts(box.box(), box.legs()[at.get(0)], to).magnitude();
    Derivation atBreaker = Figures.solved("voltage at the breaker of " + device.name(), bus, Units.VOLT, "")
        .named("voltage at the breaker of " + device.name(), "U_b");
    return Optional.of(
        Derivation.computed(
            "voltage rise up to " + device.name(), "", "(U − U_b) / U_n",
            new Value.Amount(new Quantity((volts.si() - bus) / nominal.si(), Units.PERCENT)), List.of(volts, atBreaker, nominal)));
  }
}
