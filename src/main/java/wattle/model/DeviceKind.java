package wattle.model;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import wattle.quantity.Quantity;

/**
 * What a device is, from the parts library.
 *
 * @param name as plans write it, such as {@code split receptacle}
 * @param family what it does on a branch
 * @param needs the conductors it must be given
 * @param halves names of its halves; empty where it has none
 * @param loadClass absent for a device that draws nothing of its own
 * @param outlet whether it counts as an outlet
 * @param yokes mounting straps, for box fill
 * @param rating of its contacts; absent where it has none
 * @param shareOnLegs of a 120/240 V appliance, the part of its power that is on a leg and the neutral, from 0 to 1
 * @param motor whether a motor takes the most of what it draws
 * @param grid how a source stands to the voltage of the house; absent for what is no source
 * @param ways of a switch: 2 for single-pole, 3 for three-way, 4 for four-way; 0 otherwise
 */
public record DeviceKind(
    String name,
    Family family,
    Set<Need> needs,
    List<String> halves,
    Optional<LoadClass> loadClass,
    boolean outlet,
    int yokes,
    Optional<Quantity> rating,
    double shareOnLegs,
    double powerFactor,
    Load.Behavior behavior,
    int ways,
    Set<Protection> protections,
    boolean motor,
    Optional<Grid> grid) {
  public DeviceKind {
    needs = Set.copyOf(needs);
    halves = List.copyOf(halves);
    protections = Set.copyOf(protections);
  }

  /** The same kind, needing these conductors instead: an appliance made for either voltage. */
  public DeviceKind needing(Set<Need> others) {
    return new DeviceKind(
        name, family, others, halves, loadClass, outlet, yokes, rating, shareOnLegs, powerFactor, behavior, ways,
        protections, motor, grid);
  }

  /** Whether it is a switch that opens two hots at once, called double-pole. */
  public boolean opensTwoHots() {
    return family == Family.SWITCH && needs.contains(Need.TWO_HOTS);
  }

  /** Whether it works between all three legs of a three-phase supply. */
  public boolean isThreePhase() {
    return needs.contains(Need.THREE_HOTS);
  }

  /** How a source stands to the voltage of the house. */
  public enum Grid {
    /** Gives current where another holds the voltage, and stops where none does. */
    FOLLOWS,
    /** Holds the voltage. */
    FORMS,
    /** Follows where another holds the voltage, and holds it where none does. */
    EITHER
  }

  /** What a device does on a branch. */
  public enum Family {
    RECEPTACLE, SWITCH, LIGHT, APPLIANCE, JUNCTION,
    /** Feeds back into the panel. */
    SOURCE;

    private final String word = name().toLowerCase(Locale.ROOT);

    /** As rules write it. */
    public String word() {
      return word;
    }
  }

  /** A conductor that a device must be given. */
  public enum Need {
    /** One hot. */
    HOT,
    /** Two hots on different legs. */
    TWO_HOTS,
    /** Three hots, one on each leg of a three-phase supply; what needs these is also said to need {@link #TWO_HOTS}. */
    THREE_HOTS, NEUTRAL, GROUND
  }
}
