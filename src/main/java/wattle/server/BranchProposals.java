package wattle.server;

import org.eclipse.lsp4j.CompletionItemKind;

/** Within a branch: where it starts, the boxes that wait for a run, what a run may say of itself. */
final class BranchProposals {
  private final Question question;
  private final CursorPlace place;
  private final Proposals proposals;
  private final NameProposals names;

  BranchProposals(Question question, CursorPlace place, Proposals proposals, NameProposals names) {
    this.question = question;
    this.place = place;
    this.proposals = proposals;
    this.names = names;
  }

  /** Before its block opens. */
  void head() {
    if (place.last().equals("by")) {
      new CableProposals(question.analysis(), proposals).forBranch(place.second());
      names.parameters();
    } else if (!laid() && place.before().size() > 1) {
      proposals.words("of a branch", "by", "is", "in", "bundled", "through", "buried", "supported", "held", "from-edge", "nail-plated");
    } else if (place.before().size() == 1) {
      waiting();
    }
  }

  /** Names that a slot line feeds and that nothing bears yet. */
  private void waiting() {
    question.analysis().house().panels().values().stream()
        .flatMap(p -> p.breakers().stream())
        .filter(b -> b.target() instanceof wattle.model.Breaker.Target.Unknown)
        .forEach(
            b -> proposals.add(
                ((wattle.model.Breaker.Target.Unknown) b.target()).name(), "fed by " + b.id(), CompletionItemKind.Function));
  }

  void propose() {
    boolean betweenDashes = place.count("--") % 2 == 1;
    if (betweenDashes) {
      run();
    } else if (place.isAtStart()) {
      names.panels();
      reached();
    } else if (place.last().equals("--")) {
      names.unwiredFirst();
      proposals.words("the rest is not drawn yet", "later");
    } else if (place.last().equals("on")) {
      proposals.words("a hot of the branch", "A", "B");
    } else {
      proposals.words("how a device is joined", "on", "through", "pigtail");
    }
  }

  private void run() {
    if (place.last().equals("by")) {
      new CableProposals(question.analysis(), proposals).forBranch(place.blockName());
      names.parameters();
    } else if (place.isAfterNumber()) {
      proposals.units("m", "ft", "in");
    } else if (place.last().equals("--")) {
      proposals.words("no length yet", "later");
      question.analysis().derived().names().stream()
          .filter(o -> o.declares() && o.thing().kind() == Named.Kind.CONSTANT)
          .forEach(o -> proposals.add("(" + o.thing().name() + ")", "constant", CompletionItemKind.Constant));
    } else if (!laid()) {
      proposals.words("of a run", "by", "in", "bundled", "through", "buried", "supported", "held", "from-edge", "nail-plated");
    }
  }

  /** What is asked after the word that says how a run is laid. */
  private boolean laid() {
    switch (place.last()) {
      case "in" -> proposals.words("where it runs", "attic", "wall", "basement", "crawl-space", "outside");
      case "through" ->
        question.analysis().house().raceways().keySet().forEach(r -> proposals.add(r, "raceway", CompletionItemKind.Variable));
      case "is" -> proposals.words("what a branch is for", "small-appliance", "laundry", "bathroom", "lighting");
      default -> {
        return false;
      }
    }
    return true;
  }

  /** Boxes that the branch has reached: a fork starts at one. */
  private void reached() {
    wattle.model.Branch branch = question.analysis().house().branches().get(place.blockName());
    if (branch != null) {
      branch.points().stream()
          .flatMap(p -> p.box().stream())
          .forEach(b -> proposals.add(b, "reached by this branch", CompletionItemKind.Field));
    }
  }
}
