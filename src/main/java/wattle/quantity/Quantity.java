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

  /**
   * The value in another unit of the same dimension.
   *
   * @throws IllegalArgumentException where the dimensions differ; whoever reads a plan has checked before
   */
  public double in(Unit other) {
    if (!isLike(other.dimension())) {
      throw new IllegalArgumentException(this + " is not measured in " + other.symbol());
    }
    return (si - other.offset()) / other.factor();
  }

  /** The same quantity, shown in another unit of its dimension. */
  public Quantity shownIn(Unit other) {
    if (!isLike(other.dimension())) {
      throw new IllegalArgumentException(this + " is not measured in " + other.symbol());
    }
    return new Quantity(si, other);
  }

  /** Whether it is of this dimension, so that it may be added to and compared with others of it. */
  public boolean isLike(Dimension other) {
    return unit.dimension() == other || unit.dimension().equals(other);
  }

  /**
   * The sum, in this one's unit. A temperature adds kelvins, whatever its scale.
   *
   * @throws IllegalArgumentException where the dimensions differ
   */
  public Quantity plus(Quantity other) {
    return new Quantity(si + other.difference(unit.dimension()), unit);
  }

  /**
   * The difference, in this one's unit. A temperature takes off kelvins, whatever its scale.
   *
   * @throws IllegalArgumentException where the dimensions differ
   */
  public Quantity minus(Quantity other) {
    return new Quantity(si - other.difference(unit.dimension()), unit);
  }

  private double difference(Dimension expected) {
    if (!isLike(expected)) {
      throw new IllegalArgumentException(this + " is not " + expected.trade());
    }
    return si - unit.offset();
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
    Dimension dimension = dimension().times(other.dimension());
    return new Quantity(si * other.si, Units.numerator(unit, other.unit, dimension).orElseGet(() -> Units.coherent(dimension)));
  }

  /** The quotient; a plain number as divisor keeps this one's unit. */
  public Quantity dividedBy(Quantity other) {
    return other.dimension().equals(Dimension.NONE)
        ? of(value() / other.si, unit)
        : new Quantity(si / other.si, Units.coherent(dimension().per(other.dimension())));
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
