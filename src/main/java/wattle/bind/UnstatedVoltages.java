package wattle.bind;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.Load;
import wattle.model.LoadClass;
import wattle.model.Point;
import wattle.model.SupplySystem;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;

/**
 * What is assumed of appliances between two legs of a wye whose rated voltage the plan does not state. Most are sold for 240 V, many with
 * a second rating for 208 V. Their power is taken as that at 208 V, which gives the greater current: circuits, feeders and
 * protection then hold either way.
 */
final class UnstatedVoltages {
  /** More names than these are not read. */
  private static final int NAMED = 3;

  private UnstatedVoltages() {}

  static Optional<String> assumption(Collection<Branch> branches, Map<String, Device> devices, Map<String, SupplySystem> systems) {
    List<String> names = new ArrayList<>();
    double volts = 0;
    for (Branch branch : branches) {
      Optional<SupplySystem> system = branch.panel().map(systems::get).filter(SupplySystem::isWye);
      if (system.isPresent()) {
        volts = system.get().legToLegVolts();
        for (Point point : branch.points()) {
          point.devices().stream().map(devices::get).filter(d -> d != null && isUnstated(d)).forEach(d -> names.add(d.name()));
        }
      }
    }
    if (names.isEmpty()) {
      return Optional.empty();
    }
    String first = String.join(", ", names.subList(0, Math.min(NAMED, names.size())));
    String more = names.size() > NAMED ? " and " + (names.size() - NAMED) + " more" : "";
    String rating = names.size() == 1 ? " has its rated power" : " have their rated power";
    return Optional.of(first + more + rating + " at " + Quantity.plain(volts, 4) + " V, since the plan states no other rated voltage");
  }

  private static boolean isUnstated(Device device) {
    return device.ratedVoltage().isEmpty()
        && device.loads().stream().anyMatch(
            l -> l.connection() instanceof Load.Connection.HotToHot && l.loadClass() != LoadClass.SOURCE
                && l.rated().filter(r -> r.dimension().equals(Dimension.POWER)).isPresent());
  }
}
