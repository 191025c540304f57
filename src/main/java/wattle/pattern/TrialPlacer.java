package wattle.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.syntax.Tree;

/** Trials, expectations and silences as they are in one placement. */
final class TrialPlacer {
  private final Frame frame;
  private final PiecePlacer pieces;

  TrialPlacer(Frame frame) {
    this.frame = frame;
    this.pieces = new PiecePlacer(frame);
  }

  Tree.Trial trial(Tree.Trial tree) {
    List<Tree.Event> events = new ArrayList<>();
    tree.events().forEach(e -> event(e).ifPresent(events::add));
    return new Tree.Trial(frame.declared(tree.name()), pieces.text(tree.label()), events, frame.span(tree.span()));
  }

  private Optional<Tree.Event> event(Tree.Event event) {
    if (event instanceof Tree.OpenBreaker open) {
      return pieces
          .slots(open.slots())
          .map(slots -> new Tree.OpenBreaker(frame.reference(open.panel()), slots, frame.span(open.span())));
    }
    if (event instanceof Tree.Move move) {
      return pieces
          .slots(move.slots())
          .map(slots -> new Tree.Move(frame.reference(move.branch()), slots, frame.span(move.span())));
    }
    return Optional.of(whole(event));
  }

  private Tree.Event whole(Tree.Event event) {
    if (event instanceof Tree.Draw draw) {
      return new Tree.Draw(
          frame.reference(draw.path()), pieces.expressions(draw.amounts()), frame.plain(draw.behavior()),
          frame.span(draw.span()));
    }
    if (event instanceof Tree.Turn turn) {
      return new Tree.Turn(frame.reference(turn.path()), turn.on(), frame.span(turn.span()));
    }
    if (event instanceof Tree.OpenConductor open) {
      return new Tree.OpenConductor(
          frame.plain(open.conductor()), frame.reference(open.of()), open.at().map(frame::reference), frame.span(open.span()));
    }
    if (event instanceof Tree.OpenServiceNeutral open) {
      return new Tree.OpenServiceNeutral(frame.span(open.span()));
    }
    if (event instanceof Tree.Loosen loosen) {
      return new Tree.Loosen(
          frame.plain(loosen.conductor()), frame.reference(loosen.at()), pieces.expression(loosen.added()),
          frame.span(loosen.span()));
    }
    if (event instanceof Tree.Lift lift) {
      return new Tree.Lift(frame.reference(lift.at()), pieces.expression(lift.leakage()), frame.span(lift.span()));
    }
    if (event instanceof Tree.Fault fault) {
      return new Tree.Fault(
          frame.plain(fault.from()), frame.plain(fault.to()), frame.reference(fault.at()), pieces.expression(fault.through()),
          frame.span(fault.span()));
    }
    if (event instanceof Tree.OpenMain open) {
      return new Tree.OpenMain(frame.reference(open.panel()), frame.span(open.span()));
    }
    if (event instanceof Tree.Lose lose) {
      return new Tree.Lose(frame.reference(lose.service()), frame.span(lose.span()));
    }
    if (event instanceof Tree.Transfer transfer) {
      return new Tree.Transfer(frame.reference(transfer.panel()), frame.reference(transfer.position()), frame.span(transfer.span()));
    }
    if (event instanceof Tree.Give give) {
      return new Tree.Give(frame.reference(give.path()), pieces.expression(give.amount()), frame.span(give.span()));
    }
    if (event instanceof Tree.Swap swap) {
      return new Tree.Swap(frame.reference(swap.at()), frame.span(swap.span()));
    }
    throw new AssertionError(event);
  }

  Tree.Expectation expectation(Tree.Expectation tree) {
    return new Tree.Expectation(
        frame.plain(tree.measure()), frame.plain(tree.link()), pieces.subject(tree.subject()), tree.relation(),
        pieces.expression(tree.value()), pieces.expression(tree.within()), tree.trial().map(frame::reference),
        pieces.text(tree.label()), frame.span(tree.measured()), frame.span(tree.span()));
  }

  /** A silence in a pattern holds for what the pattern makes, and nowhere else. */
  Tree.Silence silence(Tree.Silence tree) {
    return new Tree.Silence(
        frame.plain(tree.rule()), pieces.subject(tree.at()), Optional.of(frame.name()), frame.text(tree.reason()),
        frame.span(tree.span()));
  }
}
