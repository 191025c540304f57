package wattle.faults;

/** An impedance as a complex figure, both parts in Ω. */
public record Ohms(double resistance, double reactance) {
  static final Ohms NONE = new Ohms(0, 0);

  Ohms plus(Ohms other) {
    return new Ohms(resistance + other.resistance, reactance + other.reactance);
  }

  Ohms times(double factor) {
    return new Ohms(resistance * factor, reactance * factor);
  }

  /** Of two ways side by side. */
  Ohms beside(Ohms other) {
    double re = resistance + other.resistance;
    double im = reactance + other.reactance;
    double square = re * re + im * im;
    if (square == 0) {
      return NONE;
    }
    double productRe = resistance * other.resistance - reactance * other.reactance;
    double productIm = resistance * other.reactance + reactance * other.resistance;
    return new Ohms((productRe * re + productIm * im) / square, (productIm * re - productRe * im) / square);
  }

  public double magnitude() {
    return Math.hypot(resistance, reactance);
  }
}
