package wattle.materials;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.House;
import wattle.model.Status;
import wattle.model.SupplySystem;

/** How new appliances are connected: by cord and plug, and then with a receptacle that fits, or hard-wired. */
final class PluggedIn {
  /** Kinds that come with a cord, where the plan says nothing else; common practice. */
  private static final Set<String> WITH_CORD = Set.of("refrigerator", "freezer", "washer", "microwave", "trash compactor", "garage door",
      "sump pump", "water cooler", "table saw");

  /** Kinds that are plugged in with a cord that is bought for them; common practice. */
  private static final Set<String> CORD_APART = Set.of("range", "dryer");

  /** Kinds that are wired without a plug; common practice. */
  private static final Set<String> HARD_WIRED = Set.of("water heater", "instant water heater", "baseboard heater", "wall heater",
      "floor heating", "electric furnace", "furnace", "boiler", "storage heater", "heat pump", "air conditioner", "hot tub", "sauna",
      "well pump", "pool pump", "cooktop", "wall oven", "doorbell", "security panel", "range hood");

  private final House house;

  PluggedIn(House house) {
    this.house = house;
  }

  /** How an appliance is connected, in a word for its line; empty where neither the plan nor practice says. */
  String word(Device device) {
    return isHardWired(device) ? "hard-wired" : hasPlug(device) ? "cord and plug" : "";
  }

  private boolean isHardWired(Device device) {
    return device.traits().contains("hardwired")
        || !device.traits().contains("cord-connected") && HARD_WIRED.contains(device.kind().name());
  }

  private boolean hasPlug(Device device) {
    String kind = device.kind().name();
    return device.traits().contains("cord-connected")
        || !device.traits().contains("hardwired") && (WITH_CORD.contains(kind) || CORD_APART.contains(kind));
  }

  /** The receptacle that a new appliance is plugged into, and the cord where it has none of its own. */
  void count(Device device, Tally tally, List<String> open) {
    if (device.status() != Status.NEW || !hasPlug(device)) {
      return;
    }
    Optional<Branch> branch = branch(device);
    Optional<SupplySystem> system = branch.flatMap(Branch::panel).map(house.panels()::get).map(p -> p.system());
    Optional<Double> rating = branch.flatMap(b -> b.hots().stream().findFirst()).flatMap(h -> house.breaker(h.breaker()))
        .flatMap(Breaker::amperes);
    if (system.isEmpty() || rating.isEmpty()) {
      return;
    }
    // Of one receptacle on a circuit of its own the rating is that of the circuit or the next larger (NFPA 70 210.21(B)).
    Optional<String> configuration = Configuration.of(device.kind(), isGrounded(branch.get()), rating.get(), system.get());
    if (configuration.isEmpty()) {
      if (system.get().legToNeutralVolts() < 200) {
        open.add("no straight-blade receptacle of NEMA WD 6 is made for " + device.name());
      }
      return;
    }
    tally.add(Material.Category.PLUG, "receptacle " + standard() + " " + configuration.get() + "R for the " + device.kind().name(),
        device.name());
    if (CORD_APART.contains(device.kind().name())) {
      tally.add(Material.Category.PLUG, "cord with plug " + standard() + " " + configuration.get() + "P for the " + device.kind().name(),
          device.name());
    }
  }

  private static boolean isGrounded(Branch branch) {
    return branch.sections().stream().allMatch(s -> s.wiring().ground().isPresent() || s.wiring().raceway().isPresent());
  }

  private Optional<Branch> branch(Device device) {
    return house.branches().values().stream().filter(b -> b.points().stream().anyMatch(p -> p.devices().contains(device.name())))
        .findFirst();
  }

  /** The same configurations have the same numbers in Canada (CSA C22.1-21 Diagram 1, as oncodes.ca, Appendix B rule 26-700). */
  private String standard() {
    return house.codes().stream().anyMatch(c -> c.startsWith("ca-")) ? "CSA" : "NEMA";
  }

  /** The designation of a receptacle that is a device of the plan; empty where there is none. */
  Optional<String> configuration(Device receptacle) {
    double amperes = Optional.ofNullable(receptacle.facts().get("rated")).or(receptacle.kind()::rating).map(q -> q.si()).orElse(15.0);
    return branch(receptacle).flatMap(Branch::panel).map(house.panels()::get)
        .flatMap(p -> Configuration.of(receptacle.kind(), !receptacle.traits().contains("ungrounded"), amperes, p.system()))
        .map(c -> standard() + " " + c + "R");
  }
}
