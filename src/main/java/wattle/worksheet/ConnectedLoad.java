package wattle.worksheet;

import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.model.Leg;
import wattle.model.LoadClass;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * A load as load calculations see it.
 *
 * @param name element that makes it, such as {@code laundry.dryer}
 * @param voltAmperes rating of one, at nominal voltage
 * @param neutralShare part of it that is between a leg and the neutral, from 0 to 1
 * @param leg the leg that a load on the neutral is on; absent for one between legs, and where it is not known
 * @param motor whether a motor takes the most of it
 * @param added whether it is new, and not there already
 * @param count how many alike; at least 1
 * @param stated whether the plan states that power, and not a current or nothing
 */
public record ConnectedLoad(
    String name, LoadClass loadClass, double voltAmperes, double neutralShare, Optional<Leg> leg, boolean motor, boolean added,
    int count, boolean stated) {
  public ConnectedLoad {
    if (count < 1 || !(voltAmperes >= 0)) {
      throw new IllegalArgumentException(name + ": " + count + " of " + voltAmperes + " VA");
    }
  }

  /** One load between legs, not a motor, there already. */
  public static ConnectedLoad of(String name, LoadClass loadClass, double voltAmperes) {
    return new ConnectedLoad(name, loadClass, voltAmperes, 0, Optional.empty(), false, false, 1, true);
  }

  /** The same between a leg and the neutral. */
  public ConnectedLoad onNeutral() {
    return new ConnectedLoad(name, loadClass, voltAmperes, 1, leg, motor, added, count, stated);
  }

  /** The same between this leg and the neutral. */
  public ConnectedLoad on(Leg onLeg) {
    return new ConnectedLoad(name, loadClass, voltAmperes, 1, Optional.of(onLeg), motor, added, count, stated);
  }

  /** The same driven by a motor. */
  public ConnectedLoad asMotor() {
    return new ConnectedLoad(name, loadClass, voltAmperes, neutralShare, leg, true, added, count, stated);
  }

  /** The same, new in a dwelling that stands already. */
  public ConnectedLoad asAdded() {
    return new ConnectedLoad(name, loadClass, voltAmperes, neutralShare, leg, motor, true, count, stated);
  }

  /** Whether the neutral takes any of it. */
  public boolean neutral() {
    return neutralShare > 0;
  }

  /** The part of it that the neutral takes. */
  ConnectedLoad neutralPart() {
    return neutralShare == 1
        ? this
        : new ConnectedLoad(name, loadClass, voltAmperes * neutralShare, 1, leg, motor, added, count, false);
  }

  /** The same by another name. */
  public ConnectedLoad named(String otherName) {
    return new ConnectedLoad(otherName, loadClass, voltAmperes, neutralShare, leg, motor, added, count, stated);
  }

  /** So many times as many. */
  public ConnectedLoad times(int factor) {
    return new ConnectedLoad(name, loadClass, voltAmperes, neutralShare, leg, motor, added, count * factor, stated);
  }

  /** The same with another rating. */
  ConnectedLoad rated(double otherVoltAmperes) {
    return new ConnectedLoad(name, loadClass, otherVoltAmperes, neutralShare, leg, motor, added, count, false);
  }

  /** All of them, in volt-amperes. */
  public double total() {
    return voltAmperes * count;
  }

  /** All of them as an input of others. */
  Derivation derivation() {
    Quantity rated = Quantity.of(voltAmperes, Units.VOLT_AMPERE);
    Derivation one = stated
        ? Derivation.stated(name, "P", rated)
        : Derivation.computed(name, "P", "", new Value.Amount(rated), List.of())
            .remarking("What the code counts: its current at its voltage, or a fixed load for each outlet.");
    return count == 1
        ? one
        : Derivation.computed(
            count + " × " + name, "P", "n × P", total(), Units.VOLT_AMPERE,
            Derivation.counted("number", "n", count), one);
  }
}
