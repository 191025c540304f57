package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import wattle.derivation.Derivation;
import wattle.model.LoadClass;

/**
 * Lights and outlets that are in no floor area of a dwelling: corridors, stairs, lobbies and a house panel of a building with several; a
 * garage, a shed or a workshop whose feeder is calculated by itself. The demand factors of dwellings are not for these. Lights count in
 * full, receptacles by the table for other occupancies. Both count as balanced over the legs, as general lighting does in Annex D.
 */
final class CommonOutlets {
  private static final Set<LoadClass> RECEPTACLES = Set.of(LoadClass.GENERAL_OUTLET, LoadClass.SMALL_APPLIANCE, LoadClass.LAUNDRY);

  private CommonOutlets() {}

  static void add(Inputs inputs, Figures figures, Tally load, Tally neutral) {
    List<ConnectedLoad> all = new ArrayList<>(inputs.common());
    inputs.dwellings().forEach(u -> u.outlets().forEach(o -> all.add(o.times(u.alike()))));
    String where = all.size() > inputs.common().size() ? "the floor area" : "the dwellings";
    List<ConnectedLoad> lights = all.stream().filter(l -> l.loadClass() == LoadClass.LIGHTING && l.total() > 0).toList();
    if (!lights.isEmpty()) {
      add("lights outside " + where, lights, figures.limit("common-lighting"), load, neutral);
    }
    List<ConnectedLoad> outlets = all.stream().filter(l -> RECEPTACLES.contains(l.loadClass()) && l.total() > 0).toList();
    if (outlets.isEmpty()) {
      return;
    }
    Derivation connected = Sums.ofLoads("receptacles outside " + where, outlets);
    for (Figures.Tier tier : figures.tiers("receptacle-demand", connected)) {
      String name = "receptacles outside " + where + ", " + tier.name();
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
