package wattle.faults;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.library.Library;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.DeviceKind.Family;
import wattle.model.DeviceKind.Grid;
import wattle.model.House;
import wattle.model.Load;
import wattle.model.Panel;
import wattle.model.Point;
import wattle.model.Service;
import wattle.model.Status;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * What sources of the house add to a fault. An inverter gives no more than a multiple of its rated current, a generator what
 * its subtransient reactance lets through. Both are taken as they are at their own terminals and added as magnitudes, which
 * is more than can be: the runs between only lower it. What an interlock or a transfer switch keeps apart from the supply is
 * not added to what that drives. For one thread.
 */
public final class Contributions {
  private final House house;
  private final Library library;
  /** By the service beside which they run; looked for once, since a plan of many flats has as many services. */
  private Map<String, List<Derivation>> found;

  public Contributions(House house, Library library) {
    this.house = house;
    this.library = library;
  }

  /** Times its rated current that an inverter gives into a fault: as stated, or as usual. */
  public Derivation factor(Device device) {
    return stated(device, "fault-factor", "fault current of " + device.name() + " to its rated current", "k")
        .orElseGet(() -> limit("inverter-fault-factor", "k", new Quantity(2, Units.ONE)));
  }

  /** Subtransient reactance of a generator, of its rated impedance: as stated, or as usual. */
  public Derivation reactance(Device device) {
    return stated(device, "reactance", "subtransient reactance of " + device.name(), "x")
        .orElseGet(() -> limit("generator-reactance", "x", new Quantity(0.10, Units.PERCENT)));
  }

  private static Optional<Derivation> stated(Device device, String fact, String name, String symbol) {
    return Optional.ofNullable(device.facts().get(fact)).filter(q -> q.si() > 0).map(q -> Derivation.stated(name, symbol, q));
  }

  private Derivation limit(String name, String symbol, Quantity usual) {
    return library.limit(name).map(l -> l.derivation(symbol)).orElseGet(() -> Derivation.assumed(name, symbol, usual));
  }

  /** Of each source that can run while a service feeds the house, in the order of the plan. */
  List<Derivation> beside(Service service) {
    if (found == null) {
      found = find();
    }
    return found.getOrDefault(service.name(), List.of());
  }

  private Map<String, List<Derivation>> find() {
    Map<String, List<Derivation>> all = new HashMap<>();
    for (Branch branch : house.branches().values()) {
      List<Device> sources = branch.status() == Status.TO_REMOVE ? List.of() : sourcesOn(branch);
      if (!sources.isEmpty() && branch.hots().stream().flatMap(h -> house.breaker(h.breaker()).stream()).noneMatch(Breaker::interlocked)) {
        Optional<Panel> panel = branch.panel().map(house.panels()::get);
        panel.flatMap(house::serviceOf).ifPresent(
            service -> sources.forEach(d -> all.computeIfAbsent(service.name(), n -> new ArrayList<>()).add(of(d, panel.orElseThrow()))));
      }
    }
    return all;
  }

  private List<Device> sourcesOn(Branch branch) {
    List<Device> sources = new ArrayList<>();
    for (Point point : branch.points()) {
      for (String name : point.devices()) {
        Device device = house.devices().get(name);
        if (device != null && device.kind().family() == Family.SOURCE && device.status() != Status.TO_REMOVE && device.voltAmperes() > 0) {
          sources.add(device);
        }
      }
    }
    return sources;
  }

  private Derivation of(Device device, Panel panel) {
    boolean lines = device.loads().stream().anyMatch(l -> l.connection() instanceof Load.Connection.HotToHot);
    boolean three = device.loads().size() > 2;
    double volts = lines ? panel.system().legToLegVolts() : panel.system().legToNeutralVolts();
    Derivation rating = Derivation.stated("rating of " + device.name(), "S_r", Quantity.of(device.voltAmperes(), Units.VOLT_AMPERE));
    Derivation nominal = Derivation.stated("nominal voltage", "U_n", Quantity.of(volts, Units.VOLT));
    double rated = device.voltAmperes() / volts / (three ? Math.sqrt(3) : 1);
    String unit = three ? "(√3 × U_n)" : "U_n";
    if (device.kind().grid().orElse(Grid.EITHER) == Grid.FORMS) {
      Derivation x = reactance(device);
      return Derivation.computed("fault current from " + device.name(), "I_g", three ? "S_r / (√3 × x × U_n)" : "S_r / (x × U_n)",
          rated / x.si(), Units.AMPERE, rating, x,
          nominal);
    }
    Derivation k = factor(device);
    return Derivation.computed("fault current from " + device.name(), "I_i", "k × S_r / " + unit, k.si() * rated, Units.AMPERE, k, rating,
        nominal);
  }
}
