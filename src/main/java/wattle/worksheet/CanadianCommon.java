package wattle.worksheet;

import java.util.List;
import wattle.derivation.Derivation;
import wattle.model.LoadClass;

/** Loads outside the dwellings by CSA C22.1 8-202 3); heating and cooling among them are counted with the others. */
final class CanadianCommon {
  private static final List<LoadClass> ELSEWHERE = List.of(
      LoadClass.HEATING, LoadClass.ROOM_HEATING, LoadClass.STORAGE_HEATING, LoadClass.HEAT_PUMP, LoadClass.COOLING,
      LoadClass.VEHICLE_CHARGING, LoadClass.SOURCE);

  private CanadianCommon() {}

  static void add(Inputs inputs, Figures figures, Tally load, Tally neutral) {
    List<ConnectedLoad> vehicles = inputs.common().stream().filter(l -> l.loadClass() == LoadClass.VEHICLE_CHARGING).toList();
    List<ConnectedLoad> others = inputs.common().stream().filter(l -> !ELSEWHERE.contains(l.loadClass())).toList();
    add("vehicle charging outside the dwellings", vehicles, figures.limit("vehicle-charging"), load, neutral);
    add("loads outside the dwellings", others, figures.limit("common-loads"), load, neutral);
  }

  private static void add(String name, List<ConnectedLoad> loads, Derivation factor, Tally load, Tally neutral) {
    List<ConnectedLoad> onNeutral = Sums.onNeutral(loads);
    if (!loads.isEmpty()) {
      load.add(name, Sums.ofLoads(name, loads), factor, Sums.names(loads));
    }
    if (!onNeutral.isEmpty()) {
      neutral.add(name, Sums.ofLoads(name, onNeutral), factor, Sums.names(onNeutral));
    }
  }
}
