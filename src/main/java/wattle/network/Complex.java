package wattle.network;

/** A phasor (root mean square), an impedance, an admittance or a complex power. */
public record Complex(double re, double im) {
  public static final Complex ZERO = new Complex(0, 0);

  public static Complex polar(double magnitude, double degrees) {
    double radians = Math.toRadians(degrees);
    // Exact where it can be, so that opposed legs cancel to nothing.
    double cosine = degrees % 180 == 0 ? Math.rint(Math.cos(radians)) : Math.cos(radians);
    double sine = degrees % 180 == 0 ? 0 : Math.sin(radians);
    return new Complex(magnitude * cosine, magnitude * sine);
  }

  public Complex plus(Complex other) {
    return new Complex(re + other.re, im + other.im);
  }

  public Complex minus(Complex other) {
    return new Complex(re - other.re, im - other.im);
  }

  public Complex times(Complex other) {
    return new Complex(re * other.re - im * other.im, re * other.im + im * other.re);
  }

  public Complex times(double factor) {
    return new Complex(re * factor, im * factor);
  }

  public Complex conjugate() {
    return new Complex(re, -im);
  }

  /** One over this; the caller knows that it is not zero. */
  public Complex inverse() {
    double square = re * re + im * im;
    return new Complex(re / square, -im / square);
  }

  public double magnitude() {
    return Math.hypot(re, im);
  }

  /** From −180 to 180. */
  public double degrees() {
    return Math.toDegrees(Math.atan2(im, re));
  }

  public boolean isFinite() {
    return Double.isFinite(re) && Double.isFinite(im);
  }
}
