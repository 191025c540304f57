package wattle.bind;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.edit.Formatter;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Source;
import wattle.model.SupplySystem;
import wattle.read.SourceReader;

/**
 * A supply is written with the voltage from a leg to the neutral first; nameplates write it in other orders too (ANSI C84.1 has 208Y/120
 * and 120/240; from memory). What is meant is known then, but for how many legs of a wye come in.
 */
class SupplyVoltagesTest {
  private static Compilation compiled(String voltages) {
    return new Compiler(SourceReader.FROM_DISK).structure(new Source("supply.wattle", plan(voltages)), Path.of("supply.wattle"));
  }

  private static String plan(String voltages) {
    return """
        plan "Supply"
        use code us-2023
        service main %s 200 A { source transformer 25 kVA 2 %% }
        panel P from main {
          bus 200 A  slots 20  bonded
          main breaker 200 A 22 kA
          1+3 20 A two-pole b "Heater"
        }
        branch b by 12/2 NM-B { P --3 m-- a.c }
        room a { c: wall heater 1 kW }
        """.formatted(voltages);
  }

  private static List<Finding> reversed(Compilation plan) {
    return plan.findings().stream().filter(f -> f.rule().equals("voltages-reversed")).toList();
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "240/120 V | SPLIT_PHASE | 120 | write 120/240 V",
      "208/120 V | TWO_LEGS_OF_WYE | 120 | write 120/208 V",
      "208/120 V three-phase | THREE_PHASE_WYE | 120 | write 120/208 V",
      "400/230 V three-phase | THREE_PHASE_WYE | 230 | write 230/400 V",
      "208Y/120 V three-phase | THREE_PHASE_WYE | 120 | write 120/208 V",
      "400Y/230 V three-phase | THREE_PHASE_WYE | 230 | write 230/400 V"})
  void theOtherOrderIsToldAndUnderstood(String written, SupplySystem.Kind kind, double toNeutral, String order) {
    Compilation plan = compiled(written);
    assertThat(reversed(plan)).singleElement().satisfies(f -> assertThat(f.fixes()).extracting(Fix::order).containsExactly(order));
    assertThat(plan.findings()).extracting(Finding::rule).doesNotContain("voltage-unknown", "unexpected", "unit-missing", "voltage-unfit");
    SupplySystem system = plan.house().services().get("main").system();
    assertThat(system.kind()).isEqualTo(kind);
    assertThat(system.legToNeutralVolts()).isEqualTo(toNeutral);
  }

  @Test
  void aNameplateDoesNotSayHowManyLegsComeIn() {
    assertThat(reversed(compiled("208Y/120 V"))).singleElement().satisfies(f -> assertThat(f.fixes()).extracting(Fix::order)
        .containsExactly("write 120/208 V three-phase where all three legs come in", "write 120/208 V where two of its legs come in"));
  }

  @ParameterizedTest
  @CsvSource({"208Y/120 V, 0", "208Y/120 V, 1", "208Y/120 V three-phase, 0", "240/120 V, 0", "208/120 V three-phase, 0"})
  void eachFixIsTakenAndFindsNoMore(String written, int which) {
    Compilation plan = compiled(written);
    String text = plan.source().text();
    Fix fix = reversed(plan).get(0).fixes().get(which);
    assertThat(fix.edits()).hasSize(1);
    var edit = fix.edits().get(0);
    String mended = text.substring(0, edit.span().start()) + edit.text() + text.substring(edit.span().end());
    Compilation after = new Compiler(SourceReader.FROM_DISK).structure(new Source("supply.wattle", mended), Path.of("supply.wattle"));
    assertThat(after.findings()).extracting(Finding::rule).doesNotContain("voltages-reversed", "voltage-unknown", "unexpected");
  }

  /** The mark is left out in reading, so tidying must not write what was read. */
  @Test
  void tidyLeavesTheMarkOfAWyeAsItIs() {
    Source source = new Source("supply.wattle", plan("208Y/120 V"));
    assertThat(Formatter.format(source).findings()).isNotEmpty();
  }

  @Test
  void figuresOfAWelderThatNoNameplateHasAreTold() {
    for (String welder : List.of(
        "welder 20 A 240 V effective 25 A", "welder 20 A 240 V duty-cycle 160 %", "welder 20 A 240 V duty-cycle 0 %",
        "welder 0 A 240 V effective 25 A")) {
      assertThat(welder(welder)).as(welder).contains("welder-figure-out-of-range").doesNotContain("internal-error");
    }
    for (String welder : List.of("welder 20 A 240 V effective 20 A", "welder 40 A 240 V duty-cycle 100 %", "welder 0 A 240 V")) {
      assertThat(welder(welder)).as(welder).doesNotContain("welder-figure-out-of-range", "internal-error");
    }
  }

  private static List<String> welder(String welder) {
    Source source = new Source("supply.wattle", plan("120/240 V").replace("wall heater 1 kW", welder));
    return new Compiler(SourceReader.FROM_DISK).compile(source, Path.of("supply.wattle")).findings().stream().map(Finding::rule).toList();
  }
}
