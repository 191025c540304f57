package wattle.pattern;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.finding.Placed;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.syntax.Tree;

/**
 * What words mean in one placement. A name that the pattern gives is its placement's name and itself, the pattern's own name
 * the placement's name alone, a parameter what was given for it; any other name means what it means in the plan.
 */
final class Frame {
  private static final Pattern HOLE = Pattern.compile("\\{([\\p{L}_][\\p{L}_0-9]*(?:-[\\p{L}_0-9]+)*)\\}");
  private static final Pattern NAME = Pattern.compile("[\\p{L}_0-9]+(?:-[\\p{L}_0-9]+)*");

  private final Ledger ledger;
  private final Optional<Placed> placed;
  private final String pattern;
  private final String name;
  private final Set<String> locals;
  private final Map<String, Argument> arguments;
  /** The texts that this placement is made of, once more as placed: pattern and override may stand in two. */
  private final Map<Source, Source> copies = new HashMap<>(2);
  private Source read;
  private Source source;

  private Frame(
      Ledger ledger, Optional<Placed> placed, String pattern, String name, Set<String> locals, Map<String, Argument> arguments) {
    this.ledger = ledger;
    this.placed = placed;
    this.pattern = pattern;
    this.name = name;
    this.locals = locals;
    this.arguments = arguments;
  }

  /** Outside of all patterns: every word means itself. */
  static Frame plan(Ledger ledger) {
    return new Frame(ledger, Optional.empty(), "", "", Set.of(), Map.of());
  }

  /**
   * Within a placement.
   *
   * @param locals the names that the pattern gives, holes filled
   */
  static Frame of(
      Ledger ledger, Placed placed, Tree.Pattern pattern, Set<String> locals, Map<String, Argument> arguments) {
    return new Frame(ledger, Optional.of(placed), pattern.name().text(), placed.name(), locals, arguments);
  }

  /** The same with one more name for a number; {@code by} where what is made is to know of it. */
  Frame with(String parameter, Argument number, Optional<Placed> by) {
    Map<String, Argument> more = new HashMap<>(arguments);
    more.put(parameter, number);
    return new Frame(ledger, by.isPresent() ? by : placed, pattern, name, locals, more);
  }

  boolean isPlan() {
    return placed.isEmpty();
  }

  /** The same placement, known by one more line: where the line says more than it shows. */
  Placed line(Span place, String words, Set<String> own, Set<String> parameters) {
    return new Placed(place, words, name, pattern, locals, own, parameters);
  }

  String name() {
    return name;
  }

  Ledger ledger() {
    return ledger;
  }

  Span span(Span span) {
    if (placed.isEmpty()) {
      return span;
    }
    if (read != span.source()) {
      read = span.source();
      source = copies.computeIfAbsent(read, other -> other.written().placed(placed.get()));
    }
    return new Span(source, span.start(), span.end());
  }

  /** Names for which something is given. */
  Set<String> parameters() {
    return arguments.keySet();
  }

  Optional<Argument> argument(String parameter) {
    return Optional.ofNullable(arguments.get(parameter));
  }

  // ---- Names

  /** The name of a thing that the pattern makes. */
  Tree.Word declared(Tree.Word word) {
    return new Tree.Word(qualified(filled(word)), span(word.span()));
  }

  private String qualified(String local) {
    return name.isEmpty() ? local : local.equals(pattern) ? name : name + "." + local;
  }

  /** A word that is no name of the plan, such as that of a device in its room. */
  Tree.Word plain(Tree.Word word) {
    return placed.isEmpty() && arguments.isEmpty() ? word : new Tree.Word(filled(word), span(word.span()));
  }

  Optional<Tree.Word> plain(Optional<Tree.Word> word) {
    return word.map(this::plain);
  }

  List<Tree.Word> plain(List<Tree.Word> words) {
    return words.stream().map(this::plain).toList();
  }

  /** A word that speaks of a thing; it may hold dots. */
  Tree.Word reference(Tree.Word word) {
    String text = filled(word);
    int dot = text.indexOf('.');
    String first = dot < 0 ? text : text.substring(0, dot);
    return new Tree.Word(resolved(first, word.span()) + text.substring(first.length()), span(word.span()));
  }

  Tree.Path reference(Tree.Path path) {
    List<Tree.Word> words = new java.util.ArrayList<>(plain(path.words()));
    Tree.Word first = words.get(0);
    words.set(0, new Tree.Word(resolved(first.text(), path.first().span()), first.span()));
    return new Tree.Path(words, span(path.span()));
  }

  /** A path that begins in the room it stands in, if that has a thing of this name. */
  Tree.Path within(Set<String> inRoom, Tree.Path path) {
    return inRoom.contains(path.first().text())
        ? new Tree.Path(plain(path.words()), span(path.span()))
        : reference(path);
  }

  /** What a word means in the house. */
  private String resolved(String word, Span use) {
    Argument argument = arguments.get(word);
    if (argument == null) {
      return locals.contains(word) || word.equals(pattern) && !name.isEmpty() ? qualified(word) : word;
    }
    if (argument.name().isEmpty()) {
      ledger.report(
          Finding.error("argument-kind", "'" + word + "' needs a name, and '" + argument.shown() + "' is none")
              .at(argument.span(), "a name of the plan is expected here")
              .with(span(use), "used as a name here"));
      ledger.spoil(word);
      return word;
    }
    return argument.name().get().text();
  }

  // ---- Holes

  /** A name with its holes filled. */
  String filled(Tree.Word word) {
    return word.text().indexOf('{') < 0 ? word.text() : filled(word.text(), word.span(), true);
  }

  Tree.Text text(Tree.Text text) {
    if (placed.isEmpty() && arguments.isEmpty()) {
      return text;
    }
    return new Tree.Text(text.value().indexOf('{') < 0 ? text.value() : filled(text.value(), text.span(), false), span(text.span()));
  }

  private String filled(String text, Span span, boolean ofName) {
    Matcher hole = HOLE.matcher(text);
    StringBuilder filled = new StringBuilder();
    while (hole.find()) {
      hole.appendReplacement(filled, Matcher.quoteReplacement(value(hole.group(1), span, ofName).orElse(hole.group())));
    }
    return hole.appendTail(filled).toString();
  }

  private Optional<String> value(String parameter, Span span, boolean ofName) {
    Argument argument = arguments.get(parameter);
    if (argument == null) {
      Finding.Builder finding = Finding.error(Mistake.NAME_UNKNOWN, "nothing is given for '{" + parameter + "}'")
          .at(span(span),
              arguments.isEmpty()
                  ? "no parameter can be written here"
                  : "a parameter such as {" + arguments.keySet().iterator().next() + "} is expected in its hole");
      for (String near : NearNames.of(parameter, arguments.keySet())) {
        int at = span.text().indexOf("{" + parameter + "}") + span.start() + 1;
        finding.fix(Fix.safe("write {" + near + "}", span(span.source().span(at, at + parameter.length())), near));
      }
      ledger.report(finding);
      return Optional.empty();
    }
    if (ofName && !NAME.matcher(argument.shown()).matches()) {
      ledger.report(
          Finding.error("argument-kind", "'" + argument.shown() + "' cannot be a part of a name")
              .at(argument.span(), "a number or a word is expected here")
              .with(span(span), "put into a name here"));
      return Optional.of("x");
    }
    return Optional.of(argument.shown());
  }
}
