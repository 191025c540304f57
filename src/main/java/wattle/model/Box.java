package wattle.model;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.quantity.Quantity;

/**
 * A box and the devices in it.
 *
 * @param name room and name, as in {@code hall.sw}; a device's own box bears the name of the device
 * @param volume absent where not said
 * @param gangs absent where not said
 * @param traits further words, such as {@code metal} or {@code clamps}
 * @param devices names of the devices in it
 */
public record Box(
    String name,
    String room,
    Optional<Quantity> volume,
    Optional<Integer> gangs,
    Set<String> traits,
    List<String> devices,
    Status status,
    Origin origin) {
  public Box {
    traits = Set.copyOf(traits);
    devices = List.copyOf(devices);
  }
}
