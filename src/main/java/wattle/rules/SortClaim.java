package wattle.rules;

import java.util.List;
import java.util.Optional;
import wattle.syntax.Tree;

/**
 * The part of a rule's condition that is the same for all things of one sort, as {@link Kind#sortOf} has it: a rule about receptacles need
 * not be asked of each light whether that is one.
 */
final class SortClaim {
  private final String thing;
  private final Kind kind;

  private SortClaim(String thing, Kind kind) {
    this.thing = thing;
    this.kind = kind;
  }

  /**
   * The conditions of a claim, joined by <em>and</em>, that rest on the sort of a thing alone.
   *
   * @param thing name of the thing in the rule
   * @return absent where no condition does
   */
  static Optional<Tree.Claim> of(Tree.Claim claim, String thing, Kind kind) {
    return new SortClaim(thing, kind).part(claim);
  }

  private Optional<Tree.Claim> part(Tree.Claim claim) {
    if (claim instanceof Tree.ClaimAnd and) {
      Optional<Tree.Claim> left = part(and.left());
      Optional<Tree.Claim> right = part(and.right());
      return left.isPresent() && right.isPresent()
          ? Optional.of(new Tree.ClaimAnd(left.get(), right.get(), and.span()))
          : left.or(() -> right);
    }
    return isOfSort(claim) ? Optional.of(claim) : Optional.empty();
  }

  private boolean isOfSort(Tree.Claim claim) {
    if (claim instanceof Tree.ClaimText || claim instanceof Tree.ClaimFigure) {
      return true;
    }
    if (claim instanceof Tree.ClaimProperty property) {
      return isOfSort(property.path().words());
    }
    if (claim instanceof Tree.ClaimStated stated) {
      return isOfSort(stated.operand());
    }
    if (claim instanceof Tree.ClaimComparison comparison) {
      return isOfSort(comparison.left()) && isOfSort(comparison.right());
    }
    if (claim instanceof Tree.ClaimNot not) {
      return isOfSort(not.operand());
    }
    if (claim instanceof Tree.ClaimAnd and) {
      return isOfSort(and.left()) && isOfSort(and.right());
    }
    return claim instanceof Tree.ClaimOr or && isOfSort(or.left()) && isOfSort(or.right());
  }

  /** A path such as {@code r.wiring.type}, each step of which is the same for all things of the sort before it. */
  private boolean isOfSort(List<Tree.Word> path) {
    if (!path.get(0).text().equals(thing)) {
      return path.get(0).text().equals("limit");
    }
    Kind at = kind;
    for (Tree.Word step : path.subList(1, path.size())) {
      Property property = at == null ? null : Vocabulary.of(at).get(step.text());
      if (property == null || !property.ofSort()) {
        return false;
      }
      at = property.type() instanceof Type.Thing next ? next.kind() : null;
    }
    return path.size() > 1;
  }
}
