package wattle.motors;

import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.library.Key;
import wattle.library.Library;
import wattle.model.Device;
import wattle.quantity.Quantity;

/**
 * Effective currents of arc welders, which heat a conductor as their primary current does that flows a part of the time
 * (NFPA 70 630.11(A)).
 */
public record WelderCurrents(Library library) {
  /** Figure of a nameplate: the effective current. */
  public static final String EFFECTIVE = "effective";
  /** Figure of a nameplate: the part of the time in which it welds. */
  public static final String DUTY = "duty-cycle";

  /**
   * @param primary rated primary current, in amperes
   * @return in amperes; absent where neither figure is stated, and where the code has no table of duty cycles
   */
  public Optional<Double> effective(Device device, double primary) {
    return Optional.ofNullable(device.facts().get(EFFECTIVE)).map(Quantity::si).or(() -> factor(device).map(factor -> factor * primary));
  }

  /** What its duty cycle makes of its current; absent where none is stated, and where the code has no table. */
  public Optional<Double> factor(Device device) {
    return Optional.ofNullable(device.facts().get(DUTY))
        .flatMap(
            duty -> library.table("welder-duty")
                .flatMap(t -> t.find("multiplier", "f", "factor", Key.notBelow(DUTY, Derivation.stated("duty cycle", "d", duty)))))
        .map(Derivation::si);
  }
}
