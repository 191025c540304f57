package wattle.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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

  void write(Device device, Optional<HouseNetwork.Outlet> outlet, Map<Role, Integer> here) {
    Supplies.Running running = out.scenario.supplies().running().get(device.name());
    if (running == null || outlet.isEmpty() || running.part() == Supplies.Part.STOPPED) {
      return;
    }
    double nominal = outlet.get().nominalVolts();
    double ratedAmps = device.voltAmperes() / nominal;
    if (running.part() == Supplies.Part.FOLLOWS) {
      double most = out.sourceFigures.mostAmps(device, ratedAmps, !out.scenario.faults().isEmpty());
      int element = out.net.follower(outlet.get().box(), outlet.get().a(), outlet.get().b(), running.watts(), nominal, most);
      out.feedings.add(new HouseNetwork.Feeding(device.name(), outlet.get(), false, element));
    } else {
      holds(device, outlet.get(), here, ratedAmps);
    }
  }

  private void holds(Device device, HouseNetwork.Outlet outlet, Map<Role, Integer> here, double ratedAmps) {
    Integer star = here.get(usesNeutral(device) ? new Role.Neutral() : starOf(device.name()));
    List<Integer> terminals = new ArrayList<>();
    List<Leg> legs = outlet.legs();
    terminals.add(outlet.a());
    if (outlet.connection() instanceof Load.Connection.HotToHot) {
      terminals.add(outlet.b());
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
