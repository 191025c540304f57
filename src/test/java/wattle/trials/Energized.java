package wattle.trials;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.library.Library;
import wattle.lockout.Handle;
import wattle.lockout.Place;
import wattle.model.Branch;
import wattle.model.BreakerId;
import wattle.model.Device;
import wattle.model.House;
import wattle.model.Section;
import wattle.network.Network;

/**
 * A house in which every source holds a voltage, whatever it does in service and whatever else does, with some handles open:
 * the supplier's network, solar, storage and generators at once, behind whatever is closed. Nothing draws, so that nothing
 * raises the neutral bar, and what is dead is at zero but for rounding.
 */
final class Energized {
  private final House house;
  private final HouseNetwork network;
  private final wattle.network.Solution solution;

  Energized(House house, Library library, List<Handle> open) {
    this.house = house;
    Set<BreakerId> breakers = new HashSet<>();
    Set<String> mains = new HashSet<>();
    Set<String> disconnected = new HashSet<>();
    for (Handle handle : open) {
      if (handle.part() instanceof Handle.Part.OfBreaker b) {
        breakers.add(b.breaker());
      } else if (handle.part() instanceof Handle.Part.OfMain m) {
        mains.add(m.panel());
      } else if (handle.part() instanceof Handle.Part.OfSource s) {
        disconnected.add(s.device());
      } else {
        throw new AssertionError(handle.part());
      }
    }
    Map<String, Supplies.Running> running = new LinkedHashMap<>();
    for (Device device : house.devices().values()) {
      if (SupplyReader.isSource(device) && !disconnected.contains(device.name())) {
        running.put(device.name(), new Supplies.Running(device.name(), Supplies.Part.HOLDS, 0));
      }
    }
    Scenario scenario = Scenario.quiet().open(breakers).fedBy(new Supplies(Set.of(), mains, Set.of(), running));
    TrialResult result = new Trials(house, library).run(scenario);
    network = result.network();
    solution = result.solution();
  }

  /** Sources of the house that hold a voltage here. */
  int holding() {
    return (int) network.feedings().stream().filter(HouseNetwork.Feeding::holds).count();
  }

  /** Volts to earth of all that is at a place, by name. */
  Map<String, Double> volts(Place place) {
    Map<String, Double> volts = new LinkedHashMap<>();
    if (place instanceof Place.InPanel panel) {
      inPanel(panel.panel(), volts);
    } else {
      place.boxes().forEach(b -> inBox(b, volts));
    }
    return volts;
  }

  private void inBox(String box, Map<String, Double> volts) {
    for (HouseNetwork.Conductor conductor : network.conductors()) {
      Optional<Branch> branch = conductor.branch().map(house.branches()::get);
      if (branch.isPresent() && touches(branch.get(), conductor.point(), box)) {
        put(conductor, volts);
      }
    }
    for (HouseNetwork.Outlet outlet : network.outlets()) {
      if (house.devices().get(outlet.device()).box().equals(box)) {
        volts.put(outlet.name() + " first contact", solution.volts(outlet.box(), outlet.a(), Network.EARTH).magnitude());
        volts.put(outlet.name() + " second contact", solution.volts(outlet.box(), outlet.b(), Network.EARTH).magnitude());
      }
    }
  }

  private void put(HouseNetwork.Conductor conductor, Map<String, Double> volts) {
    volts.put(conductor.branch().orElse("feeder") + " " + conductor.name() + ", " + conductor.run(),
        solution.volts(conductor.box(), conductor.local()).magnitude());
  }

  /** Whether the run that ends at a point begins or ends in the box. */
  private static boolean touches(Branch branch, int point, String box) {
    for (Section section : branch.sections()) {
      if (section.to() == point) {
        return List.of(section.from(), section.to()).stream().anyMatch(p -> branch.points().get(p).box().equals(Optional.of(box)));
      }
    }
    return false;
  }

  /** The bars, and the runs of branches and feeders that end on the load side of a breaker. */
  private void inPanel(String name, Map<String, Double> volts) {
    HouseNetwork.PanelBox box = network.panels().get(name);
    for (int i = 0; i < box.legs().length; i++) {
      volts.put("bar " + i, solution.volts(box.box(), box.legs()[i]).magnitude());
    }
    volts.put("neutral bar", solution.volts(box.box(), box.neutral()).magnitude());
    for (HouseNetwork.Conductor conductor : network.conductors()) {
      boolean ofBranch = conductor.branch().map(house.branches()::get).filter(b -> b.panel().equals(Optional.of(name)))
          .filter(b -> b.sections().stream().anyMatch(s -> s.from() == 0 && s.to() == conductor.point())).isPresent();
      boolean ofFeeder = conductor.panel().isPresent() && conductor.run().startsWith(name + "/");
      if (ofBranch || ofFeeder) {
        put(conductor, volts);
      }
    }
  }
}
