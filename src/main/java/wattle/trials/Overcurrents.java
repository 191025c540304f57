package wattle.trials;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.faults.ClearingTime;
import wattle.faults.TripCurve;
import wattle.faults.TripCurves;
import wattle.library.Library;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.model.Role;
import wattle.model.SupplySystem;
import wattle.network.Complex;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * Breakers, fuses and mains that carry more than their rating in a scenario. Its figures are those of the moment before
 * any of them opens; when it does is known only within the bounds of its product standard.
 */
final class Overcurrents {
  /** What is over by less is rounding: a load that is stated at the rating is not above it. */
  static final double ROUNDING = 1e-6;

  private final House house;
  private final TripCurves curves;
  private final HouseNetwork network;
  private final Figures figures;
  private final List<TrialResult.OvercurrentReading> readings = new ArrayList<>();
  private final Map<String, List<HouseNetwork.Conductor>> conductors = new HashMap<>();

  Overcurrents(House house, Library library, HouseNetwork network, Figures figures) {
    this.house = house;
    this.network = network;
    this.figures = figures;
    curves = new TripCurves(library);
    network.conductors().forEach(c -> c.branch().ifPresent(b -> conductors.computeIfAbsent(b, n -> new ArrayList<>()).add(c)));
  }

  /** Most times its rating first. */
  List<TrialResult.OvercurrentReading> list() {
    for (Branch branch : house.branches().values()) {
      branch(branch);
    }
    for (Panel panel : house.panels().values()) {
      panel(panel);
    }
    readings.sort(Comparator.comparingDouble(r -> -r.share().si()));
    return readings;
  }

  private void branch(Branch branch) {
    Optional<SupplySystem> system = branch.panel().map(house.panels()::get).map(Panel::system);
    for (int i = 0; i < branch.hots().size() && system.isPresent(); i++) {
      Role hot = new Role.Hot(i);
      List<HouseNetwork.Conductor> leaving = conductors.getOrDefault(branch.name(), List.of()).stream()
          .filter(c -> c.role().equals(Optional.of(hot)) && leavesPanel(branch, c))
          .toList();
      Optional<Breaker> breaker = house.breaker(branch.hots().get(i).breaker());
      if (breaker.isPresent() && !leaving.isEmpty()) {
        String name = (breaker.get().device() == Breaker.Device.FUSE ? "fuse " : "breaker ") + breaker.get().id();
        add(name, branch.name(), breaker.get().rating(), figures.together(leaving), curves.of(breaker.get(), system.get()));
      }
    }
  }

  private static boolean leavesPanel(Branch branch, HouseNetwork.Conductor c) {
    return branch.sections().stream().anyMatch(s -> s.from() == 0 && s.to() == c.point());
  }

  private void panel(Panel panel) {
    HouseNetwork.PanelBox box = network.panels().get(panel.name());
    if (box == null) {
      return;
    }
    Derivation most = java.util.stream.IntStream.range(0, box.legs().length)
        .mapToObj(i -> figures.intoPanel(panel, box, i))
        .max(Comparator.comparingDouble(Derivation::si))
        .orElseThrow();
    if (panel.supply() instanceof wattle.model.PanelSupply.FromBreaker from) {
      house.breaker(from.breaker())
          .ifPresent(b -> add("breaker " + b.id(), panel.name(), b.rating(), most, curves.of(b, panel.system())));
    }
    panel.main()
        .filter(m -> m.kind() == MainDevice.Kind.BREAKER || m.kind() == MainDevice.Kind.FUSE)
        .ifPresent(
            m -> add(
                "main of " + panel.name(), panel.name(), m.rating(), most,
                m.kind() == MainDevice.Kind.FUSE
                    ? m.rating().flatMap(r -> curves.ofFuse(r.si(), panel.system()))
                    : m.rating().flatMap(r -> curves.of(r.si(), panel.system()))));
  }

  private void add(String name, String feeds, Optional<Quantity> rating, Derivation amps, Optional<TripCurve> curve) {
    if (rating.isEmpty() || amps.si() <= rating.get().si() * (1 + ROUNDING)) {
      return;
    }
    // The poles of one breaker are told once, by the one that carries most.
    Optional<TrialResult.OvercurrentReading> before = readings.stream().filter(r -> r.name().equals(name) && r.feeds().equals(feeds))
        .findFirst();
    if (before.isPresent() && before.get().amps().si() >= amps.si()) {
      return;
    }
    before.ifPresent(readings::remove);
    Derivation stated = Derivation.stated("rating of " + name, "I_n", rating.get());
    double times = amps.si() / rating.get().si();
    Derivation share = Derivation.computed(
        "current as a part of the rating", "", "I / I_n", new Value.Amount(new Quantity(times, Units.PERCENT)),
        List.of(amps.named(amps.name(), "I"), stated));
    readings.add(
        new TrialResult.OvercurrentReading(name, feeds, stated, amps, share, curve.map(c -> c.at(amps.si()))));
  }
}
