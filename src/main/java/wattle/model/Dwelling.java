package wattle.model;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.quantity.Quantity;

/**
 * What is known of the building, as facts by name: {@code floor-area}, {@code storeys}.
 *
 * @param panels names of the panels that feed it, which feed others in turn; empty where it is the only one, on all
 * @param flags facts without a value
 */
public record Dwelling(
    Optional<String> name,
    Optional<String> label,
    List<String> panels,
    Map<String, Quantity> facts,
    Set<String> flags,
    Origin origin) {
  public Dwelling {
    panels = List.copyOf(panels);
    facts = Map.copyOf(facts);
    flags = Set.copyOf(flags);
  }

  /** How many dwellings the block stands for: as many as it says are alike, otherwise one. */
  public double count() {
    Quantity alike = facts.get("dwellings");
    return alike == null ? 1 : Math.max(1, alike.si());
  }

  /** Label where there is one, else name, else {@code dwelling}. */
  public String title() {
    return label.or(() -> name).orElse("dwelling");
  }
}
