package wattle.network;

/** Writes a source into the equations of its box: each leg's current is the admittance matrix times what drives it. */
record SourceStamp(Network.VoltageSource source) {
  void into(Elimination equations, boolean driving) {
    int[] legs = source.legs();
    for (int i = 0; i < legs.length; i++) {
      for (int k = 0; k < legs.length; k++) {
        Complex y = source.admittance()[i][k];
        equations.add(source.box(), legs[i], legs[k], y.re(), y.im());
        equations.add(source.box(), legs[i], source.star(), -y.re(), -y.im());
        equations.add(source.box(), source.star(), legs[k], -y.re(), -y.im());
        equations.add(source.box(), source.star(), source.star(), y.re(), y.im());
        if (driving) {
          Complex current = y.times(source.emf()[k]);
          equations.inject(legs[i], current.re(), current.im());
          equations.inject(source.star(), -current.re(), -current.im());
        }
      }
    }
  }

  /** Current that a leg gives, with these volts at all terminals. */
  static Complex current(Network.VoltageSource source, int leg, double[] volts) {
    Complex sum = Complex.ZERO;
    int star = source.star();
    for (int k = 0; k < source.legs().length; k++) {
      int t = source.legs()[k];
      Complex drop = new Complex(volts[2 * t] - volts[2 * star], volts[2 * t + 1] - volts[2 * star + 1]);
      sum = sum.plus(source.admittance()[leg][k].times(source.emf()[k].minus(drop)));
    }
    return sum;
  }
}
