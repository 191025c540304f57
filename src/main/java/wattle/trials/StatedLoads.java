package wattle.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.model.Device;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.Load;
import wattle.model.LoadClass;
import wattle.model.Panel;
import wattle.model.SupplySystem;
import wattle.network.Complex;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;

/** What devices draw: as the plan states it of each, or as a trial says. */
final class StatedLoads {
  private final House house;

  StatedLoads(House house) {
    this.house = house;
  }

  /** Of every device at once, but for sources that feed back. */
  List<Scenario.Drawn> all() {
    List<Scenario.Drawn> drawn = new ArrayList<>();
    house.devices().values().forEach(d -> drawn.addAll(of(d)));
    return drawn.stream().filter(d -> d.voltAmperes().re() > 0).toList();
  }

  /** Of one device, part by part; a source draws nothing of what it is rated. */
  List<Scenario.Drawn> of(Device device) {
    List<Scenario.Drawn> drawn = new ArrayList<>();
    Optional<SupplySystem> system = systemOf(device.name());
    for (Load load : device.loads()) {
      if (system.isPresent() && load.voltAmperes() > 0 && load.loadClass() != LoadClass.SOURCE
          && !(load.connection() instanceof Load.Connection.Unconnected)) {
        double nominal = DeviceWriter.nominal(load.connection(), system.get());
        Complex power = HouseNetwork.power(load.voltAmperes(), load.powerFactor());
        drawn.add(
            new Scenario.Drawn(
                device.name(), load.part(), load.connection(), power, nominal, load.behavior(), false));
      }
    }
    return drawn;
  }

  /** As an event says: all on the part it names, or shared between the parts as the plan shares their ratings. */
  List<Scenario.Drawn> of(Event.Drawing event) {
    Device device = house.devices().get(event.device());
    Optional<SupplySystem> system = systemOf(event.device());
    List<Load> loads = device.loads().stream()
        .filter(l -> event.part().isEmpty() || l.part().equals(event.part()))
        .filter(l -> !(l.connection() instanceof Load.Connection.Unconnected))
        .toList();
    if (system.isEmpty() || loads.isEmpty()) {
      return List.of();
    }
    double sum = loads.stream().mapToDouble(Load::voltAmperes).sum();
    boolean threePhase = device.kind().isThreePhase() && loads.size() > 2;
    boolean parts = threePhase || loads.stream().map(Load::part).distinct().count() > 1;
    List<Scenario.Drawn> drawn = new ArrayList<>();
    for (Load load : loads) {
      double share = sum > 0 ? load.voltAmperes() / sum : parts ? 1.0 / loads.size() : load == loads.get(0) ? 1 : 0;
      if (share > 0) {
        double nominal = DeviceWriter.nominal(load.connection(), system.get());
        drawn.add(
            new Scenario.Drawn(
                device.name(), load.part(), load.connection(),
                power(event, nominal).times(threePhase ? share * threePhaseFactor(event) : share), nominal,
                event.behavior(), event.start()));
      }
    }
    return drawn;
  }

  /** Of all behind a panel: a current is that of each leg, a power is shared between them, a resistance is between each and the neutral. */
  Scenario.PanelDrawn of(Event.PanelDrawing event) {
    Panel panel = house.panels().get(event.panel());
    double nominal = panel.system().legToNeutralVolts();
    Event.Drawing each = new Event.Drawing(event.panel(), "", event.drawn(), event.powerFactor(), event.behavior(), false, event.span());
    boolean whole = event.drawn().dimension().equals(Dimension.POWER);
    return new Scenario.PanelDrawn(event.panel(), power(each, nominal).times(whole ? 1.0 / panel.legs().size() : 1), event.behavior());
  }

  /** A current is that of each hot; a resistance lies between each two hots; a power is that of the whole. */
  private static double threePhaseFactor(Event.Drawing event) {
    return event.drawn().dimension().equals(Dimension.CURRENT)
        ? Math.sqrt(3)
        : event.drawn().dimension().equals(Dimension.RESISTANCE) ? 3 : 1;
  }

  private static Complex power(Event.Drawing event, double nominalVolts) {
    Quantity drawn = event.drawn();
    double factor = event.powerFactor();
    if (drawn.dimension().equals(Dimension.CURRENT)) {
      return HouseNetwork.power(drawn.si() * nominalVolts, factor);
    }
    if (drawn.dimension().equals(Dimension.RESISTANCE)) {
      return new Complex(nominalVolts * nominalVolts / Math.max(drawn.si(), HouseNetworkBuilder.BOLTED), 0);
    }
    boolean watts = drawn.unit().symbol().endsWith("W");
    return HouseNetwork.power(watts ? drawn.si() / factor : drawn.si(), factor);
  }

  private Optional<SupplySystem> systemOf(String device) {
    return Place.of(house, device).flatMap(p -> p.branch().panel()).map(house.panels()::get).map(Panel::system);
  }
}
