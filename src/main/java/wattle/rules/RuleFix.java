package wattle.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import wattle.finding.Edit;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.syntax.Tree;

/** What a rule says can be done: an order, and the same as edits where every one of them can be made in the text at hand. */
record RuleFix(Template order, List<RuleEdit> edits) {
  RuleFix {
    edits = List.copyOf(edits);
  }

  /** Absent where a part of it does not fit the rule, which is a finding. */
  static Optional<RuleFix> check(Tree.RuleFix tree, PathChecker paths, Names names, Consumer<Finding> findings) {
    List<RuleEdit> edits = new ArrayList<>();
    tree.edits().forEach(e -> RuleEdit.check(e, paths, names, findings).ifPresent(edits::add));
    return edits.size() < tree.edits().size()
        ? Optional.empty()
        : Template.check(tree.order(), paths, names, findings).map(order -> new RuleFix(order, edits));
  }

  /** The house changes by any edit of a rule, so that none is made unasked. */
  Fix fill(Filling from) {
    String words = order.fill(from);
    List<Edit> made = new ArrayList<>();
    for (RuleEdit edit : edits) {
      Optional<Edit> one = edit.make(from.facts(), from.named());
      if (one.isEmpty()) {
        return Fix.of(words);
      }
      made.add(one.get());
    }
    return new Fix(words, made, Fix.Safety.OFFERED);
  }
}
