package wattle.model;

import java.util.List;

/**
 * How the supply's legs stand to each other and to the neutral.
 *
 * @param kind the arrangement
 * @param legToNeutralVolts nominal volts from each leg to the neutral
 * @param legToLegVolts nominal volts between two legs; equal to the former where there is one leg
 */
public record SupplySystem(Kind kind, double legToNeutralVolts, double legToLegVolts) {
  /** The arrangements of windings that a house may be fed from. */
  public enum Kind {
    /** Two opposed half windings with a common centre: 120/240 V. */
    SPLIT_PHASE(2),
    /** Two legs of a three-phase wye: 120/208 V. */
    TWO_LEGS_OF_WYE(2),
    /** All three legs of a wye: 120/208 V three-phase. */
    THREE_PHASE_WYE(3),
    /** One leg and a neutral: 230 V. */
    SINGLE_PHASE(1);

    private final int legs;

    Kind(int legs) {
      this.legs = legs;
    }
  }

  /** The legs of this supply, in order. */
  public List<Leg> legs() {
    return List.of(Leg.values()).subList(0, kind.legs);
  }

  /** Angle in degrees of the voltage from leg to neutral, leg A at zero. */
  public double degreesOf(Leg leg) {
    return switch (kind) {
      case SPLIT_PHASE -> leg == Leg.A ? 0 : 180;
      case SINGLE_PHASE -> 0;
      case TWO_LEGS_OF_WYE, THREE_PHASE_WYE -> -120 * leg.ordinal();
    };
  }

  /** As written on a plan: {@code 120/240 V}. */
  public String text() {
    return kind == Kind.SINGLE_PHASE
        ? plain(legToNeutralVolts) + " V"
        : plain(legToNeutralVolts) + "/" + plain(legToLegVolts) + " V";
  }

  private static String plain(double volts) {
    return volts == Math.rint(volts) ? Long.toString((long) volts) : Double.toString(volts);
  }
}
