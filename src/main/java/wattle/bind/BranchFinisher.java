package wattle.bind;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.ConductorUse;
import wattle.model.Origin;
import wattle.model.Panel;
import wattle.model.Point;
import wattle.model.Section;
import wattle.model.Wiring;

/** A traced branch, with its hots and the roles of its conductors, to the model's record. */
final class BranchFinisher {
  private BranchFinisher() {}

  /** The hots of each branch by its name: the poles that feed it, in the order of the panels' lines. */
  static Map<String, List<BranchHot>> hotsByBranch(Map<String, Panel> panels) {
    Map<String, List<BranchHot>> hots = new HashMap<>();
    for (Panel panel : panels.values()) {
      for (Breaker breaker : panel.breakers()) {
        if (breaker.target() instanceof Breaker.Target.ToBranch to) {
          for (int i = 0; i < breaker.poles().size(); i++) {
            hots.computeIfAbsent(to.branch(), b -> new ArrayList<>())
                .add(new BranchHot(breaker.id(), i, breaker.poles().get(i).leg()));
          }
        }
      }
    }
    return hots;
  }

  static Optional<Branch> finish(BranchDraft draft, List<List<ConductorUse>> uses) {
    Optional<Wiring> wiring = draft.wiring.isPresent() ? draft.wiring : draft.legs.stream().map(BranchDraft.Leg::wiring).findFirst();
    if (wiring.isEmpty()) {
      return Optional.empty();
    }
    List<Point> points = draft.stops.stream()
        .map(s -> new Point(s.box, s.devices.stream().map(UnwiredDevice::name).toList(), s.hot, s.hots, s.wiredThrough, Origin.of(s.span)))
        .toList();
    List<Section> sections = new ArrayList<>();
    for (int i = 0; i < draft.legs.size(); i++) {
      BranchDraft.Leg leg = draft.legs.get(i);
      sections.add(
          new Section(
              leg.from(), leg.to(), leg.length(), leg.wiring(), leg.surroundings(), uses.get(i), leg.status(), leg.origin()));
    }
    return Optional.of(
        new Branch(
            draft.name(), Scope.label(draft.tree.label()), draft.panel, draft.hots, wiring.get(), points, sections, draft.legsNamed,
            draft.use, Scope.status(draft.tree.status()),
            new Origin(draft.tree.name().span(), draft.tree.span())));
  }
}
