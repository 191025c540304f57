package wattle.emit.view.branchwiring;

import java.util.Optional;

/**
 * A screw, lead or bar that a wire goes to.
 *
 * @param name as the trade names it: {@code brass}, {@code common}, {@code white lead}
 * @param below whether it is drawn at the foot of its device, where neutral and ground are
 * @param net what it is joined to; absent where no wire comes to it
 */
record Terminal(String name, Make make, boolean below, Optional<Net.Key> net) {
  /** How it looks. */
  enum Make {
    BRASS, DARK, SILVER, GREEN,
    /** A wire that the device brings along, and that must be joined to another. */
    LEAD,
    /** A terminal of a breaker, or of a bar. */
    CLAMP
  }
}
