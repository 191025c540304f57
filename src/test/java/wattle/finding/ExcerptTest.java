package wattle.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** A span of a part of a text cannot be taken for one of the text. */
class ExcerptTest {
  private static final Source WHOLE = new Source("house.wattle", "room a {\n}\nroom b {\n}\n");

  private final Excerpt first = new Excerpt("house.wattle", "room a {\n}\n");
  private final Excerpt second = new Excerpt("house.wattle", "room b {\n}\n");
  private final Span name = second.span(5, 6);

  @Test
  void itHasNoLineUntilItIsPlaced() {
    assertThat(name.text()).isEqualTo("b");
    assertThatThrownBy(name::line).isInstanceOf(IllegalStateException.class).hasMessageContaining("house.wattle");
    assertThatThrownBy(name::column).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(name::toString).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> second.line(1)).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void placedItStandsInTheWholeText() {
    Span placed = Placement.of(WHOLE, List.of(first, second)).whole(name);
    assertThat(placed).hasToString("house.wattle:3:6");
    assertThat(placed.text()).isEqualTo("b");
  }

  @Test
  void whatAPatternPlacesOfItHasNoLineEither() {
    Source placed = second.placed(new Placed(WHOLE.span(0, 4), "placed here", "one", "p", Set.of(), Set.of(), Set.of()));
    assertThatThrownBy(() -> placed.span(5, 6).line()).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void aFindingOfItIsPutInPlace() {
    Finding finding = Finding.error("name-twice", "two").at(name, "the second").with(first.span(5, 6), "the first").build();
    Finding placed = Placement.of(WHOLE, List.of(first, second)).whole(List.of(finding)).get(0);
    assertThat(placed.place().orElseThrow().span().line()).isEqualTo(3);
    assertThat(placed.related().get(0).span().line()).isEqualTo(1);
  }
}
