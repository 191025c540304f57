package wattle.golden;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class GoldenTest {
  @Test
  void aDifferenceIsShownByItsLinesAlone() {
    String before = "a\n".repeat(500);
    assertThatThrownBy(() -> Golden.sameLines("page", before + "new\n" + before, before + "old\n" + before))
        .isInstanceOf(AssertionError.class)
        .satisfies(e -> assertThat(e.getMessage()).contains("from line 501:", "- old", "+ new").hasLineCount(4));
  }

  @Test
  void aLineThatIsMissingIsShown() {
    assertThatThrownBy(() -> Golden.sameLines("page", "a\nc\n", "a\nb\nc\n")).hasMessageContaining("- b").hasMessageNotContaining("+");
  }

  @Test
  void endsOfLinesCount() {
    assertThatThrownBy(() -> Golden.sameLines("page", "a\r\n", "a\n")).hasMessageContaining("ends of lines");
  }

  @Test
  void theSameIsTheSame() {
    Golden.sameLines("page", "a\n", "a\n");
  }
}
