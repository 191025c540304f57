package wattle.model;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.quantity.Quantity;

/**
 * The point where the supply enters.
 *
 * @param rating of the service in amperes; absent where not said
 * @param source absent where not said; then no fault current can be worked out
 * @param facts further facts by name, as written
 * @param flags what is said to be so, or not to be so, such as {@code surge-protection}
 */
public record Service(
    String name,
    Optional<String> label,
    SupplySystem system,
    Optional<Quantity> rating,
    Optional<Source> source,
    Optional<Stretch> run,
    List<Electrode> electrodes,
    Map<String, Quantity> facts,
    Map<String, Boolean> flags,
    Status status,
    Origin origin) {
  public Service {
    electrodes = List.copyOf(electrodes);
    facts = Map.copyOf(facts);
    flags = Map.copyOf(flags);
  }

  /** Frequency of the supply as stated, or else as usual: 220 V to 240 V to the neutral are of 50 Hz, 120 V and 277 V of 60 Hz. */
  public double hertz() {
    double volts = system.legToNeutralVolts();
    return Optional.ofNullable(facts.get("frequency")).map(Quantity::si).orElse(volts > 180 && volts < 260 ? 50.0 : 60.0);
  }
}
