package wattle.pattern;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.KnownNames;
import wattle.finding.Mistake;
import wattle.finding.Placed;
import wattle.finding.Span;
import wattle.syntax.Tree;

/** Placements of one plan being made: a placement is the items of its pattern, read in a frame of its own. */
final class Expansion {
  /** Deepest that patterns may be placed within each other. */
  static final int DEEPEST = 64;

  private final Ledger ledger;
  private final Map<String, Tree.Pattern> patterns;
  private final KnownNames patternNames;
  private final Overrides overrides;
  private final Map<String, Name> names = new LinkedHashMap<>();
  private final Set<Tree.Placing> told = Collections.newSetFromMap(new IdentityHashMap<>());
  /** Place lines of which a figure has no value: said once, not for every number of a repetition. */
  private final Set<Tree.Placing> unread = Collections.newSetFromMap(new IdentityHashMap<>());
  private final Map<Tree.Pattern, Set<String>> fixedNames = new IdentityHashMap<>();
  private Content content = new Content(new ArrayList<>(), new LinkedHashMap<>(), 0);

  /**
   * What one line of the plan came to.
   *
   * @param patterns all that were looked up for it
   * @param names of the placements in it
   * @param things how many were placed for it
   */
  record Content(List<Tree.Pattern> patterns, Map<String, Name> names, int things) {}

  /** Where a placement is named, and of what pattern it is. */
  record Name(Span span, String pattern) {}

  Expansion(Ledger ledger, Map<String, Tree.Pattern> patterns, Overrides overrides) {
    this.ledger = ledger;
    this.overrides = overrides;
    this.patterns = patterns;
    this.patternNames = new KnownNames(patterns.keySet());
  }

  /** Names of the placements, each with its pattern. */
  Map<String, String> placements() {
    Map<String, String> placements = new LinkedHashMap<>();
    names.forEach((name, made) -> placements.put(name, made.pattern));
    return placements;
  }

  /** Begins with another line of the plan. */
  void begin() {
    content = new Content(new ArrayList<>(), new LinkedHashMap<>(), ledger.placed());
  }

  /** What has been placed since. */
  Content content() {
    return new Content(content.patterns, content.names, ledger.placed() - content.things);
  }

  /** Takes what a line came to before, where it would come to the same now. */
  boolean holds(Content before) {
    boolean same = before.patterns.stream().allMatch(p -> patterns.get(p.name().text()) == p)
        && before.names.keySet().stream().noneMatch(names::containsKey)
        && ledger.placed() + (long) before.things <= ledger.most();
    if (same) {
      names.putAll(before.names);
      ledger.place(before.things);
    }
    return same;
  }

  /**
   * Adds what a place line stands for.
   *
   * @param frame where it stands
   * @param around the patterns that it is placed in, outermost first
   */
  void place(Tree.Placing placing, Frame frame, List<Tree.Pattern> around, List<Tree.Item> out) {
    Tree.Pattern pattern = patterns.get(placing.pattern().text());
    boolean fits = pattern != null && !around.contains(pattern) && around.size() < DEEPEST && takes(pattern, placing);
    if (pattern == null) {
      unknown(placing);
    } else if (around.size() >= DEEPEST && told.add(placing)) {
      ledger.report(
          Finding.error("nesting-too-deep", "patterns are placed within each other more than " + DEEPEST + " deep")
              .at(placing.pattern().span(), "placing stopped here"));
    }
    if (pattern != null && !content.patterns.contains(pattern)) {
      content.patterns.add(pattern);
    }
    if (placing.repetition().isEmpty()) {
      one(placing, fits ? pattern : null, frame, around, out);
      return;
    }
    Tree.Repetition repetition = placing.repetition().get();
    Range range = Range.of(repetition, frame, new PiecePlacer(frame));
    if (range.numbers().isEmpty()) {
      ledger.spoil(placing.name().text());
    }
    for (int number : range.numbers()) {
      Argument value = Argument.number(number, frame.span(repetition.name().span()));
      one(placing, fits ? pattern : null, frame.with(repetition.name().text(), value, Optional.empty()), around, out);
    }
  }

  private void unknown(Tree.Placing placing) {
    if (told.add(placing)) {
      String name = placing.pattern().text();
      Finding.Builder finding = Finding.error(Mistake.NAME_UNKNOWN, "no pattern is called '" + name + "'")
          .at(placing.pattern().span(), "the name of a pattern is expected here");
      patternNames.near(name).forEach(n -> finding.fix(Fix.safe("write " + n, placing.pattern().span(), n)));
      ledger.report(finding);
    }
  }

  private boolean takes(Tree.Pattern pattern, Tree.Placing placing) {
    int wanted = pattern.parameters().size();
    int given = placing.arguments().size();
    if (!pattern.whole()) {
      return false; // how many it takes is not known
    }
    if (wanted != given && told.add(placing)) {
      String list = pattern.parameters().stream().map(Tree.Word::text).collect(Collectors.joining(", "));
      Finding.Builder finding = Finding.error(
          "argument-count",
          "pattern '" + pattern.name() + "' takes " + (wanted == 1 ? "1 figure or name" : wanted + " figures or names") + ", and " + given
              + (given == 1 ? " is given" : " are given"))
          .at(
              given > wanted ? placing.arguments().get(wanted).span().to(placing.arguments().get(given - 1).span()) : placing.listed(),
              given > wanted ? "nothing is expected here" : pattern.parameters().get(given).text() + " is missing")
          .with(pattern.name().span(), list.isEmpty() ? "it has no parameters" : "its parameters are " + list);
      finding.fix(
          given > wanted && wanted > 0
              ? Fix.offered("leave out the extra ones", tooMuch(placing, wanted), "")
              : given > wanted
                  ? Fix.offered("leave out the parentheses", placing.listed(), "")
                  : Fix.of("write " + pattern.name() + "(" + list + ") with a figure or a name for each"));
      ledger.report(finding);
    }
    return wanted == given;
  }

