package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import wattle.finding.Citation;
import wattle.library.StandardLibrary;
import wattle.reference.Reference;

/** Rules whose figure was read on a published page: the rule has that figure, cites that article, and is not from memory. */
class ConfirmedRulesTest {
  @TestFactory
  Stream<DynamicTest> eachHasThePublishedFigure() {
    List<Map<String, String>> rows = Reference.rows("rules.csv");
    assertThat(rows).hasSizeGreaterThan(40);
    return rows.stream().map(row -> DynamicTest.dynamicTest(row.get("rule") + " " + row.get("figure"), () -> {
      Rule rule = RuleLoader.load(StandardLibrary.written(List.of("common", row.get("pack"))).value()).value().stream()
          .filter(r -> r.name().equals(row.get("rule")))
          .findFirst()
          .orElseThrow();
      assertThat(row.get("page")).isNotBlank();
      assertThat(rule.tree().span().text()).contains(row.get("figure"));
      assertThat(rule.citations()).extracting(Citation::toString).anyMatch(c -> c.contains(row.get("article")));
      assertThat(rule.citations()).noneMatch(Citation::verify);
    }));
  }
}
