package wattle.bind;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import wattle.evaluate.Evaluator;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.KnownNames;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.finding.Placed;
import wattle.finding.Span;
import wattle.library.Library;
import wattle.model.Status;
import wattle.model.Words;
import wattle.quantity.Quantity;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/** What the binders of one plan share: the library, constants, findings and what is assumed. */
final class Scope {
  /** Words of a list that stand beside one that is not in it; all of them are in its reason. */
  private static final int SHOWN = 5;

  private final Library library;
  private final Map<String, Quantity> constants;
  private final Set<String> damagedWords;
  private final List<Finding> findings = new ArrayList<>();
  private final List<String> assumed = new ArrayList<>();
  private final List<Pattern> damagedNames;
  private final Set<String> spoiled = new HashSet<>();
  private final Map<Span, List<String>> nearInPattern = new HashMap<>();
  private int doubts;
  private final Evaluator evaluator;

  /** @param spoiled names of what could not be placed, which has been reported */
  Scope(Library library, List<PlanTree> files, Set<String> spoiled) {
    this(library, new HashMap<>(), damagedWords(files, spoiled));
  }

  private Scope(Library library, Map<String, Quantity> constants, Set<String> damagedWords) {
    this.library = library;
    this.constants = constants;
    this.damagedWords = damagedWords;
    this.damagedNames = damagedWords.stream().filter(word -> word.indexOf('{') >= 0).map(Scope::filled).toList();
    this.evaluator = new Evaluator(constants, this::tell);
  }

  private static Set<String> damagedWords(List<PlanTree> files, Set<String> spoiled) {
    Set<String> words = files.stream().flatMap(f -> f.damagedWords().stream()).collect(Collectors.toSet());
    words.addAll(spoiled);
    return words;
  }

  /** What a name with holes may have become. */
  private static Pattern filled(String name) {
    return Pattern.compile(Pattern.quote(name).replaceAll("\\{[^}]*\\}", "\\\\E[^.]+\\\\Q"));
  }

  /**
   * A scope for things that another thread binds, once the constants are known. What is bound in it counts only where it was
   * quiet: it knows nothing of what was reported or spoiled elsewhere.
   */
  Scope aside() {
    return new Scope(library, constants, damagedWords);
  }

  /** Tells what is wrong with an expression; a name that is nowhere may be that of a constant on a line that could not be read. */
  private void tell(Finding finding) {
    boolean nowhere = Mistake.NAME_UNKNOWN.is(finding) && finding.place().filter(m -> mayStandInDamage(m.span().text())).isPresent();
    if (!nowhere) {
      findings.add(finding);
    }
  }

  Library library() {
    return library;
  }

  Evaluator evaluator() {
    return evaluator;
  }

  Map<String, Quantity> constants() {
    return constants;
  }

  List<Finding> findings() {
    return findings;
  }

  /** The value of an expression that is evaluated again elsewhere, where what is wrong with it is reported. */
  Optional<Quantity> quietly(Tree.Expression written) {
    return new Evaluator(constants, finding -> {}).valueOf(written);
  }

  void report(Finding.Builder finding) {
    findings.add(finding.build());
  }

  /** Notes something that the plan does not say and that is taken as usual. */
  void assume(String what) {
    assumed.add(what);
  }

  /** What was taken as usual, each once, in the order in which it was first noted. */
  List<String> assumed() {
    return List.copyOf(new LinkedHashSet<>(assumed));
  }

  /** A moment in binding, to ask later what happened since. */
  record Moment(int findings, int doubts, int assumed) {}

  Moment now() {
    return new Moment(findings.size(), doubts, assumed.size());
  }

  /** What was assumed since; absent where something was reported, or would have been but for a mistake elsewhere. */
  Optional<List<String>> quietSince(Moment then) {
    return findings.size() == then.findings && doubts == then.doubts
        ? Optional.of(List.copyOf(assumed.subList(then.assumed, assumed.size())))
        : Optional.empty();
  }

  /** Notes a name that a reported mistake has spoiled: whatever else is said of it would report that mistake again. */
  void spoil(String name) {
    spoiled.add(name);
  }

