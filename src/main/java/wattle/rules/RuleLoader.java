package wattle.rules;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import wattle.finding.Checked;
import wattle.finding.Citation;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.NearNames;
import wattle.finding.Severity;
import wattle.library.Library;
import wattle.library.RuleText;
import wattle.memo.Once;
import wattle.syntax.Tree;

/** Checks the rules of a library. A rule with a mistake in it is left out, and the mistake is a finding in its file. */
public final class RuleLoader {
  private final Library library;
  private final Collection<String> tested;
  private final List<Finding> findings = new ArrayList<>();

  private RuleLoader(Library library, Collection<String> tested) {
    this.library = library;
    this.tested = tested;
  }

  /** All rules of a library, in the order read, each checked to its last word. */
  public static Checked<List<Rule>> load(Library library) {
    return load(library, List.of());
  }

  /**
   * All rules of a library, in the order read.
   *
   * @param tested packs that are known to have no mistake: what their rules say is made ready when one of them is broken
   */
  static Checked<List<Rule>> load(Library library, Collection<String> tested) {
    RuleLoader loader = new RuleLoader(library, tested);
    List<Rule> rules = new ArrayList<>();
    library.rules().values().forEach(text -> loader.rule(text).ifPresent(rules::add));
    return new Checked<>(List.copyOf(rules), loader.findings);
  }

  private Optional<Rule> rule(RuleText text) {
    Tree.Rule tree = text.tree();
    List<Finding> own = new ArrayList<>();
    Consumer<Finding> report = own::add;
    PathChecker paths = new PathChecker(library, report);
    ClaimChecker claims = new ClaimChecker(paths, report);
    Optional<Kind> kind = kind(tree, report);
    if (kind.isEmpty()) {
      findings.addAll(own);
      return Optional.empty();
    }
    Names names = new Names();
    names.add(tree.scope().orElseThrow().name().text(), new Type.Thing(kind.get()));
    Optional<Term> filter = Optional.empty();
    List<Rule.Let> lets = new ArrayList<>();
    // A value may be used by the filter, so values are named first.
    for (Tree.RuleLet let : tree.lets()) {
      claims.check(let.value(), names).ifPresent(t -> lets.add(new Rule.Let(names.add(let.name().text(), t.type()), t.term())));
    }
    names.askAnew();
    if (tree.scope().get().filter().isPresent()) {
      filter = claims.truth(tree.scope().get().filter().get(), names);
    }
    Work work = work(tree, kind.get(), claims, names, report);
    boolean letsFirst = lets.stream().anyMatch(l -> names.isAsked(l.place()));
    List<Term> requirements = new ArrayList<>();
    tree.requirements().forEach(c -> claims.truth(c, names).ifPresent(requirements::add));
    if (tree.requirements().isEmpty()) {
      report.accept(missing(tree, "a require line"));
    }
    if (tree.headline().isEmpty() || tree.severity().isEmpty()) {
      report.accept(missing(tree, "an otherwise line such as otherwise error \"…\""));
    }
    if (tree.marks().isEmpty()) {
      report.accept(missing(tree, "an at line that says where"));
    }
    for (Tree.RuleException exception : tree.exceptions()) {
      if (exception.denied() == exception.plan().isPresent()) {
        report.accept(
            Finding.error("rule-incomplete", "an exception of rule '" + tree.name().text() + "' is incomplete")
                .at(exception.span(), exception.denied() ? "no exception cannot have a plan" : "a plan that it lets pass is missing")
                .build());
      }
    }
    Once<Telling> telling = new Once<>(() -> telling(text, names, report));
    if (!tested.contains(text.pack())) {
      telling.get();
    }
    findings.addAll(own);
    if (!own.isEmpty()) {
      return Optional.empty();
    }
    Optional<Term> sort = sort(tree, kind.get(), claims, names);
    List<Citation> citations = Stream.concat(
        text.pack().equals("common") ? library.article(tree.name().text()).stream() : Stream.empty(),
        tree.citations().stream().map(c -> new Citation(c.work().value(), c.place().map(Tree.Text::value).orElse(""), c.fromMemory())))
        .toList();
    return Optional.of(
        new Rule(
            tree.name().text(), text.pack(), tree.title().map(Tree.Text::value).orElse(""), severity(tree), kind.get(), work,
            names.size(), filter, sort, lets, letsFirst, requirements, telling, tree.reason().map(Tree.Text::value).orElse(""), citations,
            tree.accept().map(Tree.Text::value), reject(tree),
            tree.name().span(), tree));
  }

