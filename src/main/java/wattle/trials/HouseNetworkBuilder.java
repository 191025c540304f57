package wattle.trials;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.conductors.Impedances;
import wattle.library.Library;
import wattle.memo.OnceEach;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Role;
import wattle.model.Service;
import wattle.model.Status;
import wattle.network.Complex;
import wattle.network.Network;
import wattle.network.NetworkBuilder;

/**
 * Writes a house in a scenario down as a network: the source, the service run, panels from the service down, and the runs
 * of branches box by box. A box of the network is one box of the house on one branch; its terminals are what the conductors
 * there do. What is to be removed is left out.
 */
final class HouseNetworkBuilder {
  /** A closed contact, a bond: next to nothing, in ohms. */
  static final double CONTACT = 1e-4;

  /** A bolted fault, in ohms. */
  static final double BOLTED = 1e-6;

  final House house;
  final Scenario scenario;
  final Impedances impedances;
  final EarthFigures earth;
  final NetworkBuilder net = new NetworkBuilder();
  final List<HouseNetwork.Conductor> conductors = new ArrayList<>();
  final List<HouseNetwork.Outlet> outlets = new ArrayList<>();
  final List<HouseNetwork.Drawing> loads = new ArrayList<>();
  final List<HouseNetwork.Metal> metals = new ArrayList<>();
  final List<HouseNetwork.Faulting> faults = new ArrayList<>();
  final Map<String, HouseNetwork.PanelBox> panels = new LinkedHashMap<>();
  final Map<Integer, HouseNetwork.Winding> windings = new HashMap<>();
  final List<HouseNetwork.Feeding> feedings = new ArrayList<>();
  final List<HouseNetwork.Leakage> leakages = new ArrayList<>();
  final List<HouseNetwork.PanelLoad> panelLoads = new ArrayList<>();
  final SourceFigures sourceFigures;
  private final Library library;
  private final OnceEach<String, BranchWires> wires;
  private final Optional<Double> body;
  private final Map<String, int[]> groundOfBox = new HashMap<>();

  /**
   * @param wires of each branch by its name, the same in every trial
   * @param body ohms of a person who touches each metal part off its ground; absent where nobody does
   */
  HouseNetworkBuilder(
      House house, Library library, Impedances impedances, OnceEach<String, BranchWires> wires, EarthFigures earth, Scenario scenario,
      Optional<Double> body) {
    this.house = house;
    this.library = library;
    sourceFigures = new SourceFigures(house, library);
    this.impedances = impedances;
    this.wires = wires;
    this.earth = earth;
    this.scenario = scenario;
    this.body = body;
  }

  HouseNetwork build() {
    for (Service service : house.services().values()) {
      new SupplyWriter(this, service).write(library);
    }
    for (Panel panel : house.panels().values()) {
      panel(panel, new HashSet<>());
    }
    for (Branch branch : house.branches().values()) {
      Optional<HouseNetwork.PanelBox> start = branch.panel().map(panels::get);
      if (start.isPresent() && !branch.hots().isEmpty() && branch.status() != Status.TO_REMOVE) {
        new BranchWriter(this, branch, wires.get(branch.name()), start.get()).write();
      }
    }
    panelFaults();
    panelLoads();
    Network network = net.build();
    return new HouseNetwork(network, conductors, outlets, loads, metals, faults, panels, windings, feedings, leakages, panelLoads,
        servicePoints);
  }

  private final Map<String, HouseNetwork.PanelBox> servicePoints = new HashMap<>();

  void servicePoint(String service, HouseNetwork.PanelBox point) {
    servicePoints.put(service, point);
  }

