package wattle.rules;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import wattle.evaluate.Evaluator;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Span;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;
import wattle.syntax.Tree;

/**
 * Checks the types and dimensions of claims and makes them ready to run. A claim about something that the plan does not
 * tell is neither true nor false; <em>and</em>, <em>or</em> and <em>not</em> carry that on (Kleene's logic), and a
 * requirement that is not known to fail raises nothing.
 */
final class ClaimChecker {
  private final PathChecker paths;
  private final Consumer<Finding> findings;
  private final Evaluator evaluator;

  ClaimChecker(PathChecker paths, Consumer<Finding> findings) {
    this.paths = paths;
    this.findings = findings;
    this.evaluator = new Evaluator(Map.of(), findings);
  }

  /** A claim that must be true or false. */
  Optional<Term> truth(Tree.Claim claim, Names names) {
    Optional<Typed> typed = check(claim, names);
    if (typed.isPresent() && !(typed.get().type() instanceof Type.Truth)) {
      return mismatch(claim.span(), "a claim that is true or false is expected here", typed.get().type()).map(Typed::term);
    }
    return typed.map(Typed::term);
  }

  Optional<Typed> check(Tree.Claim claim, Names names) {
    if (claim instanceof Tree.ClaimFigure figure) {
      return figure(figure);
    }
    if (claim instanceof Tree.ClaimText text) {
      String value = text.text().value();
      return Optional.of(new Typed(Type.WORDS, (f, n) -> value));
    }
    if (claim instanceof Tree.ClaimProperty property) {
      return paths.check(property.path().words().stream().map(Tree.Word::text).toList(), property.span(), names);
    }
    if (claim instanceof Tree.ClaimNegation negation) {
      return check(negation.operand(), names).flatMap(t -> t.type() instanceof Type.Figure
          ? Optional.of(new Typed(t.type(), (f, n) -> t.term().of(f, n) instanceof Quantity q ? q.negate() : null))
          : mismatch(negation.operand().span(), "a figure is expected here", t.type()));
    }
    if (claim instanceof Tree.ClaimArithmetic arithmetic) {
      return arithmetic(arithmetic, names);
    }
    if (claim instanceof Tree.ClaimStated stated) {
      boolean wanted = !stated.not();
      return check(stated.operand(), names).map(t -> new Typed(Type.TRUTH, (f, n) -> {
        Boolean is = f.isStated(t.term(), n);
        return is == null ? null : is == wanted;
      }));
    }
    if (claim instanceof Tree.ClaimComparison comparison) {
      return comparison(comparison, names);
    }
    if (claim instanceof Tree.ClaimNot not) {
      return truth(not.operand(), names).map(t -> new Typed(Type.TRUTH, (f, n) -> t.of(f, n) instanceof Boolean b ? !b : null));
    }
    if (claim instanceof Tree.ClaimAnd and) {
      return both(and.left(), and.right(), names, ClaimChecker::and);
    }
    if (claim instanceof Tree.ClaimOr or) {
      or.bare().ifPresent(this::ambiguous);
      return both(or.left(), or.right(), names, ClaimChecker::or);
    }
    if (claim instanceof Tree.ClaimIf iff) {
      // «If a then b» holds wherever a does not.
      return both(iff.condition(), iff.then(), names, (a, b) -> (f, n) -> {
        Object condition = a.of(f, n);
        return Boolean.TRUE.equals(condition) ? b.of(f, n) : condition == null ? null : Boolean.TRUE;
      });
    }
    if (claim instanceof Tree.ClaimEach each) {
      return each(each, names);
    }
    if (claim instanceof Tree.ClaimCount count) {
      return list(count.list(), count.name(), count.filter(), names, (things, place, filter, inner) -> Optional.of(
          new Typed(Type.number(), (f, n) -> {
            int number = 0;
            Collection<?> all = things(things, f, n);
            boolean doubtful = all instanceof Incomplete;
            for (Object thing : all) {
              n[place] = thing;
              int before = f.doubted();
              Object counts = filter.isEmpty() ? Boolean.TRUE : filter.get().of(f, n);
              number += Boolean.TRUE.equals(counts) ? 1 : 0;
              doubtful |= counts == null && f.doubted() != before;
            }
            return doubtful ? null : Quantity.of(number, Units.ONE);
          })));
    }
    if (claim instanceof Tree.ClaimGathered gathered) {
      return gathered(gathered, names);
    }
    throw new AssertionError(claim);
  }

