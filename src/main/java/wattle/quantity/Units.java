package wattle.quantity;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The units that plans may write. Factors of customary units are exact by the international yard of 1959. */
public final class Units {
  public static final Unit ONE = new Unit("", Dimension.NONE, 1);
  public static final Unit PERCENT = new Unit("%", Dimension.NONE, 0.01);
  public static final Unit AMPERE = new Unit("A", Dimension.CURRENT, 1);
  public static final Unit KILOAMPERE = new Unit("kA", Dimension.CURRENT, 1e3);
  public static final Unit VOLT = new Unit("V", Dimension.VOLTAGE, 1);
  public static final Unit WATT = new Unit("W", Dimension.POWER, 1);
  public static final Unit KILOWATT = new Unit("kW", Dimension.POWER, 1e3);
  public static final Unit VOLT_AMPERE = new Unit("VA", Dimension.POWER, 1);
  public static final Unit KILOVOLT_AMPERE = new Unit("kVA", Dimension.POWER, 1e3);
  /** Mechanical: 550 foot-pounds of force a second. */
  public static final Unit HORSEPOWER = new Unit("hp", Dimension.POWER, 745.69987158227022);
  public static final Unit OHM = new Unit("Ω", Dimension.RESISTANCE, 1);
  public static final Unit METER = new Unit("m", Dimension.LENGTH, 1);
  public static final Unit MILLIMETER = new Unit("mm", Dimension.LENGTH, 1e-3);
  public static final Unit FOOT = new Unit("ft", Dimension.LENGTH, 0.3048);
  public static final Unit INCH = new Unit("in", Dimension.LENGTH, 0.0254);
  public static final Unit SQUARE_METER = new Unit("m²", Dimension.AREA, 1);
  public static final Unit SQUARE_MILLIMETER = new Unit("mm²", Dimension.AREA, 1e-6);
  public static final Unit SQUARE_FOOT = new Unit("ft²", Dimension.AREA, 0.3048 * 0.3048);
  public static final Unit CUBIC_INCH = new Unit("in³", Dimension.VOLUME, 0.0254 * 0.0254 * 0.0254);
  public static final Unit CUBIC_CENTIMETER = new Unit("cm³", Dimension.VOLUME, 1e-6);
  public static final Unit KELVIN = new Unit("K", Dimension.TEMPERATURE, 1);
  public static final Unit CELSIUS = new Unit("°C", Dimension.TEMPERATURE, 1, 273.15);
  public static final Unit FAHRENHEIT = new Unit("°F", Dimension.TEMPERATURE, 5 / 9.0, 459.67 * 5 / 9);
  public static final Unit SECOND = new Unit("s", Dimension.TIME, 1);
  public static final Unit AMPERE_SQUARED_SECOND = new Unit("A²s", Dimension.LET_THROUGH, 1);
  public static final Unit OHM_PER_KILOMETER = new Unit("Ω/km", Dimension.RESISTANCE_PER_LENGTH, 1e-3);
  public static final Unit WATT_PER_METER = new Unit("W/m", Dimension.POWER_PER_LENGTH, 1);

  private static final Map<String, Unit> BY_SPELLING = new LinkedHashMap<>();
  private static final Map<Dimension, List<Unit>> BY_DIMENSION = new HashMap<>();

