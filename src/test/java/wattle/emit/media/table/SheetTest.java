package wattle.emit.media.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.derivation.Derivation;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

class SheetTest {
  private static final Derivation TEN = Derivation.stated("rating", "I", Quantity.of(10.04, Units.AMPERE));

  private static final Sheet SHEET = new Sheet(
      "try",
      "A <try>",
      List.of(Column.words("name", "name"), Column.figures("current-a", "current", "A", 1)),
      List.of(
          Row.of(Cell.of("=HYPERLINK(\"x\")"), Cell.of(10.04, TEN)),
          Row.of(Cell.of("a|b, \u202Ec"), Cell.BLANK),
          Row.sum(Cell.of("all"), Cell.of(-0.04))),
      List.of("Note."));

  @Test
  void textIsSetOutInColumns() {
    assertThat(SheetText.plain(List.of(SHEET)).lines().map(String::stripTrailing))
        .containsExactly(
            "A <try>",
            "",
            "name             current (A)",
            "─".repeat(28),
            "=HYPERLINK(\"x\")         10.0",
            "a|b, [U+202E]c",
            "─".repeat(28),
            "all                      0.0",
            "",
            "Note.");
  }

  @Test
  void csvKeepsDigitsAndNoFormula() {
    assertThat(SheetText.csv(List.of(SHEET, SHEET)).split("\r\n"))
        .startsWith("name,current-a", "\"'=HYPERLINK(\"\"x\"\")\",10.04")
        .hasSize(7);
  }

  @Test
  void markdownEscapesItsOwnSigns() {
    assertThat(SheetText.markdown(List.of(SHEET))).contains("## A \\<try\\>").contains("a\\|b,").contains("| **all** | **0.0** |");
  }

  @Test
  void htmlShowsTextAsTextAndUnfoldsFigures() {
    String html = SheetHtml.render(SHEET);
    assertThat(html).contains("A &lt;try&gt;").contains("<summary>10.0</summary>").doesNotContain("<try>");
  }

  @Test
  void jsonGivesTheStepsOfEachFigure() throws Exception {
    JsonNode document = new ObjectMapper().readTree(SheetJson.render(List.of(SHEET)));
    JsonNode table = document.get("tables").get(0);
    assertThat(table.at("/rows/0/values/current-a").doubleValue()).isEqualTo(10.04);
    assertThat(document.get("steps").get(table.at("/rows/0/derivations/current-a").intValue()).get("basis").textValue())
        .isEqualTo("stated");
    assertThat(table.at("/rows/2/sum").booleanValue()).isTrue();
  }

  @Test
  void noCellIsANumberThatIsNone() {
    assertThatThrownBy(() -> Cell.of(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
  }
}
