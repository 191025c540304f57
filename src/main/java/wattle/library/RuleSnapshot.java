package wattle.library;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import wattle.finding.Citation;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.syntax.Tree;

/**
 * Rules in the snapshot: what it takes to run them. Titles, reasons and samples stay in the text, and so do places: a
 * compiled rule has been checked, so nothing will ever be shown at its lines.
 */
final class RuleSnapshot {
  private static final int FIGURE = 0;
  private static final int LENGTH = 1;
  private static final int TEXT = 2;
  private static final int PROPERTY = 3;
  private static final int NEGATION = 4;
  private static final int ARITHMETIC = 5;
  private static final int STATED = 6;
  private static final int COMPARISON = 7;
  private static final int NOT = 8;
  private static final int AND = 9;
  private static final int OR = 10;
  private static final int IF = 11;
  private static final int EACH = 12;
  private static final int COUNT = 13;
  private static final int GATHERED = 14;

  private static final Span NOWHERE = new Span(new Source("the standard library", ""), 0, 0);

  private final SnapshotReader in;

  private RuleSnapshot(SnapshotReader in) {
    this.in = in;
  }

  // ---- Writing

  static void write(SnapshotWriter out, RuleText rule) {
    Tree.Rule tree = rule.tree();
    out.text(rule.pack());
    out.text(tree.name().text());
    Tree.RuleScope scope = tree.scope().orElseThrow();
    out.text(scope.kind().text());
    out.text(scope.name().text());
    optional(out, scope.filter(), c -> claim(out, c));
    Tree.RuleWork work = tree.work().orElseThrow();
    out.flag(work.all());
    optional(out, work.which(), c -> claim(out, c));
    list(out, tree.lets(), let -> {
      out.text(let.name().text());
      claim(out, let.value());
    });
    list(out, tree.requirements(), c -> claim(out, c));
    out.text(tree.severity().orElseThrow().text());
    out.text(tree.headline().orElseThrow().value());
    list(out, tree.marks(), mark -> {
      path(out, mark.place());
      optional(out, mark.words(), w -> out.text(w.value()));
    });
    list(out, tree.notes(), t -> out.text(t.value()));
    list(out, tree.fixes(), fix -> {
      out.text(fix.order().value());
      list(out, fix.edits(), edit -> {
        path(out, edit.place());
        out.number(edit.manner().ordinal());
        out.text(edit.text().value());
      });
    });
    out.citations(tree.citations().stream()
        .map(c -> new Citation(c.work().value(), c.place().map(Tree.Text::value).orElse(""), c.fromMemory())).toList());
  }

  private static <T> void optional(SnapshotWriter out, Optional<T> value, Consumer<T> write) {
    out.flag(value.isPresent());
    value.ifPresent(write);
  }

  private static <T> void list(SnapshotWriter out, List<T> values, Consumer<T> write) {
    out.number(values.size());
    values.forEach(write);
  }

  private static void path(SnapshotWriter out, Tree.Path path) {
    list(out, path.words(), w -> out.text(w.text()));
  }

  private static void claim(SnapshotWriter out, Tree.Claim claim) {
    if (claim instanceof Tree.ClaimFigure figure && figure.value() instanceof Tree.Figure plain) {
      out.number(FIGURE);
      out.real(plain.number());
      optional(out, plain.unit(), u -> out.text(u.text()));
    } else if (claim instanceof Tree.ClaimFigure figure && figure.value() instanceof Tree.FeetInches length) {
      out.number(LENGTH);
      out.real(length.feet());
      out.real(length.inches());
    } else if (claim instanceof Tree.ClaimText text) {
      out.number(TEXT);
      out.text(text.text().value());
    } else if (claim instanceof Tree.ClaimProperty property) {
      out.number(PROPERTY);
      path(out, property.path());
    } else if (claim instanceof Tree.ClaimNegation negation) {
      out.number(NEGATION);
      claim(out, negation.operand());
    } else if (claim instanceof Tree.ClaimArithmetic arithmetic) {
      two(out, ARITHMETIC, arithmetic.operator().ordinal(), arithmetic.left(), arithmetic.right());
    } else if (claim instanceof Tree.ClaimStated stated) {
      out.number(STATED);
      out.flag(stated.not());
      claim(out, stated.operand());
    } else if (claim instanceof Tree.ClaimComparison comparison) {
      two(out, COMPARISON, comparison.comparator().ordinal(), comparison.left(), comparison.right());
    } else if (claim instanceof Tree.ClaimNot not) {
      out.number(NOT);
      claim(out, not.operand());
    } else if (claim instanceof Tree.ClaimAnd and) {
      two(out, AND, 0, and.left(), and.right());
    } else if (claim instanceof Tree.ClaimOr or) {
      two(out, OR, 0, or.left(), or.right());
    } else if (claim instanceof Tree.ClaimIf iff) {
      two(out, IF, 0, iff.condition(), iff.then());
    } else if (claim instanceof Tree.ClaimEach each) {
      over(out, EACH, each.amount().ordinal(), each.name(), each.list(), each.filter());
      claim(out, each.has());
    } else if (claim instanceof Tree.ClaimCount count) {
      over(out, COUNT, 0, count.name(), count.list(), count.filter());
    } else if (claim instanceof Tree.ClaimGathered gathered) {
      over(out, GATHERED, gathered.gathering().ordinal(), gathered.name(), gathered.list(), gathered.filter());
      claim(out, gathered.value());
    } else {
      throw new AssertionError(claim);
    }
  }

