package wattle.worksheet;

import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.model.Leg;
import wattle.model.LoadClass;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * A load as load calculations see it.
 *
 * @param name element that makes it, such as {@code laundry.dryer}
 * @param voltAmperes rating of one, at nominal voltage
 * @param neutral whether it is connected between a leg and the neutral, in whole or in part
 * @param leg the leg that a load on the neutral is on; absent for one between legs, and where it is not known
 * @param motor whether a motor takes the most of it
 * @param added whether it is new in a dwelling that stands already
 * @param count how many alike; at least 1
 */
public record ConnectedLoad(
    String name, LoadClass loadClass, double voltAmperes, boolean neutral, Optional<Leg> leg, boolean motor, boolean added,
    int count) {
  public ConnectedLoad {
    if (count < 1 || !(voltAmperes >= 0)) {
      throw new IllegalArgumentException(name + ": " + count + " of " + voltAmperes + " VA");
    }
  }

  /** One load between legs, not a motor, there already. */
  public static ConnectedLoad of(String name, LoadClass loadClass, double voltAmperes) {
    return new ConnectedLoad(name, loadClass, voltAmperes, false, Optional.empty(), false, false, 1);
  }

  /** The same between a leg and the neutral. */
  public ConnectedLoad onNeutral() {
    return new ConnectedLoad(name, loadClass, voltAmperes, true, leg, motor, added, count);
  }

  /** The same between this leg and the neutral. */
  public ConnectedLoad on(Leg onLeg) {
    return new ConnectedLoad(name, loadClass, voltAmperes, true, Optional.of(onLeg), motor, added, count);
  }

  /** The same driven by a motor. */
  public ConnectedLoad asMotor() {
    return new ConnectedLoad(name, loadClass, voltAmperes, neutral, leg, true, added, count);
  }

  /** The same, new in a dwelling that stands already. */
  public ConnectedLoad asAdded() {
    return new ConnectedLoad(name, loadClass, voltAmperes, neutral, leg, motor, true, count);
  }

  /** So many times as many. */
  public ConnectedLoad times(int factor) {
    return new ConnectedLoad(name, loadClass, voltAmperes, neutral, leg, motor, added, count * factor);
  }

  /** The same with another rating. */
  ConnectedLoad rated(double otherVoltAmperes) {
    return new ConnectedLoad(name, loadClass, otherVoltAmperes, neutral, leg, motor, added, count);
  }

  /** All of them, in volt-amperes. */
  public double total() {
    return voltAmperes * count;
  }

  /** All of them as an input of others. */
  Derivation derivation() {
    Derivation one = Derivation.stated(name, "P", Quantity.of(voltAmperes, Units.VOLT_AMPERE));
    return count == 1
        ? one
        : Derivation.computed(
            count + " × " + name, "P", "n × P", total(), Units.VOLT_AMPERE,
            Derivation.stated("number", "n", Quantity.of(count, Units.ONE)), one);
  }
}
