package wattle.quantity;

/**
 * What kind of thing a quantity measures, as exponents of the base dimensions of the SI that a house needs. Equal
 * exponents are the same dimension: watts and volt-amperes add.
 */
public record Dimension(int meter, int kilogram, int second, int ampere, int kelvin) {
  /** A plain number, and a ratio in per cent. */
  public static final Dimension NONE = new Dimension(0, 0, 0, 0, 0);
  public static final Dimension LENGTH = new Dimension(1, 0, 0, 0, 0);
  public static final Dimension AREA = new Dimension(2, 0, 0, 0, 0);
  public static final Dimension VOLUME = new Dimension(3, 0, 0, 0, 0);
  public static final Dimension TIME = new Dimension(0, 0, 1, 0, 0);
  public static final Dimension FREQUENCY = new Dimension(0, 0, -1, 0, 0);
  public static final Dimension CURRENT = new Dimension(0, 0, 0, 1, 0);
  public static final Dimension VOLTAGE = new Dimension(2, 1, -3, -1, 0);
  public static final Dimension POWER = VOLTAGE.times(CURRENT);
  public static final Dimension ENERGY = POWER.times(TIME);
  public static final Dimension RESISTANCE = VOLTAGE.per(CURRENT);
  public static final Dimension TEMPERATURE = new Dimension(0, 0, 0, 0, 1);
  /** What a breaker lets through while it opens, in A²s. */
  public static final Dimension LET_THROUGH = CURRENT.times(CURRENT).times(TIME);
  /** Electric charge, in A·s. */
  public static final Dimension CHARGE = CURRENT.times(TIME);
  public static final Dimension RESISTANCE_PER_LENGTH = RESISTANCE.per(LENGTH);
  /** Heat that a conductor gives off, in W/m. */
  public static final Dimension POWER_PER_LENGTH = POWER.per(LENGTH);
  /** Load of a floor, in VA/m². */
  public static final Dimension POWER_PER_AREA = POWER.per(AREA);

  public Dimension times(Dimension other) {
    return new Dimension(
        meter + other.meter, kilogram + other.kilogram, second + other.second, ampere + other.ampere,
        kelvin + other.kelvin);
  }

  public Dimension per(Dimension other) {
    return new Dimension(
        meter - other.meter, kilogram - other.kilogram, second - other.second, ampere - other.ampere,
        kelvin - other.kelvin);
  }

  /** In words a tradesperson would use, with an example: {@code a length such as 3 m or 10 ft}. */
  public String trade() {
    return TradeWords.of(this);
  }

  /** In base units, such as {@code kg·m²/s³}. */
  public String symbol() {
    StringBuilder text = new StringBuilder();
    int[] exponents = {kilogram, meter, second, ampere, kelvin};
    String[] symbols = {"kg", "m", "s", "A", "K"};
    for (int i = 0; i < exponents.length; i++) {
      if (exponents[i] != 0) {
        text.append(text.length() == 0 ? "" : "·").append(symbols[i]);
        if (exponents[i] != 1) {
          text.append('^').append(exponents[i]);
        }
      }
    }
    return text.toString();
  }
}
