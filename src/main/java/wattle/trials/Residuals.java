package wattle.trials;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Protection;
import wattle.model.Role;
import wattle.model.Section;
import wattle.network.Complex;
import wattle.network.Solution;

/**
 * What does not come back through protection: the sum of the currents of the hots and the neutral that go through it, as
 * phasors. Of two single poles over a shared neutral the first has the neutral on it.
 */
final class Residuals {
  private final House house;
  private final HouseNetwork network;
  private final Solution solution;

  Residuals(House house, HouseNetwork network, Solution solution) {
    this.house = house;
    this.network = network;
    this.solution = solution;
  }

  /** Through a breaker that feeds hots of a branch; absent where no run leaves it. */
  Optional<Double> ofBreaker(Branch branch, BreakerId breaker) {
    List<BreakerId> guarding = branch.hots().stream().map(BranchHot::breaker).distinct()
        .filter(b -> house.breaker(b).filter(k -> k.protections().contains(Protection.GROUND_FAULT)).isPresent()).toList();
    Complex sum = Complex.ZERO;
    boolean any = false;
    for (HouseNetwork.Conductor c : network.conductors()) {
      if (c.branch().equals(Optional.of(branch.name())) && leaves(branch, c, 0)
          && isThrough(branch, c.role().orElseThrow(), breaker, guarding)) {
        sum = sum.plus(solution.amps(c.box(), c.local()));
        any = true;
      }
    }
    return any ? Optional.of(sum.magnitude()) : Optional.empty();
  }

  private static boolean isThrough(Branch branch, Role role, BreakerId breaker, List<BreakerId> guarding) {
    if (role instanceof Role.Hot hot) {
      return hot.hot() < branch.hots().size() && branch.hots().get(hot.hot()).breaker().equals(breaker);
    }
    return role instanceof Role.Neutral && !guarding.isEmpty() && guarding.get(0).equals(breaker);
  }

  private static boolean leaves(Branch branch, HouseNetwork.Conductor c, int point) {
    return branch.sections().stream().anyMatch(s -> s.from() == point && s.to() == c.point());
  }

  /** Through a breaker that feeds a panel. */
  Optional<Double> ofFeeder(Breaker breaker, Panel fed) {
    HouseNetwork.PanelBox box = network.panels().get(fed.name());
    if (box == null) {
      return Optional.empty();
    }
    Complex sum = solution.amps(box.box(), box.neutral());
    for (int leg : box.legs()) {
      sum = sum.plus(solution.amps(box.box(), leg));
    }
    return Optional.of(sum.magnitude());
  }

  /**
   * Through a receptacle: what is plugged into it, and what is wired to its load side where it protects onward. Of a branch
   * with several hots its own goes through it, and the neutral.
   *
   * @param onward whether it protects what is wired onward
   */
  double ofDevice(String device, Place place, boolean onward) {
    Branch branch = place.branch();
    Complex sum = plugged(device);
    for (HouseNetwork.Conductor c : network.conductors()) {
      if (onward && c.branch().equals(Optional.of(branch.name())) && leaves(branch, c, place.point())
          && isOwn(c.role().orElseThrow(), place.hot())) {
        sum = sum.plus(solution.amps(c.box(), c.local()));
      }
    }
    return sum.magnitude();
  }

  private static boolean isOwn(Role role, int hot) {
    return role instanceof Role.Neutral
        || role instanceof Role.Hot h && h.hot() == hot
        || role instanceof Role.SwitchLeg s && s.hot() == hot
        || role instanceof Role.Traveler t && t.hot() == hot;
  }

  /** Out of the hot and the neutral of what is plugged in, to its metal or to a ground. */
  private Complex plugged(String device) {
    Complex sum = Complex.ZERO;
    for (HouseNetwork.Leakage leakage : network.leakages()) {
      if (leakage.at().equals(device)) {
        sum = sum.minus(solution.elementAmps(leakage.element()));
      }
    }
    for (HouseNetwork.Faulting fault : network.faults()) {
      if (fault.fault().at().equals(device)) {
        boolean from = fault.fault().from() == Event.Conductor.GROUND;
        boolean to = fault.fault().to() == Event.Conductor.GROUND;
        if (from != to) {
          Complex amps = solution.elementAmps(fault.element());
          sum = sum.plus(from ? amps.times(-1) : amps);
        }
      }
    }
    return sum;
  }

  /** Points of a branch from one on, itself first. */
  static Set<Integer> beyond(Branch branch, int point) {
    Set<Integer> reached = new java.util.LinkedHashSet<>(Set.of(point));
    for (Section section : branch.sections()) {
      if (reached.contains(section.from())) {
        reached.add(section.to());
      }
    }
    return reached;
  }
}
