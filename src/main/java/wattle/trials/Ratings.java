package wattle.trials;

import java.util.List;
import java.util.Optional;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Service;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Ratings of the breakers that feed branches. */
final class Ratings {
  private Ratings() {}

  /** The largest rating of a breaker that feeds a branch; absent where none is stated. */
  static Optional<Quantity> of(Branch branch, House house) {
    return branch.hots().stream()
        .flatMap(h -> house.breaker(h.breaker()).flatMap(Breaker::rating).stream())
        .max((a, b) -> Double.compare(a.si(), b.si()));
  }

  /** What guards the feeder of a panel: the breaker that feeds it, else the main of the panel. */
  static Optional<Quantity> ofFeeder(Panel panel, House house) {
    return panel.supply() instanceof PanelSupply.FromBreaker from
        ? house.breaker(from.breaker()).flatMap(Breaker::rating)
        : panel.main().flatMap(MainDevice::rating);
  }

  /** What guards the run of a service: its mains together, else the rating that the plan states of it. */
  static Optional<Quantity> ofService(Service service, House house) {
    List<Quantity> mains = house.panels().values().stream()
        .filter(p -> p.supply() instanceof PanelSupply.FromService from && from.service().equals(service.name()))
        .flatMap(p -> p.main().flatMap(MainDevice::rating).stream())
        .toList();
    return mains.isEmpty()
        ? service.rating()
        : Optional.of(Quantity.of(mains.stream().mapToDouble(Quantity::si).sum(), Units.AMPERE));
  }

  /** Amperes of the breaker behind one hot. */
  static Optional<Double> ofHot(Branch branch, int hot, House house) {
    return hot < branch.hots().size()
        ? house.breaker(branch.hots().get(hot).breaker()).flatMap(Breaker::amperes)
        : Optional.empty();
  }
}
