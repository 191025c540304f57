package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import wattle.derivation.Derivation;
import wattle.model.LoadClass;

/** What the optional methods of NFPA 70 add up at its rating: general lighting, circuits, and all but heat and cooling. */
final class OptionalGeneral {
  private static final LoadClass[] RATED = {
      LoadClass.COOKING, LoadClass.DRYER, LoadClass.WATER_HEATING, LoadClass.INSTANT_WATER_HEATING,
      LoadClass.FIXED_APPLIANCE, LoadClass.POOL_HEATING, LoadClass.MOTOR, LoadClass.VEHICLE_CHARGING
  };

  private OptionalGeneral() {}

  /**
   * Lists it and gives the sum.
   *
   * @param article that takes loads as they are rated
   */
  static Derivation list(Inputs inputs, Figures figures, Tally tally, String article) {
    List<Derivation> parts = new ArrayList<>();
    Derivation general = new GeneralLoad(inputs, figures).list(tally);
    if (general.si() > 0) {
      parts.add(general);
    }
    for (LoadClass loadClass : RATED) {
      List<ConnectedLoad> loads = inputs.inDwellings(loadClass).stream().filter(l -> l.voltAmperes() > 0).toList();
      if (!loads.isEmpty()) {
        Derivation rated = Sums.ofLoads(loadClass.word().replace('-', ' '), loads);
        parts.add(rated);
        tally.list(rated.name() + ", as rated", rated, Sums.names(loads), article);
      }
    }
    return Sums.sum("general loads", parts);
  }

  static List<String> devices(Inputs inputs, Figures figures) {
    List<String> names = new ArrayList<>(new GeneralLoad(inputs, figures).devices());
    names.addAll(Sums.names(inputs.inDwellings(RATED)));
    return names;
  }
}
