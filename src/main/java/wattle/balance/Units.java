package wattle.balance;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import wattle.loads.LegLoads;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.Pole;
import wattle.model.Status;

/** Which breakers of a panel may move, as {@link Unit}s, and which may not and why. */
final class Units {
  private final House house;
  private final Panel panel;
  private final Function<Breaker, LegLoads> loads;
  private final List<Unit> movable = new ArrayList<>();
  private final List<Fixed> fixed = new ArrayList<>();

  /** @param loads what a breaker carries on each leg */
  Units(House house, Panel panel, Function<Breaker, LegLoads> loads) {
    this.house = house;
    this.panel = panel;
    this.loads = loads;
    Map<Integer, Set<Breaker>> bySlot = new LinkedHashMap<>();
    for (Breaker breaker : panel.breakers()) {
      breaker.poles().forEach(p -> bySlot.computeIfAbsent(p.slot().number(), s -> new java.util.LinkedHashSet<>()).add(breaker));
    }
    Set<Breaker> seen = new HashSet<>();
    for (Breaker breaker : panel.breakers()) {
      if (seen.add(breaker)) {
        Set<Breaker> together = bySlot.get(breaker.poles().get(0).slot().number());
        if (breaker.poles().size() == 1 && together.stream().allMatch(b -> b.poles().size() == 1)) {
          seen.addAll(together);
          sort(List.copyOf(together));
        } else {
          sort(List.of(breaker));
        }
      }
    }
  }

  List<Unit> movable() {
    return List.copyOf(movable);
  }

  List<Fixed> fixed() {
    return List.copyOf(fixed);
  }

  private void sort(List<Breaker> together) {
    List<Fixed> reasons = together.stream().flatMap(b -> reason(b).map(why -> new Fixed(b, why)).stream()).toList();
    if (!reasons.isEmpty()) {
      fixed.addAll(reasons);
      together.stream()
          .filter(b -> reasons.stream().noneMatch(f -> f.breaker() == b))
          .forEach(b -> fixed.add(new Fixed(b, "shares a slot with one that stays")));
      return;
    }
    Breaker first = together.get(0);
    Unit unit = first.poles().size() == 1
        ? Unit.ofSlot(together, together.stream().mapToDouble(b -> poleLoads(b)[0]).sum(), panel)
        : Unit.ofWires(first, poleLoads(first), panel);
    if (unit.options().isEmpty()) {
      fixed.add(new Fixed(first, "loads its legs alike"));
    } else {
      movable.add(unit);
    }
  }

  private double[] poleLoads(Breaker breaker) {
    LegLoads carried = loads.apply(breaker);
    return breaker.poles().stream().mapToDouble(p -> carried.on(p.leg().orElseThrow())).toArray();
  }

  private Optional<String> reason(Breaker breaker) {
    if (breaker.pinned()) {
      return Optional.of("pinned");
    }
    if (breaker.backFed()) {
      return Optional.of("a source feeds back through it");
    }
    if (breaker.interlocked()) {
      return Optional.of("interlocked with another");
    }
    if (breaker.legsStated()) {
      return Optional.of("the plan states its leg");
    }
    if (breaker.status() == Status.TO_REMOVE) {
      return Optional.of("to be removed");
    }
    List<Leg> legs = breaker.poles().stream().map(Pole::leg).flatMap(Optional::stream).toList();
    if (legs.size() < breaker.poles().size()) {
      return Optional.of("its slot has no leg");
    }
    if (new HashSet<>(legs).size() < legs.size()) {
      return Optional.of("two of its poles are on one leg");
    }
    if (breaker.target() instanceof Breaker.Target.ToPanel) {
      return Optional.of("feeds a panel");
    }
    if (breaker.target() instanceof Breaker.Target.ToBranch to) {
      return Optional.ofNullable(house.branches().get(to.branch())).flatMap(b -> reason(breaker, b));
    }
    return breaker.poles().size() > 1 ? Optional.of("feeds nothing") : Optional.empty();
  }

  private static Optional<String> reason(Breaker breaker, Branch branch) {
    if (branch.hots().stream().map(BranchHot::breaker).anyMatch(id -> !id.equals(breaker.id()))) {
      return Optional.of("another breaker feeds its branch too");
    }
    return branch.legsNamed() ? Optional.of("its branch names the legs of its devices") : Optional.empty();
  }
}
