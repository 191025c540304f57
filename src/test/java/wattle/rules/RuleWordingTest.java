package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import wattle.library.StandardLibrary;
import wattle.syntax.Tree;

/** Rules of every pack speak as an inspector does: the thing first and the fault next, in words of the trade. */
class RuleWordingTest {
  /** What a headline begins with that does not begin with its thing. */
  private static final Pattern NO_THING = Pattern.compile("^(?:an?|the|there|no|not|one|what|who|when|where) |^'");

  /** Words that the trade has better ones for. */
  private static final Pattern BOOKISH = Pattern.compile(
      "\\bhangs (?:in|on)\\b|\\bheld (?:every|within)\\b|\\bwould open\\b|\\bguarded against\\b|\\basked for\\b|\\bworked by\\b"
          + "|\\bshut in\\b|\\bspade\\b|\\bfree space\\b|\\bground-fault (?:protection(?! of equipment)|breaker)\\b"
          + "|\\barc-fault (?:protection|breaker)\\b"
          + "|\\bbuy it so\\b|\\band such\\b");

  private static Stream<Tree.Rule> rules() {
    return StandardLibrary.packNames().stream().flatMap(
        p -> RuleLoader.load(StandardLibrary.written(List.of("common", p)).value()).value().stream().filter(r -> r.pack().equals(p)))
        .map(Rule::tree);
  }

  @Test
  void headlinesNameTheThingFirst() {
    List<String> headlines = rules().map(r -> r.headline().orElseThrow().value()).toList();
    assertThat(headlines).hasSizeGreaterThan(180).allSatisfy(h -> assertThat(NO_THING.matcher(h).find()).as(h).isFalse());
  }

  @Test
  void textsAreInWordsOfTheTrade() {
    List<String> texts = new ArrayList<>();
    rules().forEach(r -> {
      r.title().ifPresent(t -> texts.add(t.value()));
      r.headline().ifPresent(t -> texts.add(t.value()));
      r.notes().forEach(t -> texts.add(t.value()));
      r.reason().ifPresent(t -> texts.add(t.value()));
      r.fixes().forEach(f -> texts.add(f.order().value()));
    });
    assertThat(texts).hasSizeGreaterThan(800).allSatisfy(t -> assertThat(BOOKISH.matcher(t).find()).as(t).isFalse());
  }
}