  private Optional<Typed> figure(Tree.ClaimFigure claim) {
    if (claim.value() instanceof Tree.Figure figure && figure.unit().isPresent()) {
      String unit = figure.unit().get().text();
      if (unit.equals("AWG") || unit.equals("kcmil")) {
        Optional<WireSize> size = WireSize.parse(Quantity.plain(figure.number(), 6) + " " + unit);
        return size.map(s -> new Typed(Type.SIZE, (f, n) -> s));
      }
    }
    return evaluator.valueOf(claim.value()).map(q -> new Typed(new Type.Figure(q.dimension()), (f, n) -> q));
  }

  private Optional<Typed> arithmetic(Tree.ClaimArithmetic claim, Names names) {
    Optional<Typed> left = check(claim.left(), names);
    Optional<Typed> right = check(claim.right(), names);
    if (left.isEmpty() || right.isEmpty()) {
      return Optional.empty();
    }
    if (!(left.get().type() instanceof Type.Figure l)) {
      return mismatch(claim.left().span(), "a figure is expected here", left.get().type());
    }
    if (!(right.get().type() instanceof Type.Figure r)) {
      return mismatch(claim.right().span(), "a figure is expected here", right.get().type());
    }
    boolean additive = claim.operator() == Tree.Operator.PLUS || claim.operator() == Tree.Operator.MINUS;
    if (additive && !l.dimension().equals(r.dimension())) {
      return mismatch(claim.right().span(), l.dimension().trade() + " is expected here", r);
    }
    Dimension dimension = switch (claim.operator()) {
      case PLUS, MINUS -> l.dimension();
      case TIMES -> l.dimension().times(r.dimension());
      case DIVIDED_BY -> l.dimension().per(r.dimension());
    };
    Term a = left.get().term();
    Term b = right.get().term();
    Tree.Operator operator = claim.operator();
    return Optional.of(new Typed(new Type.Figure(dimension), (f, n) -> {
      if (!(a.of(f, n) instanceof Quantity x) || !(b.of(f, n) instanceof Quantity y)) {
        return null;
      }
      Quantity result = switch (operator) {
        case PLUS -> x.plus(y);
        case MINUS -> x.minus(y);
        case TIMES -> x.times(y);
        case DIVIDED_BY -> x.dividedBy(y);
      };
      return Double.isFinite(result.si()) ? result : null;
    }));
  }

