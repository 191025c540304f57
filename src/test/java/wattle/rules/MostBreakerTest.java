package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.model.Device;
import wattle.motors.WelderCurrents;
import wattle.read.SourceReader;

/** The largest breaker by the article of a load, and welders by their effective current, against published examples. */
class MostBreakerTest {
  private static Compilation compile(String system, String poles, String cable, String device, String beside) {
    return compile(system, poles, cable, device, beside, "");
  }

  private static Compilation compile(String system, String poles, String cable, String device, String beside, String further) {
    String plan = """
        use code us-2023
        service main SYSTEM 200 A { source available 10 kA  run 5 m of 4/0 Al triplex }
        panel P from main { bus 225 A   slots 12   bonded   main breaker 200 A 22 kA
          POLES  x  "Load" }
        branch x by CABLE { P --5 m-- shop.xFURTHER }
        room shop is workshop { x: DEVICE }
        """.replace("SYSTEM", system).replace("POLES", poles).replace("CABLE", cable).replace("DEVICE", device).replace("FURTHER", further)
        + beside;
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("plan", plan), Path.of("plan.wattle"));
  }

  private static List<String> loads(Compilation plan) {
    return plan.findings().stream()
        .filter(
            f -> List.of("load-breaker-large", "load-above-breaker", "breaker-above-conductor", "conductor-below-load").contains(f.rule()))
        .map(Finding::rule).sorted().distinct().toList();
  }

  private static List<String> onSplitPhase(String breaker, String cable, String device) {
    return loads(compile("120/240 V", "1+3 " + breaker + " two-pole", cable, device, ""));
  }

  /**
   * ecmweb.com, Code Q&A: overcurrent protection for appliance circuits: 4,500 W / 240 V = 18.75 A, × 150 % = 28 A, 30 A;
   * forums.mikeholt.com, non motor appliance 422.11(E): 32 A × 150 % = 48 A, 50 A; the same forum, unit 6 question 50: 2,500 W may
   * have 20 A.
   */
  @ParameterizedTest
  @CsvSource({"4.5 kW, 30, 35", "32 A, 50, 60", "2.5 kW, 20, 25", "5.5 kW, 35, 40"})
  void waterHeaters(String load, int most, int above) {
    assertThat(onSplitPhase(most + " A", "4/2 NM-B", "water heater " + load)).isEmpty();
    assertThat(onSplitPhase(above + " A", "4/2 NM-B", "water heater " + load)).containsExactly("load-breaker-large");
    assertThat(onSplitPhase(above + " A", "4/2 NM-B", "water heater " + load + " maximum-breaker " + above + " A")).isEmpty();
    assertThat(
        loads(compile("120/240 V", "1+3 " + above + " A two-pole existing", "4/2 NM-B existing", "water heater " + load + " existing",
            "room other { y: chandleer 3 W }\n")))
        .as("in existing work, beside a mistake").containsExactly("load-breaker-large");
  }

  /** 240 V heaters on 208 V: their rated current stays 4,500 W / 240 V = 18.75 A although they draw 16.2 A, so that 30 A is lawful. */
  @ParameterizedTest
  @CsvSource({"120/208 V", "120/208 V three-phase"})
  void waterHeaterOnTwoLegsOfWye(String system) {
    assertThat(loads(compile(system, "1+3 30 A two-pole", "6/2 NM-B", "water heater 4.5 kW 240 V", ""))).isEmpty();
    assertThat(loads(compile(system, "1+3 35 A two-pole", "6/2 NM-B", "water heater 4.5 kW 240 V", "")))
        .containsExactly("load-breaker-large");
    // 4,500 W / 208 V = 21.6 A, × 150 % = 32.5 A.
    assertThat(loads(compile(system, "1+3 35 A two-pole", "6/2 NM-B", "water heater 4.5 kW 208 V", ""))).isEmpty();
    assertThat(loads(compile(system, "1+3 40 A two-pole", "6/2 NM-B", "water heater 4.5 kW 208 V", "")))
        .containsExactly("load-breaker-large");
  }

  /**
   * NFPA 70 430.52(C)(1), tables 430.248 and 430.250: 2 hp at 230 V 12 A, × 250 % = 30 A; 5 hp three-phase at 208 V 16.7 A: 41.75 A,
   * 45 A.
   */
  @Test
  void motors() {
    assertThat(onSplitPhase("30 A", "6/2 NM-B", "compressor 2 hp 240 V")).isEmpty();
    assertThat(onSplitPhase("35 A", "6/2 NM-B", "compressor 2 hp 240 V")).containsExactly("load-breaker-large");
    Compilation small = compile("120/240 V", "1+3 20 A two-pole", "12/2 NM-B", "well pump 1/2 hp 240 V", "");
    assertThat(small.findings()).extracting(Finding::rule).doesNotContain("unexpected", "unit-missing");
    assertThat(loads(small)).as("430.53(A)").isEmpty();
    String three = "three-phase motor 5 hp 208 V";
    String wires = "3/4 in EMT with 3 x 6 Cu THWN-2, 10 Cu THWN-2 ground";
    assertThat(loads(compile("120/208 V three-phase", "1+3+5 45 A three-pole", wires, three, ""))).isEmpty();
    assertThat(loads(compile("120/208 V three-phase", "1+3+5 50 A three-pole", wires, three, ""))).containsExactly("load-breaker-large");
  }

  /** Behind a fuse a motor has other percentages, and loads that share a circuit have their own articles. */
  @Test
  void whatOtherFiguresAreFor() {
    assertThat(onSplitPhase("60 A fuse", "6/2 NM-B", "compressor 2 hp 240 V")).doesNotContain("load-breaker-large");
    assertThat(loads(
        compile("120/240 V", "1+3 40 A two-pole", "8/2 NM-B", "water heater 4.5 kW\n y: baseboard heater 1 kW", "", " --1 m-- shop.y")))
        .doesNotContain("load-breaker-large");
  }

  /**
   * ecmweb.com, Code Q&A 45: 40 A at a duty cycle of 50 %: 40 A × 0.71 = 28.4 A, 10 AWG; forums.mikeholt.com, 630.12: 50 A at 20 %:
   * 22.5 A, 10 AWG NM on 50 A; ecmweb.com, code quiz 61, rows of welders without a motor: 80 A at 100 %, 50 A at 80 % 44.5 A, 25 A
   * at 40 % 15.75 A (there 63 A for four).
   */
  @ParameterizedTest
  @CsvSource({"40, 50, 28.4", "50, 20, 22.5", "80, 100, 80", "50, 80, 44.5", "25, 40, 15.75", "50, 45, 35.5", "50, 10, 22.5"})
  void effectiveCurrents(double primary, int duty, double effective) {
    Compilation plan = compile("120/240 V", "1+3 50 A two-pole", "6/2 NM-B", "welder " + primary + " A duty-cycle " + duty + " %", "");
    Device welder = plan.house().devices().get("shop.x");
    assertThat(new WelderCurrents(plan.library()).effective(welder, primary)).hasValueSatisfying(e -> assertThat(e)
        .isCloseTo(effective, within(1e-9)));
  }

  /** NFPA 70 630.11(A): 45 A at 20 % counts 45 A × 0.45 = 20.25 A in the worksheet, as a stated effective current does. */
  @ParameterizedTest
  @CsvSource({"120/240 V", "120/208 V", "120/208 V three-phase"})
  void weldersInWorksheets(String system) {
    double byDuty = calculated(system, "welder 45 A duty-cycle 20 %");
    assertThat(byDuty).isCloseTo(calculated(system, "welder 45 A effective 20.25 A"), within(1e-6));
    assertThat(byDuty).isCloseTo(calculated(system, "welder 20.25 A"), within(1e-6));
    assertThat(calculated(system, "welder 45 A")).isGreaterThan(byDuty);
  }

  private static double calculated(String system, String device) {
    Compilation plan = compile(system, "1+3 50 A two-pole", "6/2 NM-B", device, "dwelling { floor-area 100 m2 }\n");
    var worksheets = plan.figures().worksheets();
    return worksheets.services().stream().findFirst().flatMap(worksheets::least).orElseThrow().current().si();
  }

  @Test
  void welders() {
    assertThat(onSplitPhase("40 A", "10/2 NM-B", "welder 40 A duty-cycle 50 %")).isEmpty();
    assertThat(onSplitPhase("50 A", "10/2 NM-B", "welder 50 A duty-cycle 20 %")).isEmpty();
    assertThat(onSplitPhase("40 A", "12/2 NM-B", "welder 50 A duty-cycle 20 %")).as("630.11(A): 22.5 A on 20 A")
        .containsExactly("conductor-below-load");
    assertThat(onSplitPhase("50 A", "12/2 NM-B", "welder 50 A duty-cycle 20 %")).as("630.12(B): 200 % of 20 A")
        .contains("breaker-above-conductor");
    assertThat(onSplitPhase("30 A", "10/2 NM-B", "welder 45 A effective 18 A")).as("it does not draw 45 A for long").isEmpty();
    assertThat(onSplitPhase("110 A", "3 Cu SER", "welder 50 A duty-cycle 20 %")).contains("load-breaker-large");
    assertThat(onSplitPhase("30 A", "10/2 NM-B", "welder 45 A")).as("without a duty cycle it counts in full")
        .contains("load-above-breaker");
  }
}
