package wattle.model;

import java.util.Collection;
import java.util.List;

/**
 * The legs that a service or panel has, and the voltages between them and to the neutral. A panel need not have all legs of
 * the service: one on two legs of a three-phase wye has a three-wire supply of its own, {@link #on}.
 *
 * @param kind the arrangement
 * @param legToNeutralVolts nominal volts from each leg to the neutral
 * @param legToLegVolts nominal volts between two legs; equal to the former where the whole supply has one leg
 * @param legs those that are there, each once, in order
 */
public record SupplySystem(Kind kind, double legToNeutralVolts, double legToLegVolts, List<Leg> legs) {
  public SupplySystem {
    legs = List.copyOf(legs);
  }

  /** All legs of an arrangement. */
  public SupplySystem(Kind kind, double legToNeutralVolts, double legToLegVolts) {
    this(kind, legToNeutralVolts, legToLegVolts, List.of(Leg.values()).subList(0, kind.legs));
  }

  /** The arrangements of windings that a house may be fed from. */
  public enum Kind {
    /** Two opposed half windings with a common center: 120/240 V. */
    SPLIT_PHASE(2),
    /** Two legs of a three-phase wye: 120/208 V. */
    TWO_LEGS_OF_WYE(2),
    /** All three legs of a wye: 120/208 V three-phase. */
    THREE_PHASE_WYE(3),
    /** One leg and a neutral: 230 V. */
    SINGLE_PHASE(1),
    /** One leg and the neutral of a supply that has more. */
    ONE_LEG(1);

    private final int legs;

    Kind(int legs) {
      this.legs = legs;
    }
  }

  /** What this supply is to a panel that has only some of its legs; the same where it has all of them. */
  public SupplySystem on(Collection<Leg> some) {
    List<Leg> own = legs.stream().filter(some::contains).toList();
    if (own.isEmpty() || own.equals(legs)) {
      return this;
    }
    return new SupplySystem(own.size() == 1 ? Kind.ONE_LEG : Kind.TWO_LEGS_OF_WYE, legToNeutralVolts, legToLegVolts, own);
  }

  /** Angle in degrees of the voltage from leg to neutral, leg A at zero. */
  public double degreesOf(Leg leg) {
    return leg == Leg.A ? 0 : isWye() ? -120 * leg.ordinal() : 180;
  }

  /** Whether its legs are those of a three-phase wye, one, two or all of them. */
  public boolean isWye() {
    return legToLegVolts > 1.01 * legToNeutralVolts && legToLegVolts < 1.9 * legToNeutralVolts;
  }

  /** As written on a plan: {@code 120/240 V}. */
  public String text() {
    return legs.size() == 1
        ? plain(legToNeutralVolts) + " V"
        : plain(legToNeutralVolts) + "/" + plain(legToLegVolts) + " V";
  }

  /** The same with what a wye has: {@code 120/208 V, three-phase, four wires}. */
  public String words() {
    if (!isWye() || legs.size() == 1) {
      return text();
    }
    return text() + (legs.size() == 3 ? ", three-phase, four wires" : ", two legs of three-phase, three wires");
  }

  private static String plain(double volts) {
    return volts == Math.rint(volts) ? Long.toString((long) volts) : Double.toString(volts);
  }
}
