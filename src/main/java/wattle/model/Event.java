package wattle.model;

import java.util.List;
import java.util.Optional;
import wattle.finding.Span;
import wattle.quantity.Quantity;

/** One thing that is so in a trial. */
public sealed interface Event {
  Span span();

  /** A conductor of a branch is open on the run that ends at {@code at}, or at the panel where absent. */
  record ConductorOpen(Conductor conductor, String branch, Optional<String> at, Span span) implements Event {}

  /** A conductor of the run that feeds a panel is open. */
  record FeederOpen(Conductor conductor, String panel, Span span) implements Event {}

  record BreakerOpen(BreakerId breaker, Span span) implements Event {}

  record ServiceNeutralOpen(Span span) implements Event {}

  /** The main of a panel is off. */
  record MainOpen(String panel, Span span) implements Event {}

  /** The supplier's network behind a service gives nothing. */
  record SupplyLost(String service, Span span) implements Event {}

  /**
   * A transfer switch, or an interlock, stands otherwise than on the supply of its panel.
   *
   * @param source the device that feeds the panel now; absent for none
   * @param off whether neither side feeds it; where there is no source and it is not off, the supply does
   */
  record Transferred(String panel, Optional<String> source, boolean off, Span span) implements Event {}

  /** A source gives this power, in watts. */
  record Giving(String device, Quantity given, Span span) implements Event {}

  /** The joint of a conductor at a box has added resistance. */
  record JointLoose(Conductor conductor, String at, Quantity added, Span span) implements Event {}

  /** The ground is open at a device whose metal parts a hot leaks to. */
  record GroundLifted(String at, Optional<Quantity> leakage, Span span) implements Event {}

  /** A fault between two conductors; bolted where no resistance is said. */
  record Faulted(Conductor from, Conductor to, String at, Optional<Quantity> through, Span span) implements Event {}

  /** A branch is moved to other slots of its panel. */
  record Moved(String branch, List<Slot> slots, Span span) implements Event {}

  /** Hot and neutral are reversed at a device. */
  record Reversed(String at, Span span) implements Event {}

  /**
   * A device, or a part of one, draws this much.
   *
   * @param part such as {@code upper}; empty for the whole
   * @param drawn a current, a power, or a resistance
   * @param start whether it is a motor that does not turn yet
   */
  record Drawing(
      String device, String part, Quantity drawn, double powerFactor, Load.Behavior behavior, boolean start, Span span)
      implements
        Event {}

  /** All behind the feeder of a panel together draws this much, the same on each of its legs. */
  record PanelDrawing(String panel, Quantity drawn, double powerFactor, Load.Behavior behavior, Span span) implements Event {}

  /** A switch or a device is on or off. */
  record Turned(String device, boolean on, Span span) implements Event {}

  /** A conductor by what it does; {@code HOT_2} is the second hot of a branch. */
  enum Conductor {
    HOT, HOT_2, HOT_3, NEUTRAL, GROUND
  }
}
