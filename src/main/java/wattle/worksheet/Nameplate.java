package wattle.worksheet;

import java.util.List;
import wattle.library.Library;
import wattle.model.Device;
import wattle.model.Load;

/**
 * What load calculations count of a device. NFPA 70 counts volt-amperes, and a nameplate in kW as as many kVA unless the plan states a
 * power factor, as the examples of Annex D do; CSA C22.1 counts watts. The power factor of a kind of the library, which circuits and
 * trials take, is not the plan's and counts in neither.
 */
final class Nameplate {
  private final boolean inWatts;

  Nameplate(Library library) {
    List<Method> methods = new Worksheets(library).methods();
    inWatts = methods.stream().anyMatch(m -> m.mechanism().countsWatts());
  }

  /** Volt-amperes, or watts, of all its loads. */
  double of(Device device) {
    return device.loads().stream().mapToDouble(l -> of(device, l)).sum();
  }

  /** Of one of its loads. */
  double of(Device device, Load load) {
    boolean stated = device.facts().containsKey("power-factor") && !inWatts;
    return load.isInWatts() && !stated ? load.nameplateVoltAmperes() * load.powerFactor() : load.nameplateVoltAmperes();
  }
}
