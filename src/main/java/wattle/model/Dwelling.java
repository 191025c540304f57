package wattle.model;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.quantity.Quantity;

/**
 * What is known of the building, as facts by name: {@code floor-area}, {@code storeys}.
 *
 * @param flags facts without a value
 */
public record Dwelling(
    Optional<String> name, Optional<String> label, Map<String, Quantity> facts, Set<String> flags, Origin origin) {
  public Dwelling {
    facts = Map.copyOf(facts);
    flags = Set.copyOf(flags);
  }
}
