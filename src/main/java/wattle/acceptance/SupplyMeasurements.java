package wattle.acceptance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.library.Library;
import wattle.model.Breaker;
import wattle.model.Electrode;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Service;
import wattle.model.Status;
import wattle.model.Stretch;
import wattle.model.SupplySystem;
import wattle.model.Wire;

/**
 * What is measured of services, feeders and panels: the insulation of each conductor, the loops of neutral and ground, bonds where there
 * must be one and none where there must be none, voltages at the bus, the sequence of three phases, and the torque of the panel's
 * terminals. The order is that of IEC 60364-6 6.4.3: continuity and bonding, insulation, then live.
 */
final class SupplyMeasurements {
  /** A bar of a panel that somebody may open; the line side of a service stays live. */
  private static final String NEUTRAL_BAR = "neutral bar";
  private static final String GROUND_BAR = "ground bar";

  private final House house;
  private final MeasurementList list;
  private final Loops loops;

  SupplyMeasurements(House house, Library library, MeasurementList list) {
    this.house = house;
    this.list = list;
    loops = new Loops(library);
  }

  void addAll() {
    for (Service service : house.services().values()) {
      if (service.status() != Status.TO_REMOVE) {
        service(service);
      }
    }
    for (Panel panel : house.panels().values()) {
      if (panel.status() != Status.TO_REMOVE) {
        panel(panel);
      }
    }
  }

  private void service(Service service) {
    String of = "service " + service.name();
    // What stands already is live up to the main, and nobody but the supplier can switch it off.
    service.run().filter(r -> service.status() == Status.NEW).ifPresent(
        r -> insulation(of, service.name(), service.name(), r, service.system(), service.system().legs()));
    for (int i = 0; i < service.electrodes().size(); i++) {
      Electrode electrode = service.electrodes().get(i);
      list.add(
          of, service.name(), Measurement.Kind.BOND, service.name(),
          electrode.kind() + (service.electrodes().size() > 1 ? "-" + (i + 1) : ""),
          "neutral bar of the service equipment to its conductor at the electrode, " + electrode.kind().replace('-', ' '),
          Expected.bond(list.limit("bond-most")));
    }
  }

  private void panel(Panel panel) {
    boolean fed = panel.supply() instanceof PanelSupply.FromBreaker;
    String of = fed ? "feeder of " + panel.name() : "panel " + panel.name();
    String breakers = panel.supply() instanceof PanelSupply.FromBreaker from
        ? house.breaker(from.breaker()).map(Breaker::id).map(Object::toString).orElse(from.breaker().toString())
        : panel.name();
    panel.feeder().filter(f -> fed).ifPresent(feeder -> {
      loop(of, breakers, panel, feeder, feeder.wiring().neutral(), "neutral");
      loop(of, breakers, panel, feeder, feeder.wiring().ground(), "ground");
    });
    bond(of, breakers, panel);
    panel.feeder().filter(f -> fed).ifPresent(f -> insulation(of, breakers, panel.name(), f, panel.system(), panel.legs()));
    torque(of, breakers, panel);
    voltages(of, breakers, panel);
    if (panel.legs().size() == 3) {
      list.add(
          of, breakers, Measurement.Kind.ROTATION, panel.name(), "", "phase sequence A, B, C at the bus, with a phase-sequence meter",
          Expected.answer("yes"));
    }
  }

  private void loop(String of, String breakers, Panel panel, Stretch feeder, Optional<Wire> back, String name) {
    loops.of(feeder, back).ifPresent(
        ohms -> list.add(
            of, breakers, Measurement.Kind.CONTINUITY, panel.name(), name,
            feeder.wiring().hot().color() + " and " + list.called(name) + " joined at the supply end, measured at " + panel.name(),
            Expected.loop(ohms, list.limit("continuity-margin").value().si())));
  }

  /** Bonded where the plan says so and apart where it does not: a second bond puts the neutral's current on metal. */
  private void bond(String of, String breakers, Panel panel) {
    if (panel.bonded()) {
      list.add(
          of, breakers, Measurement.Kind.BOND, panel.name(), "", NEUTRAL_BAR + " to " + GROUND_BAR + " and enclosure: bonded here",
          Expected.bond(list.limit("bond-most")));
    } else {
      list.add(
          of, breakers, Measurement.Kind.INSULATION, panel.name(), "neutral-bar",
          NEUTRAL_BAR + " to " + GROUND_BAR + ", feeder neutral and all branch neutrals lifted: no bond here",
          Expected.insulation(list.limit("insulation-least"), Optional.empty()));
    }
  }

  private void insulation(String of, String breakers, String at, Stretch stretch, SupplySystem system, List<Leg> legs) {
    String volts = Measurement.plain(list.limit("insulation-volts").value().si());
    int hot = 0;
    List<String> used = new ArrayList<>();
    for (Wire wire : stretch.wiring().insulated()) {
      boolean isHot = wire.purpose() == Wire.Purpose.HOT;
      String leg = isHot && hot < legs.size() ? " (leg " + legs.get(hot) + ")" : isHot ? "" : " (neutral)";
      hot += isHot ? 1 : 0;
      if (wire.color().equals("bare")) {
        continue;
      }
      String key = wire.color() + (used.contains(wire.color()) ? "-" + (used.size() + 1) : "");
      used.add(wire.color());
      list.add(
          of, breakers, Measurement.Kind.INSULATION, at, key,
          wire.color() + leg + " to all others and ground, both ends open, " + volts + " V direct",
          Expected.insulation(list.limit("insulation-least"), list.maybe("insulation-investigate")));
    }
  }

  /** One line for each kind of terminal: what is not turned to the torque of its label works loose and heats. */
  private void torque(String of, String breakers, Panel panel) {
    String tool = ", to the torque on the label, with a calibrated tool";
    torque(of, breakers, panel, "supply", "hot conductors of the supply, at main or lugs" + tool);
    torque(of, breakers, panel, "bars", "neutral and ground bars, every screw" + tool);
    if (!panel.breakers().isEmpty()) {
      torque(of, breakers, panel, "ways", "every breaker or fuse holder, load side" + tool);
    }
  }

  private void torque(String of, String breakers, Panel panel, String which, String between) {
    list.add(of, breakers, Measurement.Kind.TORQUE, panel.name(), which, between, Expected.answer("yes"));
  }

  private void voltages(String of, String breakers, Panel panel) {
    double tolerance = list.limit("voltage-tolerance").value().si();
    SupplySystem system = panel.system();
    List<Leg> legs = panel.legs();
    for (int i = 0; i < legs.size(); i++) {
      voltage(of, breakers, panel, legs.get(i) + "-N", "leg " + legs.get(i) + " to " + NEUTRAL_BAR, system.legToNeutralVolts(), tolerance);
      voltage(of, breakers, panel, legs.get(i) + "-G", "leg " + legs.get(i) + " to " + GROUND_BAR, system.legToNeutralVolts(), tolerance);
      for (int j = i + 1; j < legs.size(); j++) {
        voltage(
            of, breakers, panel, legs.get(i) + "-" + legs.get(j), "leg " + legs.get(i) + " to leg " + legs.get(j), system.legToLegVolts(),
            tolerance);
      }
    }
  }

  private void voltage(String of, String breakers, Panel panel, String which, String between, double volts, double tolerance) {
    list.add(of, breakers, Measurement.Kind.VOLTAGE, panel.name(), which, between, Expected.volts(volts, tolerance, Optional.empty()));
  }
}
