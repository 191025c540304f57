package wattle.model;

import java.util.List;
import java.util.Optional;
import wattle.quantity.Quantity;

/**
 * One run of a branch, from the point nearer the panel to the one farther from it.
 *
 * @param from index in the branch's points
 * @param to index in the branch's points; each point but the first is the end of exactly one section
 * @param length absent where the plan leaves it for later or it could not be read
 * @param conductors what each wire of it does; empty where that could not be derived
 */
public record Section(
    int from,
    int to,
    Optional<Quantity> length,
    Wiring wiring,
    Surroundings surroundings,
    List<ConductorUse> conductors,
    Status status,
    Origin origin) {
  public Section {
    conductors = List.copyOf(conductors);
  }
}
