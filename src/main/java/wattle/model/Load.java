package wattle.model;

import java.util.Optional;
import wattle.quantity.Quantity;

/**
 * What a device draws between two conductors of its branch.
 *
 * @param part which part of the device, such as {@code upper}; empty for the whole
 * @param connection between which conductors
 * @param rated volt-amperes or amperes as the plan states them; absent where it states none
 * @param nameplateVoltAmperes apparent power at the voltage that it is rated for, which is what load calculations count; 0 where no load
 *     is stated
 * @param voltAmperes apparent power at the nominal voltage of the conductors that it is connected to, which is what it draws there
 * @param powerFactor 1 for a resistance
 */
public record Load(
    String part,
    Connection connection,
    Optional<Quantity> rated,
    double nameplateVoltAmperes,
    double voltAmperes,
    double powerFactor,
    Behavior behavior,
    LoadClass loadClass) {
  /** Whether the plan states it in watts, so that its volt-amperes rest on a power factor. */
  public boolean isInWatts() {
    return rated.filter(r -> r.unit().symbol().endsWith("W")).isPresent();
  }

  /** How the current follows the voltage. */
  public enum Behavior {
    /** Heaters, lamps with filaments. */
    IMPEDANCE, CURRENT,
    /** Electronics and motors, which take more current as the voltage falls. */
    POWER;

    /** What becomes of apparent power at so many times the rated voltage. */
    public double powerAt(double ratio) {
      return this == IMPEDANCE ? ratio * ratio : this == CURRENT ? ratio : 1;
    }
  }

  /** The two conductors between which a load is connected. */
  public sealed interface Connection {
    /** A hot of the branch, by its place from 0, to neutral. */
    record HotToNeutral(int hot) implements Connection {}

    /** Two hots of the branch. */
    record HotToHot(int hot, int otherHot) implements Connection {}

    /** Connected to no branch; a finding has been made. */
    record Unconnected() implements Connection {}
  }
}
