package wattle.pattern;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
import wattle.finding.Span;
import wattle.syntax.Tree;

/** The patterns of a plan by name, and what can be said of them before any is placed. */
final class Definitions {
  private final Map<String, Tree.Pattern> byName = new LinkedHashMap<>();
  private final Ledger ledger;

  private Definitions(Ledger ledger) {
    this.ledger = ledger;
  }

  static Definitions of(List<Tree.Item> items, Ledger ledger) {
    Definitions definitions = new Definitions(ledger);
    for (Tree.Item item : items) {
      if (item instanceof Tree.Pattern pattern) {
        definitions.add(pattern);
      }
    }
    definitions.reportCircles();
    definitions.reportUnused(items);
    return definitions;
  }

  Map<String, Tree.Pattern> byName() {
    return byName;
  }

  private void add(Tree.Pattern pattern) {
    Tree.Pattern first = byName.putIfAbsent(pattern.name().text(), pattern);
    if (first != null) {
      twice("patterns", pattern.name(), first.name().span());
    }
    Map<String, Span> names = new HashMap<>();
    for (Tree.Word parameter : pattern.parameters()) {
      Span before = names.putIfAbsent(parameter.text(), parameter.span());
      if (before != null) {
        twice("parameters", parameter, before);
      } else if (parameter.text().equals(pattern.name().text())) {
        twice("a pattern and its parameter", parameter, pattern.name().span());
      }
    }
    for (Tree.Item item : pattern.items()) {
      Optional<Tree.Word> declared = declared(item);
      if (declared.isPresent() && names.containsKey(declared.get().text())) {
        twice("a parameter and a thing", declared.get(), names.get(declared.get().text()));
      }
    }
  }

  private void twice(String kinds, Tree.Word second, Span first) {
    String both = kinds.startsWith("a ") ? kinds : "two " + kinds;
    ledger.report(
        Finding.error(Mistake.NAME_TWICE, both + " are called '" + second + "'")
            .at(second.span(), "the second")
            .with(first, "the first")
            .fix("give one of them another name"));
  }

  /** The name that an item gives to a thing. */
  static Optional<Tree.Word> declared(Tree.Item item) {
    if (item instanceof Tree.Room t) {
      return Optional.of(t.name());
    }
    if (item instanceof Tree.Branch t) {
      return Optional.of(t.name());
    }
    if (item instanceof Tree.Panel t) {
      return Optional.of(t.name());
    }
    if (item instanceof Tree.Placing t) {
      return Optional.of(t.name());
    }
    if (item instanceof Tree.Trial t) {
      return Optional.of(t.name());
    }
    if (item instanceof Tree.Raceway t) {
      return Optional.of(t.name());
    }
    if (item instanceof Tree.Let t) {
      return Optional.of(t.name());
    }
    if (item instanceof Tree.Service t) {
      return Optional.of(t.name());
    }
    return item instanceof Tree.Dwelling t ? t.name() : Optional.empty();
  }

  // ---- Patterns that place themselves

  private void reportCircles() {
    Set<String> done = new HashSet<>();
    for (Tree.Pattern pattern : byName.values()) {
      follow(pattern, new ArrayList<>(), done);
    }
  }

  /** Goes on no deeper than placing does, so that a long row of patterns is no danger. */
  private void follow(Tree.Pattern pattern, List<String> path, Set<String> done) {
    if (path.size() >= Expansion.DEEPEST || !done.add(pattern.name().text())) {
      return;
    }
    path.add(pattern.name().text());
    for (Tree.Placing placing : placings(pattern.items())) {
      String name = placing.pattern().text();
      int at = path.indexOf(name);
      if (at >= 0) {
        reportCircle(placing, path.subList(at, path.size()));
      } else if (byName.containsKey(name)) {
        follow(byName.get(name), path, done);
      }
    }
    path.remove(path.size() - 1);
  }

  private void reportCircle(Tree.Placing placing, List<String> circle) {
    String name = placing.pattern().text();
    String headline = circle.size() == 1
        ? "pattern '" + name + "' places itself"
        : "patterns place each other in a loop: " + String.join(" places ", circle) + " places " + name;
    ledger.report(
        Finding.error("pattern-circle", headline)
            .at(placing.pattern().span(), "this would never end")
            .with(byName.get(name).name().span(), "the pattern begins here")
            .because("A pattern that contains itself has no end.")
            .fix(Fix.takenOut("take out this place line, or place it outside of the pattern, with for where there are several",
                placing.span())));
  }

  private static List<Tree.Placing> placings(List<Tree.Item> items) {
    return items.stream().filter(Tree.Placing.class::isInstance).map(Tree.Placing.class::cast).toList();
  }

  private void reportUnused(List<Tree.Item> items) {
    Set<String> used = new HashSet<>();
    placings(items).forEach(p -> used.add(p.pattern().text()));
    byName.values().forEach(pattern -> placings(pattern.items()).forEach(p -> used.add(p.pattern().text())));
    if (!byName.keySet().containsAll(used)) {
      return; // a place line that names none of them may mean any
    }
    for (Tree.Pattern pattern : byName.values()) {
      if (!used.contains(pattern.name().text())) {
        Finding.Builder finding = Finding.advice("pattern-unused", "pattern '" + pattern.name() + "' is not placed anywhere")
            .at(pattern.name().span(), "no place line names it")
            .because("A pattern is checked where it is placed, so this one was not checked.");
        String line = "place " + pattern.name() + (pattern.parameters().isEmpty() ? "" : "(…)") + " as " + pattern.name() + "1";
        finding.fix(pattern.parameters().isEmpty()
            ? Fix.offered("place it, as in " + line, pattern.span().after(), "\n\n" + line)
            : Fix.of("place it, as in " + line));
        ledger.report(finding.fix(Fix.takenOut("take it out", pattern.span())));
      }
    }
  }
}
