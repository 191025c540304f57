package wattle.bind;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.Completeness;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.model.PanelSupply;
import wattle.read.SourceReader;

/** More than any house has, of what is gone through again for each: told, and cut there. */
class BoundsTest {
  private static Compilation compiled(String plan) {
    Compilation compiled = new Compiler(SourceReader.FROM_DISK).compile(new Source("bounds.wattle", plan), Path.of("bounds.wattle"));
    assertThat(compiled.hasInternalError()).isFalse();
    compiled.coverage();
    return compiled;
  }

  private static List<Finding> of(String rule, Compilation plan) {
    return plan.findings().stream().filter(f -> f.rule().equals(rule)).toList();
  }

  /** Panels that each feed the next, the first of them from the service. */
  private static String row(int panels, boolean lastFirst) {
    List<String> blocks = new ArrayList<>(IntStream.range(0, panels).mapToObj(i -> """
        panel p%d %s { bus 200 A   slots 8 %s
        %s}
        """.formatted(i, i == 0 ? "from main" : "by 5 m of 6/3 NM-B", i == 0 ? "  bonded" : "",
        i == panels - 1 ? "" : "  1+3 60 A two-pole p" + (i + 1) + " \"Next\"\n")).toList());
    if (lastFirst) {
      Collections.reverse(blocks);
    }
    return "plan \"Row\"\nservice main 120/240 V 200 A { source available 10 kA }\n" + String.join("", blocks);
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void aRowOfPanelsIsCutWhereItIsTooLong(boolean lastFirst) {
    assertThat(of("feeders-in-a-row", compiled(row(FeederRows.MOST, lastFirst)))).isEmpty();
    Compilation plan = compiled(row(3000, lastFirst));
    assertThat(of("feeders-in-a-row", plan)).hasSize(2999 / FeederRows.MOST);
    assertThat(plan.completeness()).isEqualTo(Completeness.IN_PIECES);
    assertThat(plan.house().panels().get("p49").supply()).isInstanceOf(PanelSupply.FromBreaker.class);
    assertThat(plan.house().panels().get("p50").supply()).isInstanceOf(PanelSupply.Unknown.class);
    assertThat(plan.house().panels().get("p51").supply()).isInstanceOf(PanelSupply.FromBreaker.class);
  }

  @Test
  void circlesAreNotRows() {
    Map<String, String> above = new LinkedHashMap<>(Map.of("a", "b", "b", "a", "c", "c"));
    assertThat(FeederRows.cut(above)).isEmpty();
  }

  private static Compilation switches(int count) {
    String lines = IntStream.rangeClosed(1, count).mapToObj(i -> "  s" + i + ": three-way switch for lamp\n").collect(Collectors.joining());
    return compiled("plan \"Switches\"\nuse code us-2023\nroom hall {\n" + lines + "  lamp: light 10 W\n}\n");
  }

  @Test
  void switchesOfOneDeviceAreBounded() {
    assertThat(of("switches-too-many", switches(ControlGroups.MOST_SWITCHES))).isEmpty();
    assertThat(of("switches-too-many", switches(5000))).singleElement()
        .satisfies(f -> assertThat(f.headline()).isEqualTo("more than 100 switches control 'hall.lamp'"));
  }

  /** The rest of a line that could not be read may hold a service; what is left of the plan is then a part of it. */
  @Test
  void aTitleThatGoesOnWithAStatementLeavesThePlanInPieces() {
    Compilation plan = compiled("""
        plan "T" -- service main 120/240 V 100 A { source available 10 kA }
        """);
    assertThat(of("unexpected", plan)).isNotEmpty();
    assertThat(plan.completeness()).isEqualTo(Completeness.IN_PIECES);
  }
}
