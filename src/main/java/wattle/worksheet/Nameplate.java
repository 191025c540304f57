package wattle.worksheet;

import java.util.List;
import java.util.Optional;
import wattle.library.Library;
import wattle.model.Device;
import wattle.model.Load;
import wattle.motors.WelderCurrents;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;

/**
 * What load calculations count of a device. NFPA 70 counts volt-amperes, and a nameplate in kW as as many kVA unless the plan states a
 * power factor, as the examples of Annex D do; CSA C22.1 counts watts. The power factor of a kind of the library, which circuits and
 * trials take, is not the plan's and counts in neither. A welder counts with its effective current.
 */
final class Nameplate {
  private final boolean inWatts;
  private final WelderCurrents welders;

  Nameplate(Library library) {
    List<Method> methods = new Worksheets(library).methods();
    welders = new WelderCurrents(library);
    inWatts = methods.stream().anyMatch(m -> m.mechanism().countsWatts());
  }

  /** Volt-amperes, or watts, of all its loads. */
  double of(Device device) {
    return device.loads().stream().mapToDouble(l -> of(device, l)).sum();
  }

  /** Of one of its loads. */
  double of(Device device, Load load) {
    boolean stated = device.facts().containsKey("power-factor") && !inWatts;
    double rated = load.isInWatts() && !stated ? load.nameplateVoltAmperes() * load.powerFactor() : load.nameplateVoltAmperes();
    return rated * welding(device, load);
  }

  /** The part of its rated current that a welder counts with: its effective current (NFPA 70 630.11(A)); 1 for all else. */
  private double welding(Device device, Load load) {
    Optional<Double> primary = load.rated().filter(r -> r.dimension().equals(Dimension.CURRENT) && r.si() > 0).map(Quantity::si);
    return primary.flatMap(amperes -> welders.effective(device, amperes).map(e -> e / amperes)).or(() -> welders.factor(device))
        .orElse(1.0);
  }
}