  private Optional<Typed> comparison(Tree.ClaimComparison claim, Names names) {
    Optional<Typed> left = check(claim.left(), names);
    Optional<Typed> right = check(claim.right(), names);
    if (left.isEmpty() || right.isEmpty()) {
      return Optional.empty();
    }
    Type l = left.get().type();
    Type r = right.get().type();
    Term a = left.get().term();
    Term b = right.get().term();
    Tree.Comparator comparator = claim.comparator();
    if (comparator == Tree.Comparator.INCLUDES) {
      return includes(claim, l, a, r, b);
    }
    boolean equality = comparator == Tree.Comparator.IS || comparator == Tree.Comparator.IS_NOT;
    boolean figures = l instanceof Type.Figure x && r instanceof Type.Figure y && x.dimension().equals(y.dimension());
    boolean sizes = l instanceof Type.Size && r instanceof Type.Size;
    boolean things = l instanceof Type.Thing x && r instanceof Type.Thing y && x.kind() == y.kind();
    boolean words = l instanceof Type.Words && r instanceof Type.Words || l instanceof Type.Truth && r instanceof Type.Truth;
    if (l instanceof Type.Truth && r instanceof Type.Figure) {
      findings.accept(
          Finding.error("rule-type-mismatch", "what is true or false is compared with a figure")
              .at(claim.span(), "true or false on the left")
              .because("Behind where is what narrows a list; a property that is true or false takes in the comparison that follows it.")
              .fix("put a count or sum in parentheses before comparing it: (count of … where …) is at least 2")
              .build());
      return Optional.empty();
    }
    if (!figures && !sizes && !(equality && (words || things))) {
      return mismatch(claim.right().span(), l.text() + " is expected here", r);
    }
    if (equality && !figures) {
      boolean wanted = comparator == Tree.Comparator.IS;
      return Optional.of(new Typed(Type.TRUTH, (f, n) -> {
        Object x = a.of(f, n);
        Object y = b.of(f, n);
        return x == null || y == null ? null : (things ? x == y : x.equals(y)) == wanted;
      }));
    }
    return Optional.of(new Typed(Type.TRUTH, (f, n) -> Order.holds(comparator, a.of(f, n), b.of(f, n))));
  }

  private Optional<Typed> includes(Tree.ClaimComparison claim, Type l, Term a, Type r, Term b) {
    if (!(r instanceof Type.Words)) {
      return mismatch(claim.right().span(), "a word is expected here", r);
    }
    if (claim.left() instanceof Tree.ClaimText list) {
      Set<String> listed = new HashSet<>();
      for (String word : list.text().value().split(",")) {
        listed.add(word.strip());
      }
      return Optional.of(new Typed(Type.TRUTH, (f, n) -> b.of(f, n) instanceof String word ? listed.contains(word) : null));
    }
    if (!(l instanceof Type.WordSet)) {
      return mismatch(claim.left().span(), "a set of words is expected here", l);
    }
    return Optional.of(new Typed(Type.TRUTH,
        (f, n) -> a.of(f, n) instanceof Collection<?> set && b.of(f, n) instanceof String word ? set.contains(word) : null));
  }

  private interface Join {
    Term of(Term left, Term right);
  }

  private Optional<Typed> both(Tree.Claim left, Tree.Claim right, Names names, Join join) {
    Optional<Term> a = truth(left, names);
    Optional<Term> b = truth(right, names);
    return a.isPresent() && b.isPresent() ? Optional.of(new Typed(Type.TRUTH, join.of(a.get(), b.get()))) : Optional.empty();
  }

  /** Readers take <em>a or b and c</em> in either way, and a wrong guess lets a fault pass: what belongs together is said. */
  private void ambiguous(Span and) {
    findings.accept(
        Finding.error("rule-or-beside-and", "'or' is beside 'and' without parentheses")
            .at(and, "taken together first")
            .because("It can be read in two ways, and a rule that is read the wrong way misses faults.")
            .fix(Fix.offered("put it in parentheses", and, "(" + and.text() + ")"))
            .build());
  }

  private static Term and(Term a, Term b) {
    return (f, n) -> {
      Object x = a.of(f, n);
      if (Boolean.FALSE.equals(x)) {
        return false;
      }
      Object y = b.of(f, n);
      return Boolean.FALSE.equals(y) ? (Object) false : x == null ? null : y;
    };
  }

  private static Term or(Term a, Term b) {
    return (f, n) -> {
      Object x = a.of(f, n);
      if (Boolean.TRUE.equals(x)) {
        return true;
      }
      Object y = b.of(f, n);
      return Boolean.TRUE.equals(y) ? (Object) true : x == null ? null : y;
    };
  }

  // ---- Lists

  private interface OverList {
    Optional<Typed> of(Term things, int place, Optional<Term> filter, Names inner);
  }

