package wattle.compiler;

import java.util.List;
import java.util.Optional;
import wattle.conductors.NeutralHeat;
import wattle.finding.Finding;
import wattle.finding.Mistake;
import wattle.library.Library;
import wattle.model.Branch;
import wattle.model.House;
import wattle.trials.GreatestNeutral;

/** How warm the neutral gets whose hots come from one leg, added to what the binder finds: it knows no tables of conductors. */
final class SharedNeutralHeat {

  private SharedNeutralHeat() {}

  static List<Finding> added(List<Finding> findings, House house, Library library) {
    return findings.stream().noneMatch(Mistake.SHARED_NEUTRAL_SAME_LEG::is)
        ? findings
        : findings.stream().map(f -> Mistake.SHARED_NEUTRAL_SAME_LEG.is(f) ? added(f, house, library) : f).toList();
  }

  private static Finding added(Finding finding, House house, Library library) {
    Optional<Branch> branch = finding.subject().map(house.branches()::get);
    return branch.flatMap(b -> GreatestNeutral.of(house, b).flatMap(w -> NeutralHeat.of(house, library, b, w)))
        .map(heat -> finding.remarked(heat.sentence())).orElse(finding);
  }
}
