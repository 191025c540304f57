package wattle.rules;

import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Consumer;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.NearNames;
import wattle.finding.Span;
import wattle.library.Library;
import wattle.library.Limit;

/** Checks paths such as {@code r.breaker.rating}: each step must be a property of what the step before it gave. */
final class PathChecker {
  private final Library library;
  private final Consumer<Finding> findings;

  PathChecker(Library library, Consumer<Finding> findings) {
    this.library = library;
    this.findings = findings;
  }

  /**
   * @param words of the path
   * @param span where the path stands; a path of a message hole stands where its text does
   */
  Optional<Typed> check(List<String> words, Span span, Names names) {
    String first = words.get(0);
    if (first.equals("limit")) {
      return limit(words, span);
    }
    if (!names.has(first)) {
      unknown("nothing in this rule is called '" + first + "'", "a name of this rule is expected here", first, span, names.known());
      return Optional.empty();
    }
    int place = names.placeOf(first);
    Typed typed = new Typed(names.typeOf(first), (f, named) -> named[place]);
    for (String word : words.subList(1, words.size())) {
      Optional<Typed> next = step(typed, word, span);
      if (next.isEmpty()) {
        return next;
      }
      typed = next.get();
    }
    return Optional.of(typed);
  }

  private Optional<Typed> step(Typed typed, String word, Span span) {
    if (!(typed.type() instanceof Type.Thing thing)) {
      findings.accept(
          Finding.error("rule-property-unknown", "'" + word + "' is not a property of " + typed.type().text())
              .at(span, "only a thing of the house has properties")
              .build());
      return Optional.empty();
    }
    Property property = Vocabulary.of(thing.kind()).get(word);
    if (property == null) {
      unknown("a " + thing.kind().word() + " has no '" + word + "'", "a property of a " + thing.kind().word() + " is expected here", word,
          span, Vocabulary.of(thing.kind()).keySet());
      return Optional.empty();
    }
    Term before = typed.term();
    return Optional.of(
        new Typed(
            property.type(),
            (f, named) -> {
              Object owner = before.of(f, named);
              return owner == null ? null : property.of(f, owner);
            }));
  }

  private Optional<Typed> limit(List<String> words, Span span) {
    String name = words.size() == 2 ? words.get(1) : "";
    Optional<Limit> limit = library.limit(name);
    if (limit.isEmpty()) {
      unknown("no limit is called '" + name + "'", "a limit of this pack or of one it extends is expected here", name, span,
          library.limits().keySet());
      return Optional.empty();
    }
    return Optional.of(new Typed(new Type.Figure(limit.get().value().dimension()), (f, named) -> limit.get().value()));
  }

  private void unknown(String headline, String expected, String word, Span span, java.util.Collection<String> known) {
    Finding.Builder finding = Finding.error("rule-property-unknown", headline).at(span, expected);
    List<String> near = NearNames.of(word, known);
    // The word at fault is the last of the path.
    Span at = span.text().endsWith(word) ? span.source().span(span.end() - word.length(), span.end()) : span;
    near.forEach(n -> finding.fix(at.text().equals(word) ? Fix.offered("write " + n, at, n) : Fix.of("write " + n)));
    if (near.isEmpty()) {
      finding.because("There " + (known.size() == 1 ? "is " : "are ") + String.join(", ", new TreeSet<>(known)) + ".");
    }
    findings.accept(finding.build());
  }
}