  private Optional<HouseNetwork.PanelBox> panel(Panel panel, Set<String> above) {
    if (panels.containsKey(panel.name())) {
      return Optional.of(panels.get(panel.name()));
    }
    if (!above.add(panel.name()) || panel.status() == Status.TO_REMOVE) {
      return Optional.empty(); // a circle of feeders, which is a finding of the binder
    }
    Optional<HouseNetwork.PanelBox> upstream = Optional.empty();
    boolean closed = true;
    if (panel.supply() instanceof PanelSupply.FromService from) {
      upstream = Optional.ofNullable(servicePoints.get(from.service()));
    } else if (panel.supply() instanceof PanelSupply.FromBreaker from) {
      Panel feeding = house.panels().get(from.breaker().panel());
      upstream = feeding == null ? Optional.empty() : panel(feeding, above);
      closed = !scenario.openBreakers().contains(from.breaker());
    }
    boolean on = closed && !scenario.supplies().openMains().contains(panel.name());
    Optional<HouseNetwork.PanelBox> box = upstream.map(u -> new PanelWriter(this, panel).write(u, on));
    box.ifPresent(b -> panels.put(panel.name(), b));
    return box;
  }

  private void panelFaults() {
    for (Scenario.Fault fault : scenario.faults()) {
      HouseNetwork.PanelBox box = panels.get(fault.at());
      if (fault.branch().isEmpty() && box != null) {
        int element = net.resistance(
            box.box(), terminal(box, fault.from()), terminal(box, fault.to()), Math.max(BOLTED, fault.ohms()));
        faults.add(new HouseNetwork.Faulting(fault, element));
      }
    }
  }

  private List<String> feedersTo(Panel panel) {
    List<String> through = new ArrayList<>(List.of(panel.name()));
    Panel at = panel;
    while (at.supply() instanceof PanelSupply.FromBreaker from && !through.contains(from.breaker().panel())) {
      at = house.panels().get(from.breaker().panel());
      through.add(at.name());
    }
    return through;
  }

  private void panelLoads() {
    for (Scenario.PanelDrawn drawn : scenario.panelDrawn()) {
      HouseNetwork.PanelBox box = panels.get(drawn.panel());
      Panel panel = house.panels().get(drawn.panel());
      for (int i = 0; box != null && i < box.legs().length; i++) {
        int element = net.load(box.box(), box.legs()[i], box.neutral(), drawn.voltAmperes(), panel.system().legToNeutralVolts(),
            drawn.behavior());
        panelLoads.add(new HouseNetwork.PanelLoad(drawn.panel(), panel.legs().get(i), element, feedersTo(panel)));
      }
    }
  }

  private static int terminal(HouseNetwork.PanelBox box, wattle.model.Event.Conductor conductor) {
    int last = box.legs().length - 1;
    return switch (conductor) {
      case HOT -> box.legs()[0];
      case HOT_2 -> box.legs()[Math.min(1, last)];
      case HOT_3 -> box.legs()[Math.min(2, last)];
      case NEUTRAL -> box.neutral();
      case GROUND -> box.ground();
    };
  }

  /** Joins the grounds of branches that meet in one box, as every box must. */
  void groundIn(String name, int box, int terminal) {
    int[] other = groundOfBox.putIfAbsent(name, new int[]{box, terminal});
    if (other != null) {
      net.link(other[0], other[1], box, terminal, new Complex(CONTACT, 0));
    }
  }

  /** What a person adds who touches a metal part off its ground. */
  void touch(int box, int terminal) {
    body.ifPresent(ohms -> net.resistance(box, terminal, Network.EARTH, ohms));
  }

  /** A conductor between boxes; open ones are terminals that begin where they are. */
  int conductor(WireImpedance wire, int upstream, double joint) {
    return net.terminal(upstream, wire.ohms().re() + joint, wire.ohms().im());
  }

  /** The leg that a hot of a branch is on, moved or not. */
  Optional<Leg> legOf(Branch branch, int hot) {
    List<Optional<Leg>> moved = scenario.legs().get(branch.name());
    if (moved != null) {
      return moved.get(hot);
    }
    return hot < branch.hots().size() ? branch.hots().get(hot).leg() : Optional.empty();
  }

  static double hertz(Optional<Service> service) {
    return service.map(Service::hertz).orElse(60.0);
  }

  static Optional<HouseNetwork.Kind> kindOf(Role role) {
    if (role instanceof Role.Neutral) {
      return Optional.of(HouseNetwork.Kind.NEUTRAL);
    }
    if (role instanceof Role.Ground) {
      return Optional.of(HouseNetwork.Kind.GROUND);
    }
    return Role.isApart(role) ? Optional.empty() : Optional.of(HouseNetwork.Kind.HOT);
  }
}