  /** From the end of the last argument that is taken to the end of the last that is given. */
  private static Span tooMuch(Tree.Placing placing, int wanted) {
    Span last = placing.arguments().get(placing.arguments().size() - 1).span();
    return last.source().span(placing.arguments().get(wanted - 1).span().end(), last.end());
  }

  /** @param pattern null where it cannot be placed, which has been told */
  private void one(Tree.Placing placing, Tree.Pattern pattern, Frame frame, List<Tree.Pattern> around, List<Tree.Item> out) {
    Tree.Word name = frame.declared(placing.name());
    boolean faulty = pattern == null || unread.contains(placing);
    Optional<Map<String, Argument>> arguments = faulty ? Optional.empty() : new ArgumentReader(frame).read(pattern, placing);
    if (arguments.isEmpty()) {
      unread.add(placing);
      ledger.spoil(name.text());
      return;
    }
    Name made = new Name(name.span(), pattern.name().text());
    Name first = names.putIfAbsent(name.text(), made);
    if (first != null) {
      ledger.report(
          Finding.error(Mistake.NAME_TWICE, "two placements are called '" + name + "'")
              .at(name.span(), "the second")
              .with(first.span, "the first")
              .because("The second was not placed.")
              .fix(placing.repetition().isPresent() && placing.name().text().indexOf('{') < 0
                  ? Fix.offered("write " + placing.name() + "{" + placing.repetition().get().name() + "}", placing.name().span().after(),
                      "{" + placing.repetition().get().name() + "}")
                  : Fix.of("give one of them another name")));
      return;
    }
    content.names.put(name.text(), made);
    if (!ledger.place(pattern.items().size())) {
      TooMany.report(ledger, name.span());
      ledger.spoil(name.text());
      return;
    }
    Tree.Pattern own = overrides.of(pattern, name.text());
    Frame bare = Frame.of(ledger, placed(name, pattern, Set.of(), arguments.get()), pattern, Set.of(), arguments.get());
    Set<String> locals = locals(own, bare);
    List<Tree.Pattern> inside = new ArrayList<>(around);
    inside.add(pattern);
    body(own, Frame.of(ledger, placed(name, pattern, locals, arguments.get()), pattern, locals, arguments.get()), inside, out);
  }

  private static Placed placed(Tree.Word name, Tree.Pattern pattern, Set<String> locals, Map<String, Argument> arguments) {
    return new Placed(
        name.span(), "placed here as " + name, name.text(), pattern.name().text(), locals, Set.of(), arguments.keySet());
  }

  private void body(Tree.Pattern pattern, Frame frame, List<Tree.Pattern> inside, List<Tree.Item> out) {
    ThingPlacer things = new ThingPlacer(frame);
    for (Tree.Item item : pattern.items()) {
      if (item instanceof Tree.Let let) {
        Tree.Let placed = things.let(let);
        ledger.quietly(placed.value()).ifPresent(v -> ledger.constants().put(placed.name().text(), v));
        out.add(placed);
      }
    }
    for (Tree.Item item : pattern.items()) {
      if (item instanceof Tree.Placing placing) {
        place(placing, frame, inside, out);
      } else if (!(item instanceof Tree.Let)) {
        out.add(things.thing(item));
      }
    }
  }

  /** The names that a pattern gives, holes filled. Most patterns have none with holes, and then the same everywhere. */
  private Set<String> locals(Tree.Pattern pattern, Frame frame) {
    Set<String> known = fixedNames.get(pattern);
    if (known != null) {
      return known;
    }
    Set<String> locals = new LinkedHashSet<>();
    boolean fixed = true;
    for (Tree.Item item : pattern.items()) {
      Optional<Tree.Word> declared = Definitions.declared(item);
      fixed &= declared.isEmpty() || declared.get().text().indexOf('{') < 0;
      if (item instanceof Tree.Placing placing && placing.repetition().isPresent()) {
        locals.addAll(repeated(placing, placing.repetition().get(), frame));
      } else {
        declared.ifPresent(word -> locals.add(frame.filled(word)));
      }
    }
    Set<String> all = Set.copyOf(locals);
    if (fixed) {
      fixedNames.put(pattern, all);
    }
    return all;
  }

  private static Set<String> repeated(Tree.Placing placing, Tree.Repetition repetition, Frame frame) {
    Set<String> names = new HashSet<>();
    for (int number : Range.of(repetition, frame, new PiecePlacer(frame)).numbers()) {
      Argument value = Argument.number(number, repetition.name().span());
      names.add(frame.with(repetition.name().text(), value, Optional.empty()).filled(placing.name()));
    }
    return names;
  }
}
