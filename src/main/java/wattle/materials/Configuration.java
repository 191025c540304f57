package wattle.materials;

import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import wattle.model.DeviceKind;
import wattle.model.SupplySystem;

/**
 * Configurations of receptacles and plugs by NEMA WD 6, as far as dwellings have straight blades: by the conductors that they bring and
 * their rating. A designation ends in R for the receptacle and P for the plug.
 */
final class Configuration {
  private static final Map<String, NavigableMap<Integer, String>> KNOWN = Map.of(
      "hot neutral", new TreeMap<>(Map.of(15, "1-15")),
      "hot neutral ground", new TreeMap<>(Map.of(15, "5-15", 20, "5-20", 30, "5-30", 50, "5-50")),
      "hots ground", new TreeMap<>(Map.of(15, "6-15", 20, "6-20", 30, "6-30", 50, "6-50")),
      "hots neutral", new TreeMap<>(Map.of(20, "10-20", 30, "10-30", 50, "10-50")),
      "hots neutral ground", new TreeMap<>(Map.of(20, "14-20", 30, "14-30", 50, "14-50", 60, "14-60")),
      "three hots ground", new TreeMap<>(Map.of(15, "15-15", 20, "15-20", 30, "15-30", 50, "15-50", 60, "15-60")));

  /** North American supplies have about so many volts to the neutral. */
  private static final double LEAST_VOLTS = 110;
  private static final double MOST_VOLTS = 130;

  private Configuration() {}

  /**
   * The designation without its ending, such as {@code 14-50}; absent on supplies that have other standards, and where none is made.
   *
   * @param grounded whether the circuit brings an equipment ground
   * @param amperes rating of the receptacle; the next larger that is made is taken
   */
  static Optional<String> of(DeviceKind kind, boolean grounded, double amperes, SupplySystem system) {
    if (system.legToNeutralVolts() < LEAST_VOLTS || system.legToNeutralVolts() > MOST_VOLTS) {
      return Optional.empty();
    }
    boolean neutral = kind.needs().contains(DeviceKind.Need.NEUTRAL);
    String hots = kind.isThreePhase() ? "three hots" : kind.needs().contains(DeviceKind.Need.TWO_HOTS) ? "hots" : "hot";
    NavigableMap<Integer, String> made = KNOWN.get(hots + (neutral ? " neutral" : "") + (grounded ? " ground" : ""));
    return Optional.ofNullable(made).map(m -> m.ceilingEntry((int) Math.ceil(amperes - 1e-9))).map(Map.Entry::getValue);
  }
}
