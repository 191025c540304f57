package wattle.syntax;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;

/**
 * What stands behind {@code where} in a count or a sum. The grammar gives it all that follows; but in {@code count of d in
 * r.devices where d.family is "light" is at least 2} the last comparison is of the count, since nothing that is true or false
 * is at least 2. What follows that comparison belongs with it.
 *
 * @param filter what narrows the list
 * @param around what is said of the count or sum
 */
record WhereClaim(Tree.Claim filter, UnaryOperator<Tree.Claim> around) {
  /** A count or sum with its filter, and around it what was said of it. */
  static Tree.Claim parted(Optional<Tree.Claim> where, Function<Optional<Tree.Claim>, Tree.Claim> gathered) {
    Optional<WhereClaim> parted = where.flatMap(WhereClaim::split);
    return parted.map(p -> p.around.apply(gathered.apply(Optional.of(p.filter)))).orElseGet(() -> gathered.apply(where));
  }

  private static Optional<WhereClaim> split(Tree.Claim claim) {
    if (claim instanceof Tree.ClaimComparison c && isTruth(c.left())) {
      return Optional.of(new WhereClaim(c.left(), count -> new Tree.ClaimComparison(c.comparator(), count, c.right(), c.span())));
    }
    if (claim instanceof Tree.ClaimAnd and) {
      return inFirst(and.left(), left -> new Tree.ClaimAnd(left, and.right(), and.span()))
          .or(() -> inSecond(and.right(), right -> new Tree.ClaimAnd(and.left(), right, and.span())));
    }
    if (claim instanceof Tree.ClaimOr or) {
      return inFirst(or.left(), left -> new Tree.ClaimOr(left, or.right(), or.bare(), or.span()))
          .or(() -> inSecond(or.right(), right -> new Tree.ClaimOr(or.left(), right, or.bare(), or.span())));
    }
    return Optional.empty();
  }

  /** The count ends within the first of two claims: the second is no longer of the filter. */
  private static Optional<WhereClaim> inFirst(Tree.Claim first, UnaryOperator<Tree.Claim> whole) {
    return split(first).map(s -> new WhereClaim(s.filter, count -> whole.apply(s.around.apply(count))));
  }

  /** It ends within the second: the first is all of the filter. */
  private static Optional<WhereClaim> inSecond(Tree.Claim second, UnaryOperator<Tree.Claim> whole) {
    return split(second).map(s -> new WhereClaim(whole.apply(s.filter), s.around));
  }

  private static boolean isTruth(Tree.Claim claim) {
    return claim instanceof Tree.ClaimComparison || claim instanceof Tree.ClaimStated || claim instanceof Tree.ClaimNot
        || claim instanceof Tree.ClaimAnd || claim instanceof Tree.ClaimOr || claim instanceof Tree.ClaimEach;
  }
}
