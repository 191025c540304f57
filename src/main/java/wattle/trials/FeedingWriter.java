package wattle.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.DeviceKind.Need;
import wattle.model.Leg;
import wattle.model.Load;
import wattle.model.Role;
import wattle.model.SupplySystem;
import wattle.network.Complex;
import wattle.network.Network;

/**
 * Sources in the boxes of a branch. One that holds the voltage is a set of electromotive forces in step with the legs that
 * its hots are on; one that follows gives its power at the voltage that it finds, within its current. What a source leaks to
 * earth through insulation and capacitance keeps a neutral that is bonded nowhere from having no voltage at all.
 */
final class FeedingWriter {
  /** Insulation of a source to earth, in ohms: of no weight beside anything that is joined. */
  private static final double INSULATION = 1e6;

  private final HouseNetworkBuilder out;
  private final Branch branch;
  private final SupplySystem system;

  FeedingWriter(HouseNetworkBuilder out, Branch branch, SupplySystem system) {
    this.out = out;
    this.branch = branch;
    this.system = system;
  }

  /** A name among roles for the star point of a source without a neutral. */
  static Role starOf(String device) {
    return new Role.SwitchLeg("star point of " + device, 0);
  }

  /** Whether a source holds a voltage and has a star point of its own. */
  static boolean hasOwnStar(Device device, Scenario scenario) {
    Supplies.Running running = scenario.supplies().running().get(device.name());
    return running != null && running.part() == Supplies.Part.HOLDS && !usesNeutral(device);
  }

  private static boolean usesNeutral(Device device) {
    return device.kind().needs().contains(Need.NEUTRAL)
        || device.loads().stream().anyMatch(l -> l.connection() instanceof Load.Connection.HotToNeutral);
  }

  /** @param outlets between its terminals: one, or three of a three-phase source */
  void write(Device device, List<HouseNetwork.Outlet> outlets, Map<Role, Integer> here) {
    Supplies.Running running = out.scenario.supplies().running().get(device.name());
    if (running == null || outlets.isEmpty() || running.part() == Supplies.Part.STOPPED) {
      return;
    }
    double share = 1.0 / outlets.size();
    if (running.part() == Supplies.Part.FOLLOWS) {
      for (HouseNetwork.Outlet outlet : outlets) {
        double nominal = outlet.nominalVolts();
        double most = out.sourceFigures.mostAmps(device, share * device.voltAmperes() / nominal, !out.scenario.faults().isEmpty());
        int element = out.net.follower(outlet.box(), outlet.a(), outlet.b(), share * running.watts(), nominal, most);
        out.feedings.add(new HouseNetwork.Feeding(device.name(), outlet, false, element));
      }
    } else {
      holds(device, outlets, here, ratedAmps(device, outlets));
    }
  }

  /** Of each hot of a source at nominal voltage. */
  static double ratedAmps(Device device, List<HouseNetwork.Outlet> outlets) {
    return device.voltAmperes() / outlets.get(0).nominalVolts() / (outlets.size() > 1 ? Math.sqrt(3) : 1);
  }

  private void holds(Device device, List<HouseNetwork.Outlet> outlets, Map<Role, Integer> here, double ratedAmps) {
    Integer star = here.get(usesNeutral(device) ? new Role.Neutral() : starOf(device.name()));
    HouseNetwork.Outlet outlet = outlets.get(0);
    List<Integer> terminals = new ArrayList<>();
    List<Leg> legs = new ArrayList<>();
    if (outlets.size() > 1) {
      outlets.forEach(o -> {
        terminals.add(o.a());
        o.legs().stream().findFirst().ifPresent(legs::add);
      });
    } else {
      terminals.add(outlet.a());
      legs.addAll(outlet.legs());
      if (outlet.connection() instanceof Load.Connection.HotToHot) {
        terminals.add(outlet.b());
      }
    }
    if (star == null || legs.size() < terminals.size()) {
      return; // no neutral or no leg, which is a finding of the binder
    }
    Complex[] emf = new Complex[terminals.size()];
    for (int i = 0; i < emf.length; i++) {
      emf[i] = Complex.polar(system.legToNeutralVolts(), system.degreesOf(legs.get(i)));
    }
    Complex[][] impedance = out.sourceFigures.impedance(device, emf.length, system.legToNeutralVolts(), ratedAmps,
        !out.scenario.faults().isEmpty());
    int source = out.net.source(outlet.box(), star, terminals.stream().mapToInt(t -> t).toArray(), emf, impedance);
    out.net.resistance(outlet.box(), star, Network.EARTH, INSULATION);
    Integer ground = here.get(new Role.Ground());
    if (device.traits().contains("bonded") && ground != null) {
      out.net.resistance(outlet.box(), star, ground, HouseNetworkBuilder.CONTACT);
    }
    out.feedings.add(new HouseNetwork.Feeding(device.name(), outlet, true, source));
  }
}
