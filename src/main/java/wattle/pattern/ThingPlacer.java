package wattle.pattern;

import wattle.syntax.Tree;

/** What a house is made of, by its kind, as it is in one placement. */
final class ThingPlacer {
  private final Frame frame;

  ThingPlacer(Frame frame) {
    this.frame = frame;
  }

  Tree.Let let(Tree.Let tree) {
    return new Tree.Let(frame.declared(tree.name()), new PiecePlacer(frame).expression(tree.value()), frame.span(tree.span()));
  }

  Tree.Item thing(Tree.Item item) {
    if (item instanceof Tree.Room room) {
      return new RoomPlacer(frame).room(room);
    }
    if (item instanceof Tree.Branch branch) {
      return new BranchPlacer(frame).branch(branch);
    }
    if (item instanceof Tree.Panel panel) {
      return new SupplyPlacer(frame).panel(panel);
    }
    if (item instanceof Tree.Dwelling dwelling) {
      return new SupplyPlacer(frame).dwelling(dwelling);
    }
    if (item instanceof Tree.Service service) {
      return new SupplyPlacer(frame).service(service);
    }
    if (item instanceof Tree.Raceway raceway) {
      return new SupplyPlacer(frame).raceway(raceway);
    }
    if (item instanceof Tree.Trial trial) {
      return new TrialPlacer(frame).trial(trial);
    }
    if (item instanceof Tree.Expectation expectation) {
      return new TrialPlacer(frame).expectation(expectation);
    }
    if (item instanceof Tree.Silence silence) {
      return new TrialPlacer(frame).silence(silence);
    }
    throw new AssertionError(item);
  }
}
