package wattle.loads;

import java.util.List;
import java.util.function.UnaryOperator;
import wattle.model.Leg;
import wattle.model.SupplySystem;
import wattle.network.Complex;

/** The two conductors of the supply between which a load is connected. */
public enum Ends {
  A_N(Leg.A), B_N(Leg.B), C_N(Leg.C), A_B(Leg.A, Leg.B), B_C(Leg.B, Leg.C), C_A(Leg.C, Leg.A);

  private final List<Leg> legs;

  Ends(Leg... legs) {
    this.legs = List.of(legs);
  }

  /** From a leg to the neutral. */
  public static Ends toNeutral(Leg leg) {
    return values()[leg.ordinal()];
  }

  /** Between two legs that differ, in either order. */
  public static Ends between(Leg one, Leg other) {
    for (Ends ends : values()) {
      if (one != other && ends.legs.contains(one) && ends.legs.contains(other)) {
        return ends;
      }
    }
    throw new IllegalArgumentException("between " + one + " and " + other);
  }

  /** The leg, or the two legs. */
  public List<Leg> legs() {
    return legs;
  }

  /** Where it is when each leg is another one. */
  Ends moved(UnaryOperator<Leg> to) {
    return legs.size() == 1 ? toNeutral(to.apply(legs.get(0))) : between(to.apply(legs.get(0)), to.apply(legs.get(1)));
  }

  /** The voltage from the first of its legs to the other, or to the neutral. */
  Complex volts(SupplySystem system) {
    Complex first = voltsOf(system, legs.get(0));
    if (legs.size() == 1) {
      return first;
    }
    Complex across = first.minus(voltsOf(system, legs.get(1)));
    // Nominal voltages are rounded: 208 V and not 1.732 × 120 V.
    return across.times(system.legToLegVolts() / across.magnitude());
  }

  private static Complex voltsOf(SupplySystem system, Leg leg) {
    return Complex.polar(system.legToNeutralVolts(), system.degreesOf(leg));
  }
}
