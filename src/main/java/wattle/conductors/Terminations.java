package wattle.conductors;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.Device;
import wattle.model.House;
import wattle.model.Metal;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Point;
import wattle.model.Section;
import wattle.model.Stretch;
import wattle.model.Terminals;

/**
 * How hot a run may be where it ends. Both ends count, and at each of them every terminal that the run may come to: the
 * breakers that feed it, the lugs of a panel, the devices of a box. What is not marked is taken as the code takes it for the
 * rating of the circuit (NFPA 70 110.14(C), CSA C22.1 4-006), so that one marked end alone lifts nothing.
 */
public final class Terminations {
  private final House house;
  private final Ampacities ampacities;
  private final Map<BreakerId, Breaker> breakers = new HashMap<>();

  public Terminations(House house, Ampacities ampacities) {
    this.house = house;
    this.ampacities = ampacities;
    house.panels().values().forEach(p -> p.breakers().forEach(b -> breakers.put(b.id(), b)));
  }

  /** A terminal with its name in a derivation. */
  private record End(String name, Terminals terminals) {}

  /**
   * The temperature that the terminals at both ends of a run allow; absent where none of them is marked, and the code's
   * usual one holds.
   *
   * @param rating of the breaker of the branch
   */
  public Optional<Derivation> of(Branch branch, Section section, Derivation rating) {
    List<End> ends = new ArrayList<>(at(branch, section.from()));
    ends.addAll(at(branch, section.to()));
    return lowest(ends, rating);
  }

  /** The same of the run that feeds a panel. */
  public Optional<Derivation> of(Panel fed, Stretch feeder, Derivation rating) {
    List<End> ends = new ArrayList<>();
    Optional<Breaker> from = fed.supply() instanceof PanelSupply.FromBreaker by
        ? Optional.ofNullable(breakers.get(by.breaker()))
        : Optional.empty();
    ends.add(from.map(this::end).orElse(new End("where its supply is", Terminals.UNMARKED)));
    ends.add(new End("panel " + fed.name(), fed.incoming()));
    return lowest(ends, rating);
  }

  /** The lowest temperature that a terminal at either end of the run that feeds a panel is marked for; absent where none is marked. */
  public Optional<Derivation> marked(Panel fed) {
    Optional<Breaker> from = fed.supply() instanceof PanelSupply.FromBreaker by
        ? Optional.ofNullable(breakers.get(by.breaker()))
        : Optional.empty();
    List<End> ends = new ArrayList<>(from.map(this::end).stream().toList());
    ends.add(new End("panel " + fed.name(), fed.incoming()));
    return ends.stream().flatMap(e -> e.terminals.temperature().stream().map(t -> Derivation.stated("marking of the terminals at " + e.name,
        "T_t", t))).min(Comparator.comparingDouble(Derivation::si));
  }

  /** Whether every terminal at the ends of a run takes a metal; absent where some say nothing and none refuses. */
  public Optional<Boolean> take(Metal metal, Branch branch, Section section) {
    List<End> ends = new ArrayList<>(at(branch, section.from()));
    ends.addAll(at(branch, section.to()));
    List<Optional<Boolean>> each = ends.stream().map(e -> e.terminals.take(metal)).toList();
    if (each.contains(Optional.of(false))) {
      return Optional.of(false);
    }
    return each.isEmpty() || each.contains(Optional.<Boolean>empty()) ? Optional.empty() : Optional.of(true);
  }

  private List<End> at(Branch branch, int index) {
    Point point = branch.points().get(index);
    if (point.box().isEmpty()) {
      return branch.hots().stream().map(BranchHot::breaker).distinct().map(breakers::get).filter(b -> b != null).map(this::end).toList();
    }
    List<Device> devices = point.devices().stream().map(house.devices()::get).filter(d -> d != null).toList();
    return devices.isEmpty()
        ? List.of(new End(point.box().get(), Terminals.UNMARKED))
        : devices.stream().map(d -> new End(d.name(), d.terminals())).toList();
  }

  private End end(Breaker breaker) {
    Panel panel = house.panels().get(breaker.id().panel());
    return new End("breaker " + breaker.id(), panel.terminalsOf(breaker));
  }

  private Optional<Derivation> lowest(List<End> ends, Derivation rating) {
    if (ends.stream().noneMatch(e -> e.terminals.temperature().isPresent())) {
      return Optional.empty();
    }
    List<Derivation> limits = new ArrayList<>();
    for (End end : ends) {
      String symbol = "T_" + (limits.size() + 1);
      Optional<Derivation> limit = end.terminals.temperature()
          .map(t -> Derivation.stated("marking of the terminals at " + end.name, symbol, t))
          .or(() -> ampacities.unmarked("temperature of the unmarked terminals at " + end.name, symbol, rating));
      if (limit.isEmpty()) {
        return Optional.empty();
      }
      limits.add(limit.get());
    }
    Derivation least = limits.stream().min(Comparator.comparingDouble(Derivation::si)).orElseThrow();
    String symbols = String.join(", ", limits.stream().map(Derivation::symbol).toList());
    return Optional.of(
        limits.size() == 1
            ? least.named(least.name(), "T_t")
            : Derivation.computed(
                "temperature that the terminals allow", "T_t", "min(" + symbols + ")",
                new Value.Amount(least.quantity().orElseThrow()), limits));
  }
}
