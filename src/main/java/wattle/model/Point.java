package wattle.model;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A place where a branch comes to: the panel it starts at, or a box.
 *
 * @param box name of the box; absent for the panel, which is always the first point
 * @param devices names of the devices in that box that are on this branch, in order of arrival
 * @param hot which of the branch's hots the devices here sit on that do not say their own, from 0; absent where the plan does not say
 * @param hots by the names of devices, for those that say which they sit on
 * @param wiredThrough whether the rest of the branch hangs on the device's own screws, rather than on a pigtail
 */
public record Point(
    Optional<String> box, List<String> devices, Optional<Integer> hot, Map<String, Integer> hots, boolean wiredThrough, Origin origin) {
  public Point {
    devices = List.copyOf(devices);
    hots = Map.copyOf(hots);
  }

  /** Which of the branch's hots a device here sits on, from 0; the first where the plan does not say. */
  public int hotOf(String device) {
    return hots.getOrDefault(device, hot.orElse(0));
  }
}
