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

  public double magnitude() {
    return Math.hypot(resistance, reactance);
  }
}
