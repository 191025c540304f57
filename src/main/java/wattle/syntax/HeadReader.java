package wattle.syntax;

import java.util.Optional;
import wattle.syntax.grammar.WattleParser.*;

/** Reads what stands at the head of a plan: its title, what it uses, its constants, the dwelling. */
final class HeadReader {
  private final Pieces pieces;

  HeadReader(Pieces pieces) {
    this.pieces = pieces;
  }

  Optional<Tree.Item> heading(HeadingContext context) {
    return Optional.of(
        new Tree.Heading(
            pieces.text(context.STRING(0)),
            context.STRING().size() > 1 ? pieces.text(context.STRING(1)) : Optional.empty(),
            pieces.span(context)));
  }

  Optional<Tree.Item> use(UseContext context) {
    Optional<Tree.Word> kind = pieces.word(context.useKind());
    if (context.STRING() != null) {
      return pieces
          .text(context.STRING())
          .map(t -> new Tree.Use(kind, new Tree.Word(t.value(), t.span()), true, pieces.span(context)));
    }
    return context.useName() == null || context.useName().exception != null
        ? Optional.empty()
        : Optional.of(new Tree.Use(kind, pieces.spanned(context.useName()), false, pieces.span(context)));
  }

  Optional<Tree.Item> let(LetContext context) {
    Optional<Tree.Expression> value = pieces.expression(context.expression());
    return value.isEmpty()
        ? Optional.empty()
        : pieces.word(context.word()).map(name -> new Tree.Let(name, value.get(), pieces.span(context)));
  }

  Optional<Tree.Item> dwelling(DwellingContext context) {
    return Optional.of(
        new Tree.Dwelling(
            pieces.word(context.word()),
            pieces.text(context.STRING()),
            Pieces.each(context.panelName(), p -> pieces.dotted(p.path())),
            Pieces.each(context.fact(), pieces::fact),
            pieces.span(context)));
  }
}