  private Optional<Typed> list(
      Tree.Path path, Tree.Word name, Optional<Tree.Claim> filter, Names names, OverList then) {
    Optional<Typed> list = paths.check(path.words().stream().map(Tree.Word::text).toList(), path.span(), names);
    if (list.isEmpty()) {
      return Optional.empty();
    }
    if (!(list.get().type() instanceof Type.Things things)) {
      return mismatch(path.span(), "several things are expected here", list.get().type());
    }
    Names before = names.copy();
    int place = names.add(name.text(), new Type.Thing(things.kind()));
    Optional<Term> where = filter.flatMap(c -> truth(c, names));
    Optional<Typed> result = filter.isPresent() && where.isEmpty() ? Optional.empty() : then.of(list.get().term(), place, where, names);
    names.remove(name.text(), before);
    return result;
  }

  private static Collection<?> things(Term list, Facts facts, Object[] named) {
    int before = facts.doubted();
    if (list.of(facts, named) instanceof Collection<?> things) {
      return things;
    }
    return facts.doubted() == before ? List.of() : new Incomplete(List.of());
  }

  private Optional<Typed> each(Tree.ClaimEach claim, Names names) {
    return list(claim.list(), claim.name(), claim.filter(), names,
        (things, place, filter, inner) -> truth(claim.has(), inner).map(has -> new Typed(Type.TRUTH, (f, n) -> {
          Collection<?> all = things(things, f, n);
          boolean unknown = all instanceof Incomplete;
          for (Object thing : all) {
            n[place] = thing;
            Object counts = filter.isEmpty() ? Boolean.TRUE : filter.get().of(f, n);
            if (Boolean.FALSE.equals(counts)) {
              continue;
            }
            Object value = has.of(f, n);
            boolean decides = claim.amount() == Tree.Amount.EVERY ? Boolean.FALSE.equals(value) : Boolean.TRUE.equals(value);
            if (decides && counts != null) {
              return claim.amount() == Tree.Amount.SOME;
            }
            unknown |= value == null || counts == null;
          }
          return unknown ? null : (Object) (claim.amount() != Tree.Amount.SOME);
        })));
  }

  private Optional<Typed> gathered(Tree.ClaimGathered claim, Names names) {
    return list(claim.list(), claim.name(), claim.filter(), names, (things, place, filter, inner) -> {
      Optional<Typed> value = check(claim.value(), inner);
      if (value.isEmpty()) {
        return value;
      }
      if (!(value.get().type() instanceof Type.Figure)) {
        return mismatch(claim.value().span(), "a figure is expected here", value.get().type());
      }
      Term term = value.get().term();
      Dimension dimension = ((Type.Figure) value.get().type()).dimension();
      // The sum of none is nought; the largest of none is not known.
      Quantity nothing = Quantity.of(0, Units.of(dimension).stream().findFirst().orElse(Units.ONE));
      return Optional.of(new Typed(value.get().type(), (f, n) -> {
        Quantity result = claim.gathering() == Tree.Gathering.SUM ? nothing : null;
        Collection<?> all = things(things, f, n);
        boolean doubtful = all instanceof Incomplete;
        for (Object thing : all) {
          n[place] = thing;
          int before = f.doubted();
          Object counts = filter.isPresent() ? filter.get().of(f, n) : Boolean.TRUE;
          Object gathered = Boolean.TRUE.equals(counts) ? term.of(f, n) : null;
          if (!(gathered instanceof Quantity q)) {
            doubtful |= !Boolean.FALSE.equals(counts) && f.doubted() != before;
            continue;
          }
          result = result == null || result == nothing ? q : switch (claim.gathering()) {
            case SUM -> result.plus(q);
            case MOST -> q.si() > result.si() ? q : result;
            case LEAST -> q.si() < result.si() ? q : result;
          };
        }
        return doubtful ? null : result;
      }));
    });
  }

  private Optional<Typed> mismatch(Span span, String expected, Type found) {
    findings.accept(Finding.error("rule-type-mismatch", "a claim of a rule does not fit together").at(span, expected)
        .because("This is " + found.text() + ".").build());
    return Optional.empty();
  }
}
