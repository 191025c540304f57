package wattle.syntax;

import java.util.List;
import java.util.Optional;
import wattle.finding.Span;
import wattle.syntax.grammar.WattleParser.*;

/** Reads patterns and their placements. */
final class PatternReader {
  private final Pieces pieces;

  PatternReader(Pieces pieces) {
    this.pieces = pieces;
  }

  Optional<Tree.Item> pattern(PatternContext context) {
    return pieces
        .word(context.word())
        .map(
            name -> new Tree.Pattern(
                name, parameters(context.parameters()), context.parameters() == null || context.parameters().exception == null,
                Pieces.each(context.thing(), new ThingReader(pieces)), pieces.span(context)));
  }

  private List<Tree.Word> parameters(ParametersContext context) {
    return context == null ? List.of() : Pieces.each(context.parameter(), p -> pieces.word(p.word()));
  }

  private List<Tree.Argument> arguments(ArgumentsContext context) {
    return context == null ? List.of() : Pieces.each(context.argument(), this::argument);
  }

  Optional<Tree.Item> placing(PlacingContext context) {
    if (context.word().size() < 2 || context.exception != null || context.arguments() != null && context.arguments().exception != null) {
      return Optional.empty();
    }
    Optional<Tree.Word> pattern = pieces.word(context.word(0));
    Optional<Tree.Word> name = pieces.word(context.word(1));
    if (pattern.isEmpty() || name.isEmpty()) {
      return Optional.empty();
    }
    Span arguments = pattern.get().span().after().to(name.get().span());
    return Optional.of(
        new Tree.Placing(
            pattern.get(), arguments(context.arguments()), name.get(),
            pieces.repetition(context.repetition()), listed(arguments), pieces.span(context)));
  }

  Optional<Tree.Item> overriding(OverridingContext context) {
    return pieces
        .dotted(context.path())
        .map(
            placement -> new Tree.Overriding(
                placement, Pieces.each(context.thing(), new ThingReader(pieces)),
                Pieces.each(context.leftOut(), c -> pieces.dotted(c.path())), pieces.span(context)));
  }

  /** The parentheses with what is in them, or the place where they would stand. */
  private static Span listed(Span between) {
    int end = between.text().lastIndexOf(')');
    return end < 0
        ? between.source().span(between.start(), between.start())
        : between.source().span(between.start(), between.start() + end + 1);
  }

  private Optional<Tree.Argument> argument(ArgumentContext context) {
    Optional<Tree.Text> text = pieces.text(context.STRING());
    Optional<Tree.Expression> figure = pieces.expression(context.expression());
    Optional<Tree.CableWiring> cable = pieces.cable(context.cabling());
    return text.isEmpty() && figure.isEmpty() && cable.isEmpty()
        ? Optional.empty()
        : Optional.of(new Tree.Argument(figure, text, cable, pieces.span(context)));
  }
}