  /**
   * Whether a name is spoiled by a reported mistake, or stands on a line that could not be read, so that its absence elsewhere
   * says nothing.
   */
  boolean mayStandInDamage(String name) {
    doubts++;
    if (spoiled.contains(name)) {
      return true;
    }
    if (damagedWords.isEmpty()) {
      return false;
    }
    for (String word : name.split("\\.")) {
      if (damagedWords.contains(word) || damagedNames.stream().anyMatch(n -> n.matcher(word).matches())) {
        return true;
      }
    }
    return false;
  }

  /** The status that is written, else that of what the thing belongs to. */
  static Status status(Optional<Tree.Status> written, Status ofWhole) {
    return written.isPresent() ? status(written) : ofWhole;
  }

  static Status status(Optional<Tree.Status> written) {
    return written
        .map(
            s -> switch (s.word().text()) {
              case "existing" -> Status.EXISTING;
              case "to-remove" -> Status.TO_REMOVE;
              default -> Status.NEW;
            })
        .orElse(Status.NEW);
  }

  static Optional<String> label(Optional<Tree.Text> written) {
    return written.map(Tree.Text::value);
  }

  /**
   * Names that a misspelled one may have meant: those of its own placement where it stands in a pattern. There the answer is
   * the same in every placement and is looked for in the first.
   */
  List<String> near(String name, Span span, KnownNames known) {
    return near(name, span, known, "");
  }

  /** @param except a name that cannot have been meant */
  List<String> near(String name, Span span, KnownNames known, String except) {
    String placement = span.source().placed().map(Placed::name).orElse("");
    if (placement.isEmpty()) {
      return known.near(name, except);
    }
    String prefix = placement + ".";
    String meant = name.startsWith(prefix) ? name.substring(prefix.length()) : name;
    List<String> local = nearInPattern.computeIfAbsent(
        span.written(),
        s -> NearNames.of(meant, known.names().stream().filter(k -> k.startsWith(prefix) && !k.equals(except))
            .map(k -> k.substring(prefix.length())).toList()));
    return local.stream().map(n -> prefix + n).filter(known.names()::contains).toList();
  }

  /** A word of a closed list, as the list has it; one that is not in it is reported with those that are. */
  Optional<String> word(Words words, Tree.Word written) {
    Optional<String> meant = words.meant(written.text());
    if (meant.isEmpty()) {
      unknownWord(written, words.what(), words.known());
    }
    return meant;
  }

  /** Reports a word that cannot stand where it does, with those that can. */
  void unknownWord(Tree.Word word, String what, Collection<String> known) {
    Finding.Builder finding = Finding.error(Mistake.WORD_UNKNOWN, "'" + word + "' is not " + what)
        .at(word.span(), "such as " + String.join(", ", known.stream().limit(SHOWN).toList()))
        .because("There are " + String.join(", ", new TreeSet<>(known)) + "; wattle explain --words says what each means.");
    NearNames.of(word.text(), known).forEach(n -> finding.fix(Fix.safe("write " + n, word.span(), n)));
    report(finding);
  }

  /** Reports a second figure of one kind in a statement that has room for one. */
  void reportSecond(Tree.Expression second, String what, Quantity first) {
    report(
        Finding.error("said-twice", what + " is stated twice")
            .at(second.span(), "stated as " + first + " before")
            .because("One of the two would not be used.")
            .fix(Fix.takenOut("take out " + second.span().text() + " or the one before it", second.span())));
  }

  private static String withoutHoles(String name) {
    return name.replaceAll("-?\\{[^}]*\\}", "");
  }

  /** Reports a name that is taken, or has a hole that nothing fills; true where it was free. */
  boolean claim(Map<String, Span> names, String name, Span span, String kind) {
    if (name.indexOf('{') >= 0 && span.source().placed().isEmpty()) {
      report(
          Finding.error("hole-unfilled", "'" + name + "' has a hole with nothing to fill it")
              .at(span, "a hole is filled only in a pattern, or on a line with for")
              .fix(Fix.offered("write a name without braces, such as " + withoutHoles(name), span, withoutHoles(name))));
      return false;
    }
    Span first = names.putIfAbsent(name, span);
    if (first == null) {
      return true;
    }
    report(
        Finding.error(Mistake.NAME_TWICE, "two " + kind + " are called '" + name + "'")
            .at(span, "the second")
            .with(first, "the first")
            .because("The second one was not checked further.")
            .fix("give one of them another name"));
    return false;
  }
}