  /** What a rule says; a mistake in it is reported, and what has one left out. */
  private Telling telling(RuleText text, Names names, Consumer<Finding> report) {
    Tree.Rule tree = text.tree();
    PathChecker paths = new PathChecker(library, report);
    Optional<Template> headline = tree.headline().flatMap(t -> Template.check(inTerms(text, t), paths, names, report));
    List<Rule.Place> places = tree.marks().stream()
        .map(m -> new Tree.RuleMark(m.place(), m.words().map(w -> inTerms(text, w)), m.span()))
        .flatMap(m -> place(m, paths, names, report).stream()).toList();
    List<Template> notes = templates(tree.notes().stream().map(t -> inTerms(text, t)).toList(), paths, names, report);
    List<RuleFix> fixes = tree.fixes().stream()
        .map(f -> new Tree.RuleFix(inTerms(text, f.order()), f.edits(), f.span()))
        .flatMap(f -> RuleFix.check(f, paths, names, report).stream()).toList();
    // What does not fit was reported when the requirements were read.
    ClaimChecker claims = new ClaimChecker(new PathChecker(library, known -> {
    }), known -> {
    });
    List<Term> compared = tree.requirements().stream().flatMap(Compared::in).flatMap(c -> claims.check(c, names).stream())
        .filter(t -> t.type() instanceof Type.Figure).map(Typed::term).toList();
    return new Telling(compared, headline.orElse(Template.NONE), places, notes, fixes);
  }

  /** The conditions of its filter that hold for all things of a sort, or for none. */
  private static Optional<Term> sort(Tree.Rule tree, Kind kind, ClaimChecker claims, Names names) {
    Tree.RuleScope scope = tree.scope().orElseThrow();
    return scope.filter().flatMap(f -> SortClaim.of(f, scope.name().text(), kind)).flatMap(c -> claims.truth(c, names));
  }

  /** A text of the common pack in the terms of the code in force; holes stay as they are. */
  private Tree.Text inTerms(RuleText of, Tree.Text text) {
    String words = of.pack().equals("common") ? library.inTerms(text.value()) : text.value();
    return words.equals(text.value()) ? text : new Tree.Text(words, text.span());
  }

  private static List<Template> templates(List<Tree.Text> texts, PathChecker paths, Names names, Consumer<Finding> report) {
    return texts.stream().flatMap(t -> Template.check(t, paths, names, report).stream()).toList();
  }

  private static Severity severity(Tree.Rule tree) {
    return Severity.valueOf(tree.severity().orElseThrow().text().toUpperCase(java.util.Locale.ROOT));
  }

  private static Optional<Kind> kind(Tree.Rule tree, Consumer<Finding> report) {
    if (tree.scope().isEmpty()) {
      report.accept(missing(tree, "a line such as for each run r"));
      return Optional.empty();
    }
    Tree.Word word = tree.scope().get().kind();
    Optional<Kind> kind = Kind.of(word.text());
    if (kind.isEmpty()) {
      List<String> known = java.util.Arrays.stream(Kind.values()).map(Kind::word).toList();
      Finding.Builder finding = Finding.error("rule-kind-unknown", "rules cannot check '" + word.text() + "'").at(word.span(),
          String.join(", ", known) + " are known");
      NearNames.of(word.text(), known).forEach(n -> finding.fix(Fix.safe("write " + n, word.span(), n)));
      report.accept(finding.build());
    }
    return kind;
  }

  /** A clause is asked of every rule, so that whom it binds is never a matter of what its conditions happen to say. */
  private static Work work(Tree.Rule tree, Kind kind, ClaimChecker claims, Names names, Consumer<Finding> report) {
    if (tree.work().isEmpty()) {
      report.accept(missing(tree, "the work that it applies to: for new work, or for all work where it is a danger at any age"));
      return Work.ALL;
    }
    Tree.RuleWork work = tree.work().get();
    if (!work.all() && work.which().isEmpty() && !Work.hasStatus(kind)) {
      report.accept(Finding.error("rule-incomplete", "rule '" + tree.name().text() + "' does not say what is new work for a " + kind.word())
          .at(work.span(), "a " + kind.word() + " is neither new nor existing as a whole")
          .fix("write what makes it new, as in for new work where some r in d.rooms has r.status is \"new\"").build());
    }
    return new Work(work.all(), work.which().flatMap(c -> claims.truth(c, names)));
  }

  private static Finding missing(Tree.Rule tree, String what) {
    return Finding.error("rule-incomplete", "rule '" + tree.name().text() + "' lacks " + what)
        .at(tree.name().span(), "without it, the rule finds nothing").build();
  }

  private static Optional<Rule.Place> place(Tree.RuleMark mark, PathChecker paths, Names names, Consumer<Finding> report) {
    Optional<Typed> thing = paths.check(mark.place().words().stream().map(Tree.Word::text).toList(), mark.place().span(), names);
    if (thing.isPresent() && !(thing.get().type() instanceof Type.Thing)) {
      report.accept(Finding.error("rule-place-unknown", thing.get().type().text() + " has no place in the text")
          .at(mark.place().span(), "a thing such as r.wiring is expected here").build());
      return Optional.empty();
    }
    Optional<Template> words = mark.words().flatMap(t -> Template.check(t, paths, names, report));
    return thing.map(t -> new Rule.Place(t.term(), words));
  }

  /** The plan that must raise the rule: as written, or the accepted one with one text replaced. */
  private static Optional<String> reject(Tree.Rule tree) {
    return tree.reject().flatMap(r -> {
      if (r.plan().isPresent() || tree.accept().isEmpty() || r.replaced().isEmpty() || r.by().isEmpty()) {
        return r.plan().map(Tree.Text::value);
      }
      return Optional.of(tree.accept().get().value().replace(r.replaced().get().value(), r.by().get().value()));
    });
  }
}
