package wattle.rules;

import java.util.stream.Stream;
import wattle.syntax.Tree;

/**
 * Both sides of the comparisons that a claim rests on, but for lists that are gone through, counted or added up: what they name ends with
 * them.
 */
final class Compared {
  private Compared() {}

  static Stream<Tree.Claim> in(Tree.Claim claim) {
    if (claim instanceof Tree.ClaimComparison comparison) {
      return Stream.of(comparison.left(), comparison.right()).filter(Compared::namesNothing);
    }
    if (claim instanceof Tree.ClaimAnd and) {
      return Stream.concat(in(and.left()), in(and.right()));
    }
    if (claim instanceof Tree.ClaimOr or) {
      return Stream.concat(in(or.left()), in(or.right()));
    }
    if (claim instanceof Tree.ClaimNot not) {
      return in(not.operand());
    }
    if (claim instanceof Tree.ClaimIf iff) {
      return Stream.concat(in(iff.condition()), in(iff.then()));
    }
    return Stream.empty();
  }

  private static boolean namesNothing(Tree.Claim side) {
    return side instanceof Tree.ClaimProperty
        || side instanceof Tree.ClaimFigure
        || side instanceof Tree.ClaimNegation negation && namesNothing(negation.operand())
        || side instanceof Tree.ClaimArithmetic sum && namesNothing(sum.left()) && namesNothing(sum.right());
  }
}
