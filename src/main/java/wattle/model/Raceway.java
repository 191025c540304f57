package wattle.model;

import java.util.Optional;
import wattle.quantity.Quantity;

/**
 * A raceway or bored hole that several runs may pass through.
 *
 * @param race trade size and kind; absent for a bored hole
 * @param length from box to box; absent where not said
 */
public record Raceway(
    String name,
    Optional<String> label,
    Optional<Race> race,
    Optional<Quantity> length,
    Surroundings surroundings,
    Status status,
    Origin origin) {}
