package wattle.emit.sheet.coverage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.rules.Coverage;
import wattle.rules.Kind;
import wattle.rules.Unstated;

/** What was not judged is said in full: how often, where, and by which words a plan states it. */
class CoverageSheetTest {
  private static Coverage lacking(int boxes) {
    List<String> names = IntStream.rangeClosed(1, boxes).mapToObj(i -> "den.b" + i).toList();
    Unstated fill = new Unstated(Kind.BOX, "volume", "how much is in it", "18 in3", names, List.of("box-overfilled", "box-large"));
    return new Coverage(40, 70, boxes, 0, List.of(fill));
  }

  private static List<String> words(Row row) {
    return row.cells().stream().map(c -> c instanceof Cell.Words w ? w.text() : c instanceof Cell.Figure f ? "" + f.value() : "").toList();
  }

  @Test
  void aFactIsARowWithItsPlacesAndRules() {
    Sheet sheet = CoverageSheet.of(lacking(2));
    assertThat(sheet.rows()).hasSize(1);
    assertThat(words(sheet.rows().get(0)))
        .containsExactly("box", "volume: how much is in it", "2.0", "den.b1, den.b2", "18 in3", "box-overfilled, box-large");
  }

  /** Six places are named; of more the count is still the whole one. */
  @Test
  void longListsOfPlacesAreCutAndCounted() {
    List<String> six = words(CoverageSheet.of(lacking(6)).rows().get(0));
    assertThat(six.get(3)).endsWith("den.b6");
    List<String> nine = words(CoverageSheet.of(lacking(9)).rows().get(0));
    assertThat(nine.get(2)).isEqualTo("9.0");
    assertThat(nine.get(3)).endsWith("den.b6 and 3 more").doesNotContain("den.b7");
  }

  @Test
  void theSummarySaysWhatNobodyLookedAt() {
    assertThat(CoverageSheet.summary(lacking(9))).contains("40 rules", "70 places", "At 9 places they were not checked")
        .doesNotContain("in doubt");
    assertThat(CoverageSheet.summary(new Coverage(40, 70, 9, 5, List.of()))).contains("At 5 more", "in doubt");
    assertThat(CoverageSheet.summary(new Coverage(0, 0, 0, 0, List.of()))).startsWith("No rule was checked");
  }
}
