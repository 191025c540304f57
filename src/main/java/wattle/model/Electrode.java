package wattle.model;

import java.util.Optional;
import wattle.quantity.Quantity;

/**
 * An earth electrode and the conductor that goes to it.
 *
 * @param kind such as {@code water-pipe} or {@code rods}
 * @param resistance to remote earth; absent where not said
 */
public record Electrode(
    String kind, Optional<Wiring> conductor, Optional<Quantity> resistance, Status status, Origin origin) {}
