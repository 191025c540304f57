package wattle.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Which findings are one fact, and how its places are named. */
class SameFactTest {
  private static final Source TEXT = new Source("plan", "x".repeat(100));

  private static Finding about(String name, int at, String headline) {
    return Finding.error("rule", headline).about(name).at(TEXT.span(at, at + 1), "").because("Reason of " + name + ".").build();
  }

  private static String told(String... names) {
    List<Finding> findings = Arrays.stream(names).map(n -> about(n, Arrays.asList(names).indexOf(n), n + " is bare")).toList();
    List<Finding> facts = SameFact.once(findings, Set.of(names)::contains);
    assertThat(facts).hasSize(1);
    assertThat(facts.get(0).everywhere()).hasSize(names.length);
    return facts.get(0).told();
  }

  @Test
  void namesThatCountOnAreARange() {
    assertThat(told("a.r1")).isEqualTo("a.r1 is bare");
    assertThat(told("a.r1", "a.r2")).isEqualTo("a.r1 is bare; the same at a.r2");
    assertThat(told("a.r9", "a.r11", "a.r10", "a.r12")).isEqualTo("a.r9 is bare; the same at a.r10 … a.r12");
    assertThat(told("f1.r", "f2.r", "f3.r", "f4.r", "g")).isEqualTo("f1.r is bare; the same at f2.r … f4.r, g");
    assertThat(told("z", "a1b1", "a1b2", "a2b2", "a3b2")).isEqualTo("z is bare; the same at a1b1, a1b2, a2b2, a3b2");
    assertThat(told("a", "b", "c", "d", "e", "f", "g")).isEqualTo("a is bare; the same at b, c, d, e and 2 more");
  }

  @Test
  void aFigureMakesAFactOfItsOwn() {
    List<Finding> two = List.of(about("a", 0, "a carries 20 A"), about("b", 1, "b carries 30 A"));
    assertThat(SameFact.once(two, Set.of("a", "b")::contains)).isEqualTo(two);
  }

  @Test
  void aNameWithinAnotherWordIsNoName() {
    Set<String> names = Set.of("a", "b", "a.x", "b.x", "c");
    assertThat(SameFact.once(List.of(about("a", 0, "bare at a.x"), about("b", 1, "abre at b.x")), names::contains)).hasSize(2);
    assertThat(SameFact.once(List.of(about("a", 0, "a feeds a.x"), about("b", 1, "b feeds b.x")), names::contains)).hasSize(1);
    assertThat(SameFact.once(List.of(about("a", 0, "a feeds c."), about("b", 1, "b feeds a.")), names::contains)).hasSize(1);
    assertThat(SameFact.once(List.of(about("a", 0, "a feeds c."), about("b", 1, "b feeds d.")), names::contains)).hasSize(2);
  }

  @Test
  void mistakesOfWritingStayApart() {
    List<Finding> two = List.of(Finding.error("unit-missing", "a rating needs a unit").at(TEXT.span(0, 1), "").build(),
        Finding.error("unit-missing", "a rating needs a unit").at(TEXT.span(5, 6), "").build());
    assertThat(SameFact.once(two, Set.of()::contains)).isEqualTo(two);
  }

  @Test
  void oneThingInTheSameWordsIsOneFactWhateverItsReasons() {
    Finding other = Finding.error("rule", "a is bare").about("a").at(TEXT.span(9, 10), "").because("Another figure.").build();
    List<Finding> facts = SameFact.once(List.of(about("a", 0, "a is bare"), other), Set.of("a")::contains);
    assertThat(facts).hasSize(1);
    assertThat(facts.get(0).told()).isEqualTo("a is bare at 2 places");
    assertThat(facts.get(0).each()).hasSize(2);
  }

  @Test
  void aSilencedPlaceIsNotThatOfAnotherThatStands() {
    Finding silenced = about("a", 0, "a is bare").silencedBecause("known");
    assertThat(SameFact.once(List.of(silenced, about("b", 1, "b is bare")), Set.of("a", "b")::contains)).hasSize(2);
  }

  @Test
  void gatheringTwiceKeepsEachPlaceOnce() {
    List<Finding> facts = SameFact.once(List.of(about("a", 0, "a is bare"), about("b", 1, "b is bare")), Set.of("a", "b")::contains);
    assertThat(SameFact.once(facts, Set.of("a", "b")::contains)).isEqualTo(facts);
  }
}
