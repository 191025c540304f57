package wattle.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.ParserRuleContext;
import wattle.finding.Span;
import wattle.syntax.grammar.WattleParser.*;

/** Reads the claims of rules. */
final class ClaimReader {
  private final Pieces pieces;

  ClaimReader(Pieces pieces) {
    this.pieces = pieces;
  }

  /** Empty where there is none, or where a mistake left nothing of it. */
  Optional<Tree.Claim> claim(ClaimContext context) {
    if (context == null || context.exception != null) {
      return Optional.empty();
    }
    if (context instanceof ClaimGroupContext group) {
      return claim(group.claim());
    }
    if (context instanceof ClaimFigureContext figure) {
      return pieces.quantity(figure.quantity()).map(q -> new Tree.ClaimFigure(q, pieces.span(context)));
    }
    if (context instanceof ClaimTextContext text) {
      return pieces.text(text.STRING()).map(t -> new Tree.ClaimText(t, pieces.span(context)));
    }
    if (context instanceof ClaimPropertyContext property) {
      return path(property.quality()).map(p -> new Tree.ClaimProperty(p, pieces.span(context)));
    }
    if (context instanceof ClaimNegationContext negation) {
      return claim(negation.claim()).map(c -> new Tree.ClaimNegation(c, pieces.span(context)));
    }
    if (context instanceof ClaimNotContext not) {
      return claim(not.claim()).map(c -> new Tree.ClaimNot(c, pieces.span(context)));
    }
    if (context instanceof ClaimStatedContext stated) {
      boolean not = Pieces.hasToken(stated, "not");
      return claim(stated.claim()).map(c -> new Tree.ClaimStated(c, not, pieces.span(context)));
    }
    if (context instanceof ClaimEachContext each) {
      return each(each);
    }
    if (context instanceof ClaimCountContext count) {
      Optional<Tree.Path> list = path(count.quality());
      return pieces
          .word(count.mark())
          .flatMap(
              n -> list.map(
                  l -> WhereClaim.parted(
                      claim(count.claim()), filter -> new Tree.ClaimCount(n, l, filter, pieces.span(context)))));
    }
    if (context instanceof ClaimSumOfContext gathered) {
      return gathered(gathered);
    }
    return two(context);
  }

  private Optional<Tree.Claim> two(ClaimContext context) {
    List<ClaimContext> sides = context.getRuleContexts(ClaimContext.class);
    if (sides.size() < 2) {
      return Optional.empty();
    }
    Optional<Tree.Claim> left = claim(sides.get(0));
    Optional<Tree.Claim> right = claim(sides.get(1));
    if (left.isEmpty() || right.isEmpty()) {
      return Optional.empty();
    }
    Tree.Claim l = left.get();
    Tree.Claim r = right.get();
    var span = pieces.span(context);
    if (context instanceof ClaimAndContext) {
      return Optional.of(new Tree.ClaimAnd(l, r, span));
    }
    if (context instanceof ClaimOrContext) {
      Optional<Span> bare = sides.stream().filter(ClaimAndContext.class::isInstance).findFirst().map(pieces::span);
      return Optional.of(new Tree.ClaimOr(l, r, bare, span));
    }
    if (context instanceof ClaimIfContext) {
      return Optional.of(new Tree.ClaimIf(l, r, span));
    }
    if (context instanceof ClaimProductContext) {
      boolean times = Pieces.hasToken(context, "*") || Pieces.hasToken(context, "×");
      return Optional.of(new Tree.ClaimArithmetic(times ? Tree.Operator.TIMES : Tree.Operator.DIVIDED_BY, l, r, span));
    }
    if (context instanceof ClaimSumContext) {
      Tree.Operator operator = Pieces.hasToken(context, "+") ? Tree.Operator.PLUS : Tree.Operator.MINUS;
      return Optional.of(new Tree.ClaimArithmetic(operator, l, r, span));
    }
    if (context instanceof ClaimComparisonContext comparison) {
      return Optional.of(new Tree.ClaimComparison(comparator(comparison.comparator()), l, r, span));
    }
    throw new AssertionError(context.getClass());
  }

  private static Tree.Comparator comparator(ComparatorContext context) {
    if (Pieces.hasToken(context, "includes")) {
      return Tree.Comparator.INCLUDES;
    }
    if (Pieces.hasToken(context, "not")) {
      return Tree.Comparator.IS_NOT;
    }
    if (Pieces.hasToken(context, "most")) {
      return Tree.Comparator.AT_MOST;
    }
    if (Pieces.hasToken(context, "least")) {
      return Tree.Comparator.AT_LEAST;
    }
    if (Pieces.hasToken(context, "above")) {
      return Tree.Comparator.ABOVE;
    }
    return Pieces.hasToken(context, "below") ? Tree.Comparator.BELOW : Tree.Comparator.IS;
  }

  private Optional<Tree.Claim> each(ClaimEachContext context) {
    Tree.Amount amount = Pieces.hasToken(context, "every")
        ? Tree.Amount.EVERY
        : Pieces.hasToken(context, "some") ? Tree.Amount.SOME : Tree.Amount.NO;
    Optional<Tree.Word> name = pieces.word(context.mark());
    Optional<Tree.Path> list = path(context.quality());
    if (name.isEmpty() || list.isEmpty() || context.claim().isEmpty()) {
      return Optional.empty();
    }
    boolean filtered = context.claim().size() > 1;
    Optional<Tree.Claim> filter = filtered ? claim(context.claim(0)) : Optional.empty();
    return claim(context.claim(filtered ? 1 : 0))
        .map(has -> new Tree.ClaimEach(amount, name.get(), list.get(), filter, has, pieces.span(context)));
  }

  private Optional<Tree.Claim> gathered(ClaimSumOfContext context) {
    Tree.Gathering gathering = Pieces.hasToken(context, "sum")
        ? Tree.Gathering.SUM
        : Pieces.hasToken(context, "most") ? Tree.Gathering.MOST : Tree.Gathering.LEAST;
    Optional<Tree.Word> name = pieces.word(context.mark());
    Optional<Tree.Path> list = path(context.quality());
    if (name.isEmpty() || list.isEmpty() || context.claim().isEmpty()) {
      return Optional.empty();
    }
    Optional<Tree.Claim> filter = context.claim().size() > 1 ? claim(context.claim(1)) : Optional.empty();
    return claim(context.claim(0))
        .map(
            v -> WhereClaim.parted(
                filter, f -> new Tree.ClaimGathered(gathering, v, name.get(), list.get(), f, pieces.span(context))));
  }

  /** A thing or property as a path of words. */
  Optional<Tree.Path> path(QualityContext context) {
    if (context == null || context.getStart() == null || context.exception != null) {
      return Optional.empty();
    }
    List<Tree.Word> words = new ArrayList<>();
    words.add(pieces.word(context.getStart()));
    for (ParserRuleContext step : context.getRuleContexts(ParserRuleContext.class)) {
      pieces.word(step).ifPresent(words::add);
    }
    return Optional.of(new Tree.Path(words, pieces.span(context)));
  }
}
