package wattle.trials;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import wattle.model.BreakerId;
import wattle.model.Event;
import wattle.model.Leg;
import wattle.model.Load;
import wattle.model.Role;
import wattle.network.Complex;

/**
 * What is so in a trial, with every event found in the house.
 *
 * @param name of the trial; empty for the house as stated, or one given on the command line
 * @param openBreakers breakers that are off
 * @param openConductors conductors that are open on the run that ends at a point
 * @param joints ohms added to the joint of a conductor where its run ends
 * @param panelJoints the same for the feeders of panels
 * @param lifted metal parts without ground
 * @param legs other legs for the hots of branches that were moved
 * @param reversed devices at which hot and neutral are exchanged
 * @param off switches that are off
 * @param drawn what is drawing
 * @param panelDrawn what all behind panels draws together
 * @param supplies what feeds the house
 */
record Scenario(
    String name,
    Set<BreakerId> openBreakers,
    boolean serviceNeutralOpen,
    Set<Wire> openConductors,
    Map<Wire, Double> joints,
    Map<PanelWire, Double> panelJoints,
    List<Lifted> lifted,
    List<Fault> faults,
    Map<String, List<Optional<Leg>>> legs,
    Set<String> reversed,
    Set<String> off,
    List<Drawn> drawn,
    List<PanelDrawn> panelDrawn,
    Supplies supplies) {

  /** A conductor of the run of a branch that ends at a point. */
  record Wire(String branch, int point, Role role) {}

  /** A conductor of the feeder of a panel. */
  record PanelWire(String panel, Event.Conductor conductor) {}

  /**
   * Metal parts of a device or box, off the ground.
   *
   * @param at name of the device or box
   * @param leakage ohms from a hot to the metal; absent where nothing leaks
   */
  record Lifted(String at, String branch, int point, Optional<Double> leakage) {}

  /**
   * A fault between two conductors.
   *
   * @param branch absent for a fault in a panel
   * @param ohms 0 for a bolted one
   */
  record Fault(
      String at, Optional<String> branch, int point, Event.Conductor from, Event.Conductor to, double ohms) {}

  /** Added resistance of a joint that lets nothing through. */
  static final double OPEN = Double.POSITIVE_INFINITY;

  /**
   * What a part of a device takes.
   *
   * @param voltAmperes at nominal volts
   * @param starting whether it is a motor that does not turn yet
   */
  record Drawn(
      String device, String part, Load.Connection connection, Complex voltAmperes, double nominalVolts,
      Load.Behavior behavior, boolean starting) {}

  /**
   * What all behind a panel takes together, on each of its legs the same.
   *
   * @param voltAmperes of each leg at its nominal voltage to the neutral
   */
  record PanelDrawn(String panel, Complex voltAmperes, Load.Behavior behavior) {}

  /** Whether a neutral is open somewhere, so that loads on two legs stand in series. */
  boolean losesNeutral() {
    return serviceNeutralOpen || openConductors.stream().anyMatch(w -> w.role() instanceof Role.Neutral)
        || panelJoints.entrySet().stream().anyMatch(j -> j.getValue() == OPEN && j.getKey().conductor() == Event.Conductor.NEUTRAL);
  }

  /** Names of the motors that start. */
  Set<String> starting() {
    return drawn.stream().filter(Drawn::starting).map(Drawn::device).collect(Collectors.toSet());
  }

  Scenario {
    openBreakers = Set.copyOf(openBreakers);
    openConductors = Set.copyOf(openConductors);
    joints = Map.copyOf(joints);
    panelJoints = Map.copyOf(panelJoints);
    lifted = List.copyOf(lifted);
    faults = List.copyOf(faults);
    legs = Map.copyOf(legs);
    reversed = Set.copyOf(reversed);
    off = Set.copyOf(off);
    drawn = List.copyOf(drawn);
    panelDrawn = List.copyOf(panelDrawn);
  }

  double joint(String branch, int point, Role role) {
    return joints.getOrDefault(new Wire(branch, point, role), 0.0);
  }

  boolean isOpen(String branch, int point, Role role) {
    return openConductors.contains(new Wire(branch, point, role));
  }

  /** Names of the branches on which something is wrong or changed, each once, in no order but the same for the same events. */
  List<String> branches() {
    Set<String> names = new LinkedHashSet<>();
    faults.forEach(f -> f.branch().ifPresent(names::add));
    lifted.forEach(l -> names.add(l.branch()));
    Stream.of(joints.keySet(), openConductors).flatMap(Set::stream).map(Wire::branch).sorted().forEach(names::add);
    legs.keySet().stream().sorted().forEach(names::add);
    return List.copyOf(names);
  }

  /** The same with other loads. */
  Scenario drawing(List<Drawn> loads) {
    return new Scenario(
        name, openBreakers, serviceNeutralOpen, openConductors, joints, panelJoints, lifted, faults, legs, reversed, off,
        loads, panelDrawn, supplies);
  }

  /** The same fed otherwise. */
  Scenario fedBy(Supplies others) {
    return new Scenario(
        name, openBreakers, serviceNeutralOpen, openConductors, joints, panelJoints, lifted, faults, legs, reversed, off,
        drawn, panelDrawn, others);
  }

  /** The same with these breakers off. */
  Scenario open(Set<BreakerId> breakers) {
    return new Scenario(
        name, breakers, serviceNeutralOpen, openConductors, joints, panelJoints, lifted, faults, legs, reversed, off, drawn,
        panelDrawn, supplies);
  }

  /** Everything in order, and nothing drawing. */
  static Scenario quiet() {
    return new Scenario(
        "", Set.of(), false, Set.of(), Map.of(), Map.of(), List.of(), List.of(), Map.of(), Set.of(), Set.of(), List.of(),
        List.of(), Supplies.usual());
  }
}
