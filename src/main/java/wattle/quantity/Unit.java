package wattle.quantity;

/**
 * A unit: a value in it, times {@code factor} plus {@code offset}, is the value in SI base units.
 *
 * @param symbol as output shows it, such as {@code mm²}
 * @param offset other than zero only for temperatures on a scale: kelvins at the scale's zero
 */
public record Unit(String symbol, Dimension dimension, double factor, double offset) {
  public Unit(String symbol, Dimension dimension, double factor) {
    this(symbol, dimension, factor, 0);
  }
}
