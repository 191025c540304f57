package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import wattle.model.LoadClass;

/**
 * What an energy management system holds back by the load of the service does not count: vehicle chargers by CSA C22.1 8-106 11), and
 * whatever else it controls by 8-500, as rmwb.ca safety-codes-bulletin-summer-2026 reads it of hot tubs and other large loads.
 *
 * @param rest the inputs without what is held back
 */
record EnergyManagement(Inputs rest, List<ConnectedLoad> vehicles, List<ConnectedLoad> others) {
  static EnergyManagement of(Inputs inputs) {
    List<ConnectedLoad> vehicles = new ArrayList<>();
    List<ConnectedLoad> others = new ArrayList<>();
    for (LoadClass loadClass : LoadClass.values()) {
      List<ConnectedLoad> managed = inputs.all(loadClass).stream().filter(inputs.placement()::isManaged).toList();
      (loadClass == LoadClass.VEHICLE_CHARGING ? vehicles : others).addAll(managed);
    }
    if (vehicles.isEmpty() && others.isEmpty()) {
      return new EnergyManagement(inputs, vehicles, others);
    }
    List<DwellingUnit> units = inputs.dwellings().stream()
        .map(u -> u.withLoads(u.loads().stream().filter(l -> !inputs.placement().isManaged(l)).toList())).toList();
    List<ConnectedLoad> common = inputs.common().stream().filter(l -> !inputs.placement().isManaged(l)).toList();
    return new EnergyManagement(inputs.of(units).withCommon(common), vehicles, others);
  }

  /** The same without what is there already. */
  EnergyManagement onlyAdded() {
    return new EnergyManagement(
        rest, vehicles.stream().filter(ConnectedLoad::added).toList(), others.stream().filter(ConnectedLoad::added).toList());
  }

  /** Lists what is left out. */
  void list(Tally load) {
    if (!vehicles.isEmpty()) {
      load.leaveOut(
          "vehicle charging under energy management, left out", Sums.ofLoads("vehicle charging", vehicles), Sums.names(vehicles),
          "8-106 11)", "A system that monitors the service limits it; check that the plan names the system.");
    }
    if (!others.isEmpty()) {
      load.leaveOut(
          "other loads under energy management, left out", Sums.ofLoads("managed loads", others), Sums.names(others), "8-500",
          "A system that monitors the service limits them; ask the authority, since some accept 8-500 only for vehicle chargers.");
    }
  }
}
