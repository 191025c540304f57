package wattle.model;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.quantity.Quantity;

/**
 * A room or place.
 *
 * @param kind such as {@code kitchen}; absent where neither said nor told by the name
 * @param flags what is said to be so, or not to be so
 * @param boxes names of the boxes in it, in the order written
 */
public record Room(
    String name,
    Optional<String> label,
    Optional<String> kind,
    Map<String, Quantity> facts,
    Map<String, Boolean> flags,
    List<String> boxes,
    Status status,
    Origin origin) {
  public Room {
    facts = Map.copyOf(facts);
    flags = Map.copyOf(flags);
    boxes = List.copyOf(boxes);
  }

  /** Label where there is one, else name. */
  public String title() {
    return label.orElse(name);
  }
}
