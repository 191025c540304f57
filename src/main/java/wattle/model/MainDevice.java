package wattle.model;

import java.util.Optional;
import java.util.Set;
import wattle.quantity.Quantity;

/**
 * What stands between a panel's supply and its bus.
 *
 * @param rating in amperes; absent for lugs, or where not said
 * @param traits of a transfer switch, from {@link Words#TRANSFER_TRAITS}
 */
public record MainDevice(
    Kind kind, Optional<Quantity> rating, Optional<Quantity> interrupting, Terminals terminals, Set<String> traits,
    Origin origin) {
  public MainDevice {
    traits = Set.copyOf(traits);
  }

  /** The kinds of main. */
  public enum Kind {
    BREAKER, FUSE, SWITCH,
    /** A transfer switch: the bus is on its supply, on a source of its own, or on neither. */
    TRANSFER, LUGS
  }
}
