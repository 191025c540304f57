package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** Lines looked through only where something changed are those of the whole text. */
class LineIndexTest {
  @Provide
  Arbitrary<String> texts() {
    return Arbitraries.of("\n", "\r", "\r\n", "a", "ä🏠", "").list().ofMaxSize(12).map(parts -> String.join("", parts));
  }

  @Property(tries = 3000)
  void changesGiveTheLinesOfTheWholeText(
      @ForAll("texts") String text, @ForAll("texts") String put, @ForAll @IntRange(max = 24) int one,
      @ForAll @IntRange(max = 24) int other) {
    int start = Math.min(text.length(), Math.min(one, other));
    int end = Math.min(text.length(), Math.max(one, other));
    LineIndex changed = new LineIndex(text).with(start, end, put);
    LineIndex whole = new LineIndex(text.substring(0, start) + put + text.substring(end));
    assertThat(changed.text()).isEqualTo(whole.text());
    for (int at = 0; at <= whole.text().length(); at++) {
      assertThat(changed.position(at)).as("at %s", at).isEqualTo(whole.position(at));
    }
    assertThat(List.of(changed.whole(), changed.position(whole.text().length())))
        .isEqualTo(List.of(whole.whole(), whole.position(whole.text().length())));
  }
}
