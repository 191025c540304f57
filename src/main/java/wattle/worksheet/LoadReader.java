package wattle.worksheet;

import java.util.List;
import java.util.Optional;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.Leg;
import wattle.model.Load;
import wattle.model.LoadClass;
import wattle.model.Status;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** A device as a load of a worksheet. */
final class LoadReader {
  private final Optional<Quantity> perOutlet;

  private final Nameplate nameplate;

  LoadReader(Library library) {
    nameplate = new Nameplate(library);
    perOutlet = library.limit("receptacle-outlet").map(Limit::value);
  }

  /** Whether a device is covered by the floor area, or by the circuits for small appliances and laundry. */
  static boolean inFloorArea(Device device) {
    return device.kind().loadClass().map(UnitReader::isGeneral).orElse(false);
  }

  /** A load with a class of its own; absent for what draws nothing, and for sources. */
  Optional<ConnectedLoad> load(UnitReader.Fed fed, List<Objection> objections) {
    Device device = fed.device();
    Optional<LoadClass> loadClass = device.kind().loadClass();
    if (loadClass.isEmpty()) {
      if (device.kind().family() == DeviceKind.Family.APPLIANCE) {
        objections.add(
            Objection.warning(
                "load-class-missing", device.name(), "'" + device.name() + "' is a " + device.kind().name() + ", which has no load class",
                "Without a class, its demand factor is not known, and the load calculation leaves it out.",
                "give part " + device.kind().name() + " a class, such as class fixed-appliance"));
      }
      return Optional.empty();
    }
    if (loadClass.get() == LoadClass.SOURCE) {
      return Optional.empty();
    }
    if (device.loads().stream().allMatch(l -> l.rated().isEmpty())) {
      objections.add(
          Objection.warning(
              "load-unrated", device.name(), "'" + device.name() + "' states no load",
              "It is a " + loadClass.get().word().replace('-', ' ') + " load, and adds nothing to a load calculation.",
              "write its nameplate load, such as " + example(loadClass.get())));
    }
    return Optional.of(connected(fed, loadClass.get(), nameplate.of(device)));
  }

  /** What its nameplate counts. */
  double counted(Device device) {
    return nameplate.of(device);
  }

  private static String example(LoadClass loadClass) {
    return loadClass == LoadClass.COOKING ? "12 kW" : loadClass == LoadClass.MOTOR ? "6 A" : "4.5 kW";
  }

  /** A light at its load, a receptacle at its load or what the code counts for an outlet, whichever is larger. */
  Optional<ConnectedLoad> outlet(UnitReader.Fed fed) {
    double rated = nameplate.of(fed.device());
    boolean receptacle = fed.device().kind().family() == DeviceKind.Family.RECEPTACLE;
    double counted = receptacle ? Math.max(rated, perOutlet.map(Quantity::si).orElse(0.0)) : rated;
    return counted == 0
        ? Optional.empty()
        : Optional.of(connected(fed, fed.device().kind().loadClass().orElseThrow(), counted));
  }

  private ConnectedLoad connected(UnitReader.Fed fed, LoadClass loadClass, double voltAmperes) {
    Device device = fed.device();
    double onNeutral = 0;
    double between = 0;
    Optional<Leg> leg = Optional.empty();
    for (Load load : device.loads()) {
      if (load.connection() instanceof Load.Connection.HotToNeutral to) {
        onNeutral += nameplate.of(device, load);
        leg = leg(fed.branch(), to.hot());
      } else {
        between += nameplate.of(device, load);
      }
    }
    double all = onNeutral + between;
    boolean noneBetween = device.loads().stream().allMatch(l -> l.connection() instanceof Load.Connection.HotToNeutral);
    double share = all > 0 ? onNeutral / all : noneBetween ? 1 : 0;
    Quantity stated = device.facts().get("neutral-load");
    if (stated != null && voltAmperes > 0) {
      share = Math.min(1, Math.max(0, stated.si() / voltAmperes));
    }
    boolean added = device.status() == Status.NEW;
    return new ConnectedLoad(
        device.name(), loadClass, voltAmperes, share, share > 0 ? leg : Optional.empty(), device.kind().motor(), added, 1,
        isStated(device, voltAmperes));
  }

  /** Whether the plan states that power, and not a current, horsepower or nothing. */
  private static boolean isStated(Device device, double voltAmperes) {
    List<Quantity> rated = device.loads().stream().flatMap(l -> l.rated().stream()).toList();
    // Each part of a device on two or three hots has the rating of the whole.
    return rated.stream().filter(r -> r.unit().dimension().equals(Dimension.POWER) && !r.unit().equals(Units.HORSEPOWER))
        .anyMatch(r -> Math.abs(r.si() - voltAmperes) <= 1e-6 * voltAmperes);
  }

  private static Optional<Leg> leg(Branch branch, int hot) {
    return hot < branch.hots().size() ? branch.hots().get(hot).leg() : Optional.empty();
  }
}
