package wattle.syntax;

import java.util.Optional;
import java.util.function.BiFunction;
import wattle.finding.Span;
import wattle.syntax.grammar.WattleParser.*;

/** Reads trials, expectations and silences. */
final class TrialReader {
  private final Pieces pieces;

  TrialReader(Pieces pieces) {
    this.pieces = pieces;
  }

  Optional<Tree.Item> trial(TrialContext context) {
    return pieces
        .word(context.word())
        .map(
            name -> new Tree.Trial(
                name, pieces.text(context.STRING()), Pieces.each(context.event(), this::event),
                pieces.span(context)));
  }

  private Optional<Tree.Event> event(EventContext context) {
    Span span = pieces.span(context);
    if (context instanceof OpenConductorContext c) {
      Optional<Tree.Path> at = c.path().size() > 1 ? pieces.path(c.path(1)) : Optional.empty();
      return both(
          pieces.word(c.conductorName()), c.path().isEmpty() ? Optional.empty() : pieces.path(c.path(0)),
          (conductor, of) -> new Tree.OpenConductor(conductor, of, at, span));
    }
    if (context instanceof OpenBreakerContext c) {
      return both(
          pieces.dotted(c.path()), pieces.slotSpan(c.slotSpan()),
          (panel, slots) -> new Tree.OpenBreaker(panel, slots, span));
    }
    if (context instanceof OpenServiceNeutralContext) {
      return Optional.of(new Tree.OpenServiceNeutral(span));
    }
    if (context instanceof OpenMainContext c) {
      return pieces.dotted(c.path()).map(panel -> new Tree.OpenMain(panel, span));
    }
    if (context instanceof LoseContext c) {
      return pieces.dotted(c.path()).map(service -> new Tree.Lose(service, span));
    }
    if (context instanceof TransferContext c) {
      return c.path().size() < 2
          ? Optional.empty()
          : both(pieces.dotted(c.path(0)), pieces.path(c.path(1)), (panel, to) -> new Tree.Transfer(panel, to, span));
    }
    if (context instanceof GiveContext c) {
      return both(pieces.path(c.path()), pieces.amount(c.amount()), (path, amount) -> new Tree.Give(path, amount, span));
    }
    if (context instanceof LoosenContext c) {
      Optional<Tree.Expression> added = pieces.amount(c.amount());
      return added.isEmpty()
          ? Optional.empty()
          : both(
              pieces.word(c.conductorName()), pieces.path(c.path()),
              (conductor, at) -> new Tree.Loosen(conductor, at, added.get(), span));
    }
    if (context instanceof LiftContext c) {
      return pieces.path(c.path()).map(at -> new Tree.Lift(at, pieces.amount(c.amount()), span));
    }
    if (context instanceof FaultContext c) {
      Optional<Tree.Path> at = pieces.path(c.path());
      return at.isEmpty() || c.conductorName().size() < 2
          ? Optional.empty()
          : both(
              pieces.word(c.conductorName(0)), pieces.word(c.conductorName(1)),
              (from, to) -> new Tree.Fault(from, to, at.get(), pieces.amount(c.amount()), span));
    }
    if (context instanceof MoveContext c) {
      return both(
          pieces.dotted(c.path()), pieces.slotSpan(c.slotSpan()), (branch, slots) -> new Tree.Move(branch, slots, span));
    }
    if (context instanceof SwapContext c) {
      return pieces.path(c.path()).map(at -> new Tree.Swap(at, span));
    }
    if (context instanceof DrawContext c) {
      return draw(c, span);
    }
    if (context instanceof TurnContext c) {
      return pieces.path(c.path()).map(path -> new Tree.Turn(path, Pieces.hasToken(c, "on"), span));
    }
    return Optional.empty(); // nothing could be read; the parser has said so
  }

  private Optional<Tree.Event> draw(DrawContext context, Span span) {
    java.util.List<Tree.Expression> amounts = new java.util.ArrayList<>();
    pieces.amount(context.amount()).ifPresent(amounts::add);
    Optional<Tree.Word> behavior = Optional.empty();
    for (DrawItemContext item : context.drawItem()) {
      if (item.amount() != null) {
        pieces.amount(item.amount()).ifPresent(amounts::add);
      } else {
        behavior = Optional.of(pieces.word(item.getStart()));
      }
    }
    Optional<Tree.Word> as = behavior;
    return pieces.path(context.path()).map(path -> new Tree.Draw(path, amounts, as, span));
  }

  Optional<Tree.Item> expectation(ExpectationContext context) {
    if (context.subject() != null) {
      return opening(context);
    }
    MeasureContext measure = context.measure();
    Optional<Tree.Expression> value = pieces.expression(context.expression());
    if (measure == null || value.isEmpty()) {
      return Optional.empty();
    }
    Tree.Relation relation = Pieces.hasToken(context, "most")
        ? Tree.Relation.AT_MOST
        : Pieces.hasToken(context, "least") ? Tree.Relation.AT_LEAST : Tree.Relation.IS;
    Optional<Tree.Word> link = measure.subject() == null || measure.getChildCount() < 2
        ? Optional.empty()
        : Optional.of(
            pieces.word(
                ((org.antlr.v4.runtime.tree.TerminalNode) measure.getChild(measure.getChildCount() - 2))
                    .getSymbol()));
    return Optional.of(
        new Tree.Expectation(
            Pieces.each(measure.word(), pieces::word),
            link,
            pieces.subject(measure.subject()),
            relation,
            value,
            pieces.amount(context.amount()),
            pieces.dotted(context.path()),
            pieces.text(context.STRING()),
            pieces.span(measure),
            pieces.span(context)));
  }

  /** {@code expect breaker P/2+4 trips in leak}. */
  private Optional<Tree.Item> opening(ExpectationContext context) {
    return pieces.subject(context.subject())
        .map(
            subject -> new Tree.Expectation(
                java.util.List.of(), Optional.empty(), Optional.of(subject),
                Pieces.hasToken(context, "trips") ? Tree.Relation.TRIPS : Tree.Relation.HOLDS, Optional.empty(), Optional.empty(),
                pieces.dotted(context.path()), pieces.text(context.STRING()), pieces.span(context.subject()), pieces.span(context)));
  }

  Optional<Tree.Item> silence(SilenceContext context) {
    return both(
        pieces.word(context.word()),
        pieces.text(context.STRING()),
        (rule, reason) -> new Tree.Silence(rule, pieces.subject(context.subject()), Optional.empty(), reason, pieces.span(context)));
  }

  private static <A, B, T extends R, R> Optional<R> both(Optional<A> a, Optional<B> b, BiFunction<A, B, T> make) {
    return a.isPresent() && b.isPresent() ? Optional.of(make.apply(a.get(), b.get())) : Optional.empty();
  }
}
