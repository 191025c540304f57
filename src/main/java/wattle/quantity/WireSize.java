package wattle.quantity;

import java.util.Optional;

/**
 * Size of a conductor, as the trade writes it.
 *
 * @param kind which system
 * @param number gauge for AWG, with 0 for 1/0 and -3 for 4/0; thousands of circular mils; or square millimeters
 */
public record WireSize(Kind kind, double number) implements Comparable<WireSize> {
  /** The systems in use. */
  public enum Kind {
    AWG, KCMIL, SQUARE_MILLIMETERS
  }

  public static WireSize awg(int gauge) {
    return new WireSize(Kind.AWG, gauge);
  }

  /**
   * Reads {@code 14}, {@code 14 AWG}, {@code 2/0}, {@code 250 kcmil}, {@code 2.5 mm2}. A plain number from 250 up is
   * kcmil, as tables print it. Empty for what is no size of wire.
   */
  public static Optional<WireSize> parse(String text) {
    String plain = text.strip();
    if (plain.endsWith("kcmil")) {
      return positive(Kind.KCMIL, number(plain, 5));
    }
    if (plain.endsWith("mm2") || plain.endsWith("mm²")) {
      return positive(Kind.SQUARE_MILLIMETERS, number(plain, 3));
    }
    boolean gauge = plain.endsWith("AWG");
    if (gauge) {
      plain = plain.substring(0, plain.length() - 3).strip();
    }
    if (plain.endsWith("/0")) {
      double aught = number(plain, 2);
      return aught == 1 || aught == 2 || aught == 3 || aught == 4
          ? Optional.of(awg(1 - (int) aught))
          : Optional.empty();
    }
    double number = number(plain, 0);
    if (number >= 250 && !gauge) {
      return positive(Kind.KCMIL, number);
    }
    return number == Math.rint(number) && number >= 1 && number <= 40
        ? Optional.of(awg((int) number))
        : Optional.empty();
  }

  private static Optional<WireSize> positive(Kind kind, double number) {
    return number > 0 && number <= 2000 ? Optional.of(new WireSize(kind, number)) : Optional.empty();
  }

  /** The number before the last letters, or NaN; stricter than Java, which takes {@code 14f} and {@code 0x1p3}. */
  private static double number(String text, int letters) {
    String digits = text.substring(0, text.length() - letters).strip();
    if (digits.isEmpty() || digits.length() > 12) {
      return Double.NaN;
    }
    boolean point = false;
    for (int i = 0; i < digits.length(); i++) {
      char c = digits.charAt(i);
      if (c == '.' && !point && i > 0 && i < digits.length() - 1) {
        point = true;
      } else if (c < '0' || c > '9') {
        return Double.NaN;
      }
    }
    return Double.parseDouble(digits);
  }

  /** Diameter of a solid conductor of this size; AWG by ASTM B258, 0.127 mm × 92^((36 − n)/39). */
  public double diameterMeters() {
    return kind == Kind.AWG ? 0.127e-3 * Math.pow(92, (36 - number) / 39) : 2 * Math.sqrt(areaSquareMeters() / Math.PI);
  }

  /** A thousand circular mils, in m². */
  public static final double SQUARE_METERS_OF_KCMIL = 1000 * Math.PI / 4 * 0.0254e-3 * 0.0254e-3;

  /** Cross-section of the metal. */
  public double areaSquareMeters() {
    return switch (kind) {
      case AWG -> Math.PI / 4 * diameterMeters() * diameterMeters();
      case KCMIL -> number * SQUARE_METERS_OF_KCMIL;
      case SQUARE_MILLIMETERS -> number * 1e-6;
    };
  }

  public double areaSquareMillimeters() {
    return areaSquareMeters() * 1e6;
  }

  /** As tables key it: {@code 14}, {@code 2/0}, {@code 250}, {@code 2.5 mm²}. */
  public String key() {
    return switch (kind) {
      case AWG -> number > 0 ? Integer.toString((int) number) : (int) (1 - number) + "/0";
      case KCMIL -> Quantity.plain(number, 6);
      case SQUARE_MILLIMETERS -> Quantity.plain(number, 6) + " mm²";
    };
  }

  /** By cross-section, thinnest first. */
  @Override
  public int compareTo(WireSize other) {
    if (kind == other.kind) {
      return kind == Kind.AWG ? Double.compare(other.number, number) : Double.compare(number, other.number);
    }
    return Double.compare(areaSquareMeters(), other.areaSquareMeters());
  }

  /** As the trade writes it: {@code 14 AWG}, {@code 2/0 AWG}, {@code 250 kcmil}, {@code 2.5 mm²}. */
  @Override
  public String toString() {
    return switch (kind) {
      case AWG -> key() + " AWG";
      case KCMIL -> key() + " kcmil";
      case SQUARE_MILLIMETERS -> key();
    };
  }
}
