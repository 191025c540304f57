package wattle.quantity;

import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * In which units lengths, areas, volumes, temperatures and what is measured for each length or area are shown to people. Sizes
 * of wire stay as the trade has them, and what a plan states is shown as it states it; this is for what was computed.
 */
public enum UnitSystem {
  /** As the computations have it: meters, and what the tables of a code are in. */
  METRIC,
  /** Feet, inches and degrees Fahrenheit. */
  CUSTOMARY;

  private static final Map<String, Unit> CUSTOMARY_FOR = Map.of(
      Units.METER.symbol(), Units.FOOT, Units.MILLIMETER.symbol(), Units.INCH, Units.SQUARE_METER.symbol(), Units.SQUARE_FOOT,
      Units.CUBIC_CENTIMETER.symbol(), Units.CUBIC_INCH, Units.CELSIUS.symbol(), Units.FAHRENHEIT, Units.WATT_PER_METER.symbol(),
      Units.find("W/ft").orElseThrow(), Units.OHM_PER_KILOMETER.symbol(), Units.find("Ω/kft").orElseThrow(), "VA/m²",
      Units.find("VA/ft2").orElseThrow());

  private static final Set<String> CUSTOMARY_SYMBOLS = CUSTOMARY_FOR.values().stream().map(Unit::symbol)
      .collect(Collectors.toUnmodifiableSet());

  /** That of most of the quantities, as they are written; metric where as many are in the one as in the other. */
  public static UnitSystem ofMost(Collection<Quantity> written) {
    int balance = 0;
    for (Quantity quantity : written) {
      String symbol = quantity.unit().symbol();
      if (CUSTOMARY_SYMBOLS.contains(symbol)) {
        balance++;
      } else if (CUSTOMARY_FOR.containsKey(symbol) || symbol.equals("cm")) {
        balance--;
      }
    }
    return balance > 0 ? CUSTOMARY : METRIC;
  }

  /** The unit in which what is in that unit is shown. */
  public Unit shown(Unit unit) {
    return this == METRIC ? unit : Optional.ofNullable(CUSTOMARY_FOR.get(unit.symbol())).orElse(unit);
  }

  /**
   * As words beside a figure tell what codes and the trade know by one unit: {@code 75 °C}, to readers of others {@code 75 °C
   * (167 °F)}.
   */
  public String known(Quantity quantity) {
    Quantity read = shown(quantity);
    return read.equals(quantity) ? quantity.toString() : quantity + " (" + read + ")";
  }

  /** The same quantity in the unit in which it is shown. */
  public Quantity shown(Quantity quantity) {
    Unit unit = shown(quantity.unit());
    return unit.equals(quantity.unit()) ? quantity : Quantity.of(quantity.in(unit), unit);
  }
}
