package wattle.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A figure with its unit.
 *
 * @param si the value in SI base units; a temperature in kelvins
 * @param unit the unit it was written in, kept for showing
 */
public record Quantity(double si, Unit unit) {
  public static Quantity of(double value, Unit unit) {
    return new Quantity(value * unit.factor() + unit.offset(), unit);
  }

  public Dimension dimension() {
    return unit.dimension();
  }

  /** The value in the unit it was written in. */
  public double value() {
    return in(unit);
  }

  /** The value in another unit of the same dimension. */
  public double in(Unit other) {
    if (!other.dimension().equals(dimension())) {
      throw new IllegalArgumentException(this + " is not measured in " + other.symbol());
    }
    return (si - other.offset()) / other.factor();
  }

  /** The sum, in this one's unit; the dimensions must agree. A temperature adds kelvins, whatever its scale. */
  public Quantity plus(Quantity other) {
    other.in(new Unit(unit.symbol(), dimension(), 1));
    return new Quantity(si + other.si - other.unit.offset(), unit);
  }

  /** The difference, in this one's unit; the dimensions must agree. */
  public Quantity minus(Quantity other) {
    other.in(new Unit(unit.symbol(), dimension(), 1));
    return new Quantity(si - (other.si - other.unit.offset()), unit);
  }

  public Quantity negate() {
    return of(-value(), unit);
  }

  /** The product; a plain number keeps the other's unit. */
  public Quantity times(Quantity other) {
    if (other.dimension().equals(Dimension.NONE)) {
      return of(value() * other.si, unit);
    }
    if (dimension().equals(Dimension.NONE)) {
      return of(other.value() * si, other.unit);
    }
    return derived(si * other.si, dimension().times(other.dimension()));
  }

  /** The quotient; a plain number as divisor keeps this one's unit. */
  public Quantity dividedBy(Quantity other) {
    return other.dimension().equals(Dimension.NONE)
        ? of(value() / other.si, unit)
        : derived(si / other.si, dimension().per(other.dimension()));
  }

  private static Quantity derived(double si, Dimension dimension) {
    if (dimension.equals(Dimension.NONE)) {
      return new Quantity(si, Units.ONE);
    }
    Unit unit =
        Units.of(dimension).stream()
            .filter(u -> u.factor() == 1 && u.offset() == 0)
            .findFirst()
            .orElseGet(() -> new Unit(dimension.symbol(), dimension, 1));
    return new Quantity(si, unit);
  }

  /** Up to four significant digits and the unit: {@code 15 A}, {@code 50 °C}, {@code 1.8 %}. */
  @Override
  public String toString() {
    String number = plain(value(), 4);
    return unit.symbol().isEmpty() ? number : number + " " + unit.symbol();
  }

  /** A number with at most so many significant digits, no trailing zeros and no exponent; whole digits are all kept. */
  public static String plain(double value, int digits) {
    if (!Double.isFinite(value)) {
      return Double.toString(value);
    }
    BigDecimal exact = BigDecimal.valueOf(value);
    int whole = exact.precision() - exact.scale();
    BigDecimal rounded = exact.round(new MathContext(Math.max(digits, whole), RoundingMode.HALF_UP));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
