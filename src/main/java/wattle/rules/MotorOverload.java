package wattle.rules;

import java.util.Optional;
import wattle.model.Device;
import wattle.model.Load;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** What guards a motor against overload (NFPA 70 430.32): by the current on its nameplate, not by that of the tables (430.6(A)(2)). */
final class MotorOverload {
  /** Marked service factor from which a relay may be set higher. */
  private static final double MARKED_SERVICE_FACTOR = 1.15;

  /** Marked temperature rise in °C up to which it may as well. */
  private static final double MARKED_RISE = 40;

  private MotorOverload() {}

  /**
   * The most that its relay is set to.
   *
   * @param limit of its current
   * @param marked the limit of a motor whose nameplate shows a service factor of 1.15 or more
   */
  static Optional<Quantity> most(Facts facts, Device device, String limit, String marked) {
    boolean higher = Optional.ofNullable(device.facts().get("service-factor")).filter(f -> f.si() >= MARKED_SERVICE_FACTOR).isPresent()
        || Optional.ofNullable(device.facts().get("temperature-rise")).filter(t -> t.in(Units.CELSIUS) <= MARKED_RISE).isPresent();
    return nameplate(device).flatMap(
        i -> facts.library().limit(higher ? marked : limit)
            .map(l -> Quantity.of(Math.round(1000 * l.value().si() * i.si()) / 1000.0, Units.AMPERE)));
  }

  /** The current on its nameplate, where the plan states it. */
  private static Optional<Quantity> nameplate(Device device) {
    return device.loads().stream().map(Load::rated).flatMap(Optional::stream).filter(q -> q.dimension().equals(Dimension.CURRENT))
        .findFirst().or(() -> Optional.ofNullable(device.facts().get("rated")));
  }

  /** Whether it has a relay or a protector within; not known where the plan does not say. */
  static Boolean guarded(Device device) {
    if (!CircuitLoad.isMotor(device)) {
      return null;
    }
    if (device.facts().containsKey("overload") || device.traits().contains("thermally-protected")) {
      return Boolean.TRUE;
    }
    return device.traits().contains("no thermally-protected") ? Boolean.FALSE : null;
  }
}
