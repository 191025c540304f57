package wattle.worksheet;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.derivation.Derivation;
import wattle.loads.Ends;
import wattle.loads.Flow;
import wattle.loads.LegLoads;
import wattle.model.LoadClass;
import wattle.model.SupplySystem;
import wattle.quantity.Units;

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

  /**
   * Amperes of a quarter of what lasts three hours or more, on the leg that has most of it, which conductors and overcurrent devices are
   * sized for on top; 0 where nothing lasts so long.
   */
  static Derivation quarter(Inputs inputs) {
    List<ConnectedLoad> lasting = inputs.common().stream().filter(inputs.placement()::isContinuous).toList();
    Derivation all = Sums.ofLoads("continuous loads outside the dwellings", lasting);
    LegLoads loads = LegLoads.NONE;
    for (ConnectedLoad load : lasting) {
      loads = loads.plus(new LegLoads(flows(inputs.placement().of(load), load.total(), inputs.system()), 0));
    }
    return Derivation.computed(
        "a quarter of continuous loads, on the leg with most of them", "I_q", "", loads.heaviestAmperes(inputs.system()) / 4, Units.AMPERE,
        all.named(all.name(), "P"));
  }

  private static Map<Ends, Flow> flows(Optional<Ends> ends, double voltAmperes, SupplySystem system) {
    if (ends.isPresent()) {
      return Map.of(ends.get(), Flow.of(voltAmperes, 1));
    }
    Map<Ends, Flow> evenly = new EnumMap<>(Ends.class);
    system.legs().forEach(l -> evenly.put(Ends.toNeutral(l), Flow.of(voltAmperes / system.legs().size(), 1)));
    return evenly;
  }
}