  private static void two(SnapshotWriter out, int kind, int sort, Tree.Claim left, Tree.Claim right) {
    out.number(kind);
    out.number(sort);
    claim(out, left);
    claim(out, right);
  }

  private static void over(
      SnapshotWriter out, int kind, int sort, Tree.Word name, Tree.Path list, Optional<Tree.Claim> filter) {
    out.number(kind);
    out.number(sort);
    out.text(name.text());
    path(out, list);
    optional(out, filter, c -> claim(out, c));
  }

  // ---- Reading

  static RuleText read(SnapshotReader in) {
    return new RuleSnapshot(in).rule();
  }

  private RuleText rule() {
    String pack = in.text();
    Tree.Word name = word();
    Tree.RuleScope scope = new Tree.RuleScope(word(), word(), optional(this::claim), NOWHERE);
    Tree.RuleWork work = new Tree.RuleWork(in.flag(), optional(this::claim), NOWHERE);
    List<Tree.RuleLet> lets = list(() -> new Tree.RuleLet(word(), claim(), NOWHERE));
    List<Tree.Claim> requirements = list(this::claim);
    Tree.Word severity = word();
    Tree.Text headline = text();
    List<Tree.RuleMark> marks = list(() -> new Tree.RuleMark(path(), optional(this::text), NOWHERE));
    List<Tree.Text> notes = list(this::text);
    List<Tree.RuleFix> fixes = list(() -> new Tree.RuleFix(text(), list(this::edit), NOWHERE));
    List<Tree.Cited> citations = new ArrayList<>();
    for (Citation citation : in.citations()) {
      Optional<Tree.Text> place = citation.place().isEmpty() ? Optional.empty() : Optional.of(new Tree.Text(citation.place(), NOWHERE));
      citations.add(new Tree.Cited(new Tree.Text(citation.work(), NOWHERE), place, citation.verify(), NOWHERE));
    }
    return new RuleText(
        pack,
        new Tree.Rule(
            name, Optional.empty(), Optional.of(scope), Optional.of(work), lets, requirements, Optional.of(severity),
            Optional.of(headline), marks, notes, fixes, Optional.empty(), citations, Optional.empty(), List.of(), Optional.empty(),
            NOWHERE));
  }

  private Tree.Word word() {
    return new Tree.Word(in.text(), NOWHERE);
  }

  private Tree.Text text() {
    return new Tree.Text(in.text(), NOWHERE);
  }

  private Tree.RuleEdit edit() {
    return new Tree.RuleEdit(path(), Tree.EditManner.values()[in.number()], text(), NOWHERE);
  }

  private Tree.Path path() {
    return new Tree.Path(list(this::word), NOWHERE);
  }

  private <T> Optional<T> optional(Supplier<T> read) {
    return in.flag() ? Optional.of(read.get()) : Optional.empty();
  }

  private <T> List<T> list(Supplier<T> read) {
    List<T> values = new ArrayList<>();
    for (int n = in.number(); n > 0; n--) {
      values.add(read.get());
    }
    return values;
  }

  private Tree.Claim claim() {
    int kind = in.number();
    switch (kind) {
      case FIGURE :
        return new Tree.ClaimFigure(new Tree.Figure(in.real(), optional(this::word), NOWHERE), NOWHERE);
      case LENGTH :
        return new Tree.ClaimFigure(new Tree.FeetInches(in.real(), in.real(), NOWHERE), NOWHERE);
      case TEXT :
        return new Tree.ClaimText(text(), NOWHERE);
      case PROPERTY :
        return new Tree.ClaimProperty(path(), NOWHERE);
      case NEGATION :
        return new Tree.ClaimNegation(claim(), NOWHERE);
      case STATED :
        boolean not = in.flag();
        return new Tree.ClaimStated(claim(), not, NOWHERE);
      case NOT :
        return new Tree.ClaimNot(claim(), NOWHERE);
      default :
        return sorted(kind, in.number());
    }
  }

  /** Claims that say which of several they are. */
  private Tree.Claim sorted(int kind, int sort) {
    switch (kind) {
      case ARITHMETIC :
        return new Tree.ClaimArithmetic(Tree.Operator.values()[sort], claim(), claim(), NOWHERE);
      case COMPARISON :
        return new Tree.ClaimComparison(Tree.Comparator.values()[sort], claim(), claim(), NOWHERE);
      case AND :
        return new Tree.ClaimAnd(claim(), claim(), NOWHERE);
      case OR :
        return new Tree.ClaimOr(claim(), claim(), Optional.empty(), NOWHERE);
      case IF :
        return new Tree.ClaimIf(claim(), claim(), NOWHERE);
      case EACH :
        return new Tree.ClaimEach(Tree.Amount.values()[sort], word(), path(), optional(this::claim), claim(), NOWHERE);
      case COUNT :
        return new Tree.ClaimCount(word(), path(), optional(this::claim), NOWHERE);
      case GATHERED :
        Tree.Word name = word();
        Tree.Path list = path();
        Optional<Tree.Claim> filter = optional(this::claim);
        return new Tree.ClaimGathered(Tree.Gathering.values()[sort], claim(), name, list, filter, NOWHERE);
      default :
        throw new AssertionError("no claim is of kind " + kind);
    }
  }
}
