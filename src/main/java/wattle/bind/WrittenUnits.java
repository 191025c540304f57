package wattle.bind;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import wattle.model.Branch;
import wattle.model.Dwelling;
import wattle.model.Panel;
import wattle.model.Service;
import wattle.model.Stretch;
import wattle.quantity.Quantity;
import wattle.quantity.UnitSystem;

/** In which units a plan thinks: those in which most of its lengths and areas are written. */
final class WrittenUnits {
  private WrittenUnits() {}

  static UnitSystem of(
      Collection<Dwelling> dwellings, Collection<Service> services, Collection<Panel> panels, Collection<Branch> branches) {
    List<Quantity> written = new ArrayList<>();
    branches.forEach(b -> b.sections().forEach(s -> s.length().ifPresent(written::add)));
    panels.forEach(p -> p.feeder().flatMap(Stretch::length).ifPresent(written::add));
    services.forEach(s -> s.run().flatMap(Stretch::length).ifPresent(written::add));
    dwellings.forEach(d -> written.addAll(d.facts().values()));
    return UnitSystem.ofMost(written);
  }
}
