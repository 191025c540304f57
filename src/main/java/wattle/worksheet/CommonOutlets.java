package wattle.worksheet;

import java.util.List;
import java.util.Set;
import wattle.derivation.Derivation;
import wattle.model.LoadClass;

/**
 * Lights and outlets of a building with several dwellings that belong to none of them: corridors, stairs, lobbies, a house panel. The
 * demand factors of dwellings are not for these. Lights count in full, receptacles by the table for other occupancies.
 */
final class CommonOutlets {
  private static final Set<LoadClass> RECEPTACLES = Set.of(LoadClass.GENERAL_OUTLET, LoadClass.SMALL_APPLIANCE, LoadClass.LAUNDRY);

  private CommonOutlets() {}

  static void add(Inputs inputs, Figures figures, Tally load, Tally neutral) {
    List<ConnectedLoad> lights = inputs.common().stream().filter(l -> l.loadClass() == LoadClass.LIGHTING && l.total() > 0).toList();
    if (!lights.isEmpty()) {
      add("lights outside the dwellings", lights, figures.limit("common-lighting"), load, neutral);
    }
    List<ConnectedLoad> outlets = inputs.common().stream().filter(l -> RECEPTACLES.contains(l.loadClass()) && l.total() > 0).toList();
    if (outlets.isEmpty()) {
      return;
    }
    Derivation connected = Sums.ofLoads("receptacles outside the dwellings", outlets);
    for (Figures.Tier tier : figures.tiers("receptacle-demand", connected)) {
      String name = "receptacles outside the dwellings, " + tier.name();
      load.add(name, tier.part(), tier.factor(), Sums.names(outlets));
      neutral.add(name, tier.part(), tier.factor(), Sums.names(outlets));
    }
  }

  private static void add(String name, List<ConnectedLoad> loads, Derivation factor, Tally load, Tally neutral) {
    load.add(name, Sums.ofLoads(name, loads), factor, Sums.names(loads));
    List<ConnectedLoad> onNeutral = Sums.onNeutral(loads);
    if (!onNeutral.isEmpty()) {
      neutral.add(name, Sums.ofLoads(name, onNeutral), factor, Sums.names(onNeutral));
    }
  }
}
