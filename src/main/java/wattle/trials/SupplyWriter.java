package wattle.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.library.Library;
import wattle.model.Electrode;
import wattle.model.Leg;
import wattle.model.Service;
import wattle.model.Stretch;
import wattle.model.Wire;
import wattle.network.Complex;
import wattle.network.Network;
import wattle.quantity.Quantity;

/** The source behind a service and the run from it: one box at the transformer, one where the service enters the house. */
final class SupplyWriter {
  private final HouseNetworkBuilder out;
  private final Service service;

  SupplyWriter(HouseNetworkBuilder out, Service service) {
    this.out = out;
    this.service = service;
  }

  void write(Library library) {
    List<Leg> legs = service.system().legs();
    int source = out.net.root();
    int[] terminals = new int[legs.size()];
    Complex[] emf = new Complex[legs.size()];
    for (int i = 0; i < terminals.length; i++) {
      terminals[i] = out.net.terminal();
      emf[i] = Complex.polar(service.system().legToNeutralVolts(), service.system().degreesOf(legs.get(i)));
    }
    int star = out.net.terminal();
    if (!out.scenario.supplies().lost().contains(service.name())) {
      out.net.source(source, star, terminals, emf, SourceImpedance.of(service, library));
      out.windings.put(source, new HouseNetwork.Winding(legs, terminals, star, emf));
    }
    out.net.resistance(source, star, Network.EARTH, out.earth.supply().si());
    out.servicePoint(service.name(), enter(source, terminals, star));
  }

  private HouseNetwork.PanelBox enter(int source, int[] legs, int star) {
    int box = out.net.box(source);
    int[] terminals = new int[legs.length];
    for (int i = 0; i < legs.length; i++) {
      terminals[i] = conductor(HouseNetwork.Kind.HOT, i, "hot " + service.system().legs().get(i), legs[i], box, false);
    }
    int neutral = conductor(HouseNetwork.Kind.NEUTRAL, 0, "neutral", star, box, out.scenario.serviceNeutralOpen());
    int ground = out.net.terminal();
    return new HouseNetwork.PanelBox(box, terminals, neutral, ground);
  }

  private int conductor(HouseNetwork.Kind kind, int index, String name, int upstream, int box, boolean open) {
    Optional<WireImpedance> wire = service.run().flatMap(r -> wire(r, kind, index));
    int local = open
        ? out.net.terminal()
        : out.net.terminal(
            upstream, wire.map(w -> w.ohms().re()).orElse(0.0), wire.map(w -> w.ohms().im()).orElse(0.0));
    wire.ifPresent(
        w -> out.conductors.add(
            new HouseNetwork.Conductor(
                "service " + service.name(), Optional.empty(), Optional.empty(), 0, Optional.empty(), name, kind, w, 0,
                open, box, local)));
    return local;
  }

  private Optional<WireImpedance> wire(Stretch run, HouseNetwork.Kind kind, int index) {
    return wire(out, run, kind, index, HouseNetworkBuilder.hertz(Optional.of(service)));
  }

  /** A wire of a feeder or service run; where it has fewer hots than legs, the last one stands for the rest. */
  static Optional<WireImpedance> wire(
      HouseNetworkBuilder out, Stretch run, HouseNetwork.Kind kind, int index, double hertz) {
    List<Wire> hots = new ArrayList<>();
    run.wiring().wires().stream().filter(w -> w.purpose() == Wire.Purpose.HOT).forEach(hots::add);
    Optional<Wire> wire = switch (kind) {
      case HOT -> hots.isEmpty() ? Optional.empty() : Optional.of(hots.get(Math.min(index, hots.size() - 1)));
      case NEUTRAL -> run.wiring().neutral();
      case GROUND -> run.wiring().ground();
    };
    double meters = run.length().map(Quantity::si).orElse(0.0);
    return wire.map(w -> WireImpedance.of(out.impedances, w, run.wiring(), meters, hertz));
  }

  /** Electrodes of a service, at the place where the neutral is bonded, or of a panel in another building. */
  static void earth(HouseNetworkBuilder out, List<Electrode> electrodes, int box, int terminal) {
    for (Electrode electrode : electrodes) {
      out.net.resistance(box, terminal, Network.EARTH, out.earth.of(electrode).si());
    }
  }
}