  static {
    add(AMPERE, "A");
    add(new Unit("mA", Dimension.CURRENT, 1e-3), "mA");
    add(KILOAMPERE, "kA");
    add(VOLT, "V");
    add(new Unit("mV", Dimension.VOLTAGE, 1e-3), "mV");
    add(new Unit("kV", Dimension.VOLTAGE, 1e3), "kV");
    add(WATT, "W");
    add(KILOWATT, "kW");
    add(VOLT_AMPERE, "VA");
    add(KILOVOLT_AMPERE, "kVA");
    add(HORSEPOWER, "hp");
    add(new Unit("Wh", Dimension.ENERGY, 3600), "Wh");
    add(new Unit("kWh", Dimension.ENERGY, 3.6e6), "kWh");
    add(OHM, "Ω", "\u2126", "ohm");
    add(new Unit("mΩ", Dimension.RESISTANCE, 1e-3), "mΩ", "m\u2126", "mohm");
    add(new Unit("kΩ", Dimension.RESISTANCE, 1e3), "kΩ", "k\u2126", "kohm");
    add(METER, "m");
    add(FOOT, "ft");
    add(INCH, "in");
    add(new Unit("cm", Dimension.LENGTH, 1e-2), "cm");
    add(MILLIMETER, "mm");
    add(new Unit("km", Dimension.LENGTH, 1e3), "km");
    add(new Unit("kft", Dimension.LENGTH, 304.8), "kft");
    add(SQUARE_METER, "m²", "m2");
    add(SQUARE_FOOT, "ft²", "ft2");
    add(SQUARE_MILLIMETER, "mm²", "mm2");
    add(new Unit("cm²", Dimension.AREA, 1e-4), "cm²", "cm2");
    add(new Unit("in²", Dimension.AREA, 0.0254 * 0.0254), "in²", "in2");
    // A circular mil is the area of a circle one mil across; trade sizes above 4/0 are thousands of them.
    add(new Unit("kcmil", Dimension.AREA, 1000 * Math.PI / 4 * 0.0254e-3 * 0.0254e-3), "kcmil");
    add(CUBIC_INCH, "in³", "in3");
    add(CUBIC_CENTIMETER, "cm³", "cm3");
    add(new Unit("mL", Dimension.VOLUME, 1e-6), "mL");
    add(CELSIUS, "°C", "degC");
    add(FAHRENHEIT, "°F", "degF");
    add(KELVIN, "K");
    add(PERCENT, "%");
    add(SECOND, "s");
    add(new Unit("ms", Dimension.TIME, 1e-3), "ms");
    add(new Unit("min", Dimension.TIME, 60), "min");
    add(new Unit("h", Dimension.TIME, 3600), "h");
    add(new Unit("Hz", Dimension.FREQUENCY, 1), "Hz");
    add(AMPERE_SQUARED_SECOND, "A²s", "A2s");
  }

  private Units() {}

  private static void add(Unit unit, String... spellings) {
    for (String spelling : spellings) {
      BY_SPELLING.put(spelling, unit);
    }
    BY_DIMENSION.computeIfAbsent(unit.dimension(), d -> new ArrayList<>()).add(unit);
  }

  /** The unit with this spelling; {@code VA/m2} is made of two. */
  public static Optional<Unit> find(String spelling) {
    Unit unit = BY_SPELLING.get(spelling);
    if (unit != null) {
      return Optional.of(unit);
    }
    int slash = spelling.indexOf('/');
    if (slash <= 0) {
      return Optional.empty();
    }
    Unit over = BY_SPELLING.get(spelling.substring(0, slash).strip());
    Unit under = BY_SPELLING.get(spelling.substring(slash + 1).strip());
    return over == null || under == null || over.offset() != 0 || under.offset() != 0
        ? Optional.empty()
        : Optional.of(
            new Unit(
                over.symbol() + "/" + under.symbol(),
                over.dimension().per(under.dimension()),
                over.factor() / under.factor()));
  }

  /** The units of a dimension, the usual one first. */
  public static List<Unit> of(Dimension dimension) {
    return Collections.unmodifiableList(BY_DIMENSION.getOrDefault(dimension, List.of()));
  }

  /** Every spelling of a single unit. */
  public static Set<String> spellings() {
    return Collections.unmodifiableSet(BY_SPELLING.keySet());
  }

  /** The unit of a dimension whose factor is 1, such as W for a power; one in base units where no unit has a name. */
  static Unit coherent(Dimension dimension) {
    if (dimension.equals(Dimension.NONE)) {
      return ONE;
    }
    for (Unit unit : BY_DIMENSION.getOrDefault(dimension, List.of())) {
      if (unit.factor() == 1 && unit.offset() == 0) {
        return unit;
      }
    }
    return new Unit(dimension.symbol(), dimension, 1);
  }

  /** The unit that is left of a product where one unit divides the other away: of VA/m² and m², or ft², it is VA. */
  static Optional<Unit> numerator(Unit one, Unit other, Dimension product) {
    return over(one, product).or(() -> over(other, product));
  }

  private static Optional<Unit> over(Unit unit, Dimension product) {
    int slash = unit.symbol().indexOf('/');
    return slash <= 0
        ? Optional.empty()
        : Optional.ofNullable(BY_SPELLING.get(unit.symbol().substring(0, slash))).filter(u -> u.dimension().equals(product));
  }
}
