package wattle.pattern;

import wattle.syntax.Tree;

/** Branches as they are in one placement. */
final class BranchPlacer {
  private final Frame frame;
  private final PiecePlacer pieces;

  BranchPlacer(Frame frame) {
    this.frame = frame;
    this.pieces = new PiecePlacer(frame);
  }

  Tree.Branch branch(Tree.Branch tree) {
    return new Tree.Branch(
        frame.declared(tree.name()), pieces.text(tree.label()), pieces.wiring(tree.wiring()),
        pieces.surroundings(tree.surroundings()), frame.plain(tree.kind()), pieces.status(tree.status()),
        PiecePlacer.each(tree.chains(), this::chain), frame.span(tree.span()));
  }

  private Tree.Chain chain(Tree.Chain chain) {
    return new Tree.Chain(place(chain.from()), PiecePlacer.each(chain.runs(), this::run), frame.span(chain.span()));
  }

  private Tree.Place place(Tree.Place place) {
    return new Tree.Place(
        frame.reference(place.path()), frame.plain(place.hot()), frame.plain(place.wired()), frame.span(place.span()));
  }

  private Tree.Run run(Tree.Run run) {
    return new Tree.Run(
        pieces.expression(run.length()), run.later(), pieces.wiring(run.wiring()), pieces.surroundings(run.surroundings()),
        pieces.status(run.status()), frame.span(run.dashes()), place(run.to()), frame.span(run.span()));
  }
}
