package wattle.model;

import java.util.Optional;
import wattle.quantity.Quantity;

/**
 * What stands between a panel's supply and its bus.
 *
 * @param rating in amperes; absent for lugs, or where not said
 */
public record MainDevice(
    Kind kind, Optional<Quantity> rating, Optional<Quantity> interrupting, Terminals terminals, Origin origin) {
  /** The kinds of main. */
  public enum Kind {
    BREAKER, FUSE, SWITCH,
    /** A transfer switch: the bus is on its supply, on a source of its own, or on neither. */
    TRANSFER, LUGS
  }
}
