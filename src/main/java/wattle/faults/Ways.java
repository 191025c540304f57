package wattle.faults;

import java.util.Optional;
import java.util.function.Predicate;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.Role;
import wattle.model.Section;
import wattle.model.Wire;
import wattle.model.Wiring;

/**
 * Which conductors of a run a fault current goes out and back on.
 *
 * @param back absent of a three-phase fault: its currents add up to nothing where they meet
 */
record Ways(Wire out, Optional<Wire> back) {
  /** Of one run of a branch; absent where it lacks a conductor for it. */
  static Optional<Ways> in(Section section, Branch branch, FaultKind kind) {
    if (kind == FaultKind.LINE_LINE && (branch.hots().size() < 2 || sameLeg(branch))) {
      return Optional.empty();
    }
    if (kind == FaultKind.THREE_PHASE && (branch.hots().size() < 3 || hot(section, 1).isEmpty() || hot(section, 2).isEmpty())) {
      return Optional.empty();
    }
    if (section.conductors().isEmpty()) {
      return in(section.wiring(), kind);
    }
    if (kind == FaultKind.THREE_PHASE) {
      return hot(section, 0).map(w -> new Ways(w, Optional.empty()));
    }
    if (kind == FaultKind.LINE_LINE) {
      return pair(hot(section, 0), hot(section, 1));
    }
    Optional<Wire> out = hot(section, 0).or(() -> hot(section, 1)).or(() -> hot(section, 2));
    return pair(out, first(section, kind == FaultKind.LINE_NEUTRAL ? Role.Neutral.class::isInstance : Role.Ground.class::isInstance));
  }

  /** Of a feeder or a service run. */
  static Optional<Ways> in(Wiring wiring, FaultKind kind) {
    Optional<Wire> out = Optional.of(wiring.hot());
    return switch (kind) {
      case THREE_PHASE -> wiring.wires().stream().filter(w -> w.purpose() == Wire.Purpose.HOT).count() < 3
          ? Optional.empty()
          : out.map(w -> new Ways(w, Optional.empty()));
      case LINE_LINE -> pair(out, wiring.wires().stream().filter(w -> w.purpose() == Wire.Purpose.HOT).skip(1).findFirst());
      case LINE_NEUTRAL -> pair(out, wiring.neutral());
      case LINE_GROUND -> pair(out, wiring.ground());
    };
  }

  private static Optional<Ways> pair(Optional<Wire> out, Optional<Wire> back) {
    return out.flatMap(o -> back.map(b -> new Ways(o, Optional.of(b))));
  }

  private static boolean sameLeg(Branch branch) {
    return branch.hots().get(0).leg().isPresent() && branch.hots().get(0).leg().equals(branch.hots().get(1).leg());
  }

  /** The conductor that is alive from one hot of the branch, switched or not. */
  private static Optional<Wire> hot(Section section, int hot) {
    return first(
        section,
        role -> role instanceof Role.Hot h && h.hot() == hot
            || role instanceof Role.SwitchLeg s && s.hot() == hot
            || role instanceof Role.Traveler t && t.hot() == hot);
  }

  // By a loop: every run of a house is asked three times over.
  private static Optional<Wire> first(Section section, Predicate<Role> role) {
    for (ConductorUse use : section.conductors()) {
      if (role.test(use.role())) {
        return Optional.of(use.wire());
      }
    }
    return Optional.empty();
  }
}
