package wattle.model;

import java.util.Optional;
import wattle.quantity.Quantity;

/**
 * A length of one wiring: a feeder, a service run.
 *
 * @param length absent where the plan leaves it for later
 */
public record Stretch(Optional<Quantity> length, Wiring wiring, Surroundings surroundings, Origin origin) {}
