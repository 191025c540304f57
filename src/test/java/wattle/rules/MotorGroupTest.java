package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.figures.HouseFigures;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;
import wattle.trials.TrialResult;

/** Groups of motors on one circuit, and the start of one on a long run. */
class MotorGroupTest {
  private static Compilation plan(String supply, String breaker, String cable, Map<String, String> devices, String more) {
    StringBuilder text = new StringBuilder("plan \"T\"\nuse code us-2023\nservice main " + supply
        + " 200 A { source available 10 kA   run 20 m of 4/0 Al triplex }\npanel P from main { bus 200 A   slots 40   bonded\n"
        + " main breaker 200 A 22 kA\n " + breaker + " x\n}\nbranch x by " + cable + " { P");
    devices.keySet().forEach(d -> text.append(" --75 m-- shop.").append(d));
    text.append(" }\nroom shop is workshop {\n");
    devices.forEach((name, device) -> text.append(name).append(": ").append(device).append('\n'));
    return new Compiler(SourceReader.FROM_DISK).structure(new Source("t.wattle", text + "}\n" + more), Path.of("t.wattle"), List.of());
  }

  private static CircuitLoad load(Compilation plan) {
    assertThat(plan.findings()).extracting(Finding::headline).isEmpty();
    Facts facts = new Facts(new HouseIndex(new HouseFigures(plan.house(), plan.library())), false);
    return facts.circuitLoad(facts.runsOf(plan.house().branches().get("x")).get(0));
  }

  /** electricallicenserenewal.com, 430.24: motors of 12 A, 11 A and 6 A need 1.25 × 12 + 11 + 6 = 32 A. */
  @Test
  void largestOfThreeMotors() {
    Map<String, String> motors = new TreeMap<>(Map.of("a1", "motor 6 A 240 V", "b1", "motor 12 A 240 V", "c1", "motor 11 A 240 V"));
    assertThat(load(plan("120/240 V", "1+3 50 A two-pole", "6/2 NM-B", motors, "")).draws()).isEqualTo(32, within(0.01));
  }

  /** NFPA 70 430.24 with 430.17, on each hot: 1.25 × 10 A on one, 1.25 × 9 A on the other; no motor adds to the hot that it is not on. */
  @Test
  void largestMotorOfEachHot() {
    Compilation plan = plan("120/240 V", "1+3 30 A two-pole", "10/3 NM-B", Map.of(), "");
    String text = plan.source().text().replace("{ P }", "{ P --5 m-- shop.a1 on black --5 m-- shop.b1 on red --5 m-- shop.c1 on red }")
        .replace("room shop is workshop {\n", "room shop is workshop { a1: motor 10 A 120 V   b1: motor 9 A 120 V   c1: motor 5 A 120 V ");
    Compilation each = new Compiler(SourceReader.FROM_DISK).structure(new Source("t.wattle", text), Path.of("t.wattle"), List.of());
    assertThat(load(each).draws()).isEqualTo(1.25 * 9 + 5, within(0.01));
  }

  /**
   * common practice: at the start a motor is its locked-rotor impedance, 240 V / 144 A at a power factor of 0.4. Chapter 9 table 8 gives
   * 10 AWG 4.07 mΩ each meter at 75 °C, 0.61 Ω there and back, beside 1.67 Ω: |1.67 Ω| / |1.67 Ω + 0.61 Ω| of the voltage is left, 82 %.
   */
  @Test
  void startByLockedRotorCurrent() {
    Compilation plan = plan("120/240 V", "1+3 50 A two-pole", "10/2 NM-B", Map.of("a1", "motor 24 A 240 V locked-rotor 144 A"),
        "trial start { shop.a1 draws (locked-rotor) }\n");
    assertThat(plan.findings()).extracting(Finding::headline).isEmpty();
    TrialResult result = plan.figures().trials().result(plan.house().trials().get("start")).value();
    assertThat(result.outlets().get(0).volts().si()).isEqualTo(0.82 * 240, within(3.0));
  }

  /** What a plan does not state is not made up. */
  @Test
  void startWithoutLockedRotorCurrent() {
    Compilation plan = plan("120/240 V", "1+3 50 A two-pole", "10/2 NM-B", Map.of("a1", "motor 24 A 240 V"),
        "trial start { shop.a1 draws (locked-rotor) }\n");
    assertThat(plan.findings()).extracting(Finding::rule).containsExactly("locked-rotor-unstated");
  }
}
