package wattle.trials;

import java.util.List;
import java.util.Optional;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Service;
import wattle.network.Network;

/** A panel and its feeder: legs, neutral and ground, the bond between the last two, and the electrodes. */
final class PanelWriter {
  private final HouseNetworkBuilder out;
  private final Panel panel;
  private final Optional<Service> service;
  private final double hertz;

  PanelWriter(HouseNetworkBuilder out, Panel panel) {
    this.out = out;
    this.panel = panel;
    service = out.house.serviceOf(panel);
    hertz = HouseNetworkBuilder.hertz(service);
  }

  /** @param closed whether the breaker that feeds it is on */
  HouseNetwork.PanelBox write(HouseNetwork.PanelBox upstream, boolean closed) {
    List<Leg> above = upstreamLegs(out.house);
    int box = out.net.box(upstream.box());
    int[] legs = new int[panel.legs().size()];
    for (int i = 0; i < legs.length; i++) {
      Leg leg = panel.legs().get(i);
      int at = above.indexOf(leg);
      int up = closed && at >= 0 && at < upstream.legs().length ? upstream.legs()[at] : Network.OPEN;
      legs[i] = conductor(HouseNetwork.Kind.HOT, i, "hot " + leg, up, box);
    }
    int neutral = conductor(HouseNetwork.Kind.NEUTRAL, 0, "neutral", neutralAway() ? Network.OPEN : upstream.neutral(), box);
    int ground = conductor(HouseNetwork.Kind.GROUND, 0, "ground", upstream.ground(), box);
    if (panel.bonded()) {
      out.net.resistance(box, neutral, ground, HouseNetworkBuilder.CONTACT);
    }
    if (panel.supply() instanceof PanelSupply.FromService && service.isPresent()) {
      SupplyWriter.earth(out, service.get().electrodes(), box, panel.bonded() ? neutral : ground);
    }
    SupplyWriter.earth(out, panel.electrodes(), box, panel.bonded() ? neutral : ground);
    return new HouseNetwork.PanelBox(box, legs, neutral, ground);
  }

  private boolean neutralAway() {
    return out.scenario.supplies().neutralAway().contains(panel.name());
  }

  private List<Leg> upstreamLegs(House house) {
    if (panel.supply() instanceof PanelSupply.FromBreaker from) {
      return house.panels().get(from.breaker().panel()).legs();
    }
    return service.map(s -> s.system().legs()).orElse(panel.legs());
  }

  private int conductor(HouseNetwork.Kind kind, int index, String name, int supply, int box) {
    boolean open = joint(kind, index) == Scenario.OPEN;
    int upstream = open ? Network.OPEN : supply;
    if (panel.feeder().isEmpty()) {
      return upstream == Network.OPEN ? out.net.terminal() : out.net.terminal(upstream, joint(kind, index), 0);
    }
    Optional<WireImpedance> wire = SupplyWriter.wire(out, panel.feeder().get(), kind, index, hertz);
    if (wire.isEmpty()) {
      return out.net.terminal(); // the feeder has no such conductor; it begins here
    }
    double joint = open ? 0 : joint(kind, index);
    int local = out.conductor(wire.get(), upstream, joint);
    out.conductors.add(
        new HouseNetwork.Conductor(
            from() + " to " + panel.name(), Optional.empty(), Optional.of(panel.name()), 0, Optional.empty(), name, kind,
            wire.get(), joint, upstream == Network.OPEN, box, local));
    return local;
  }

  private String from() {
    if (panel.supply() instanceof PanelSupply.FromBreaker from) {
      return from.breaker().toString();
    }
    return panel.supply() instanceof PanelSupply.FromService from ? from.service() : "?";
  }

  private double joint(HouseNetwork.Kind kind, int index) {
    Event.Conductor conductor = switch (kind) {
      case HOT -> Event.Conductor.values()[Math.min(index, 2)];
      case NEUTRAL -> Event.Conductor.NEUTRAL;
      case GROUND -> Event.Conductor.GROUND;
    };
    return out.scenario.panelJoints().getOrDefault(new Scenario.PanelWire(panel.name(), conductor), 0.0);
  }
}
