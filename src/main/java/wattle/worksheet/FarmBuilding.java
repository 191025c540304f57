package wattle.worksheet;

import java.util.List;
import java.util.Set;

/**
 * What a feeder or a service brings to a building of a farm that is no dwelling, or to another farm load.
 *
 * @param name its panel
 * @param loads all that is connected, receptacles as the code counts them
 * @param together names of the loads that are expected to run together
 * @param circuits branch circuits that it has
 */
public record FarmBuilding(String name, List<ConnectedLoad> loads, Set<String> together, int circuits) {
  public FarmBuilding {
    loads = List.copyOf(loads);
    together = Set.copyOf(together);
  }
}
