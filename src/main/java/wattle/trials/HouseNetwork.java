package wattle.trials;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.model.Leg;
import wattle.model.Load;
import wattle.model.Role;
import wattle.network.Complex;
import wattle.network.Network;

/**
 * A house in a scenario, as a network, and where its things are in it.
 *
 * @param conductors of every run, the service's first
 * @param outlets every part of every device that is connected
 * @param loads what draws, with its element
 * @param metals metal parts of devices and boxes that touch may reach
 * @param faults elements of the faults of the scenario
 * @param windings sources, by the box that they stand in
 * @param feedings sources of the house that are on
 * @param leakages from hots to metal that is off its ground
 * @param panelLoads what all behind panels draws together, an element for each leg
 * @param entrances where the runs of services end, by service
 */
record HouseNetwork(
    Network network,
    List<Conductor> conductors,
    List<Outlet> outlets,
    List<Drawing> loads,
    List<Metal> metals,
    List<Faulting> faults,
    Map<String, PanelBox> panels,
    Map<Integer, Winding> windings,
    List<Feeding> feedings,
    List<Leakage> leakages,
    List<PanelLoad> panelLoads,
    Map<String, PanelBox> entrances) {
  /**
   * What feeds a service, in a box of its own.
   *
   * @param legs their terminals, in the order of the supply
   * @param emf what is driven from the star point to each
   */
  record Winding(List<Leg> names, int[] legs, int star, Complex[] emf) {}

  /**
   * A source of the house that is on.
   *
   * @param holds whether it holds the voltage, and so is a source of the network; else it is an element
   * @param index of the source or of the element
   */
  record Feeding(String device, Outlet outlet, boolean holds, int index) {}

  /** A panel's box: its legs' terminals in the order of the panel, its neutral and its ground. */
  record PanelBox(int box, int[] legs, int neutral, int ground) {}

  /**
   * A conductor of a run.
   *
   * @param run such as {@code P to kitchen.c1}
   * @param branch absent for a feeder or the service run
   * @param panel the panel that a feeder or the service run ends in, where there is no branch
   * @param point of the branch that it ends at
   * @param name such as {@code hot A}
   * @param neutral whether it is one
   * @param joint ohms added to its joint
   */
  record Conductor(
      String run, Optional<String> branch, Optional<String> panel, int point, Optional<Role> role, String name,
      Kind kind, WireImpedance impedance, double joint, boolean open, int box, int local) {}

  /** What a conductor does, in kinds. */
  enum Kind {
    HOT, NEUTRAL, GROUND
  }

  /**
   * Where a part of a device is connected.
   *
   * @param legs of the panel that its hots come from, in this scenario
   * @param nominalVolts between its two conductors
   */
  record Outlet(
      String device, String part, Load.Connection connection, String branch, int point, int box, int a, int b,
      List<Leg> legs, double nominalVolts) {
    /** Device and part: {@code kitchen.c1.upper}. */
    String name() {
      return part.isEmpty() ? device : device + "." + part;
    }
  }

  /**
   * What all behind a panel draws on one leg.
   *
   * @param through the panels whose feeders it comes through, its own first
   */
  record PanelLoad(String panel, Leg leg, int element, List<String> through) {}

  /** A load that draws. */
  record Drawing(Outlet outlet, int element, Scenario.Drawn drawn) {}

  /**
   * Metal that a person may touch.
   *
   * @param lifted whether its ground is open
   */
  record Metal(String name, String branch, boolean lifted, int box, int terminal) {}

  /** A leakage; its element leads from the metal to the hot. */
  record Leakage(String at, int element) {}

  /** A fault. */
  record Faulting(Scenario.Fault fault, int element) {}

  /** Power of a load at nominal voltage, from volt-amperes and power factor. */
  static Complex power(double voltAmperes, double powerFactor) {
    return new Complex(voltAmperes * powerFactor, voltAmperes * Math.sqrt(Math.max(0, 1 - powerFactor * powerFactor)));
  }
}
