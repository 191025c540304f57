package wattle.faults;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.read.SourceReader;

/** What the golden plans in {@code plans/findings/faults} do not show. */
class FaultChecksTest {
  private static List<Finding> of(String text) {
    return withoutRules(Plans.compile(text));
  }

  /** What the rules of the packs say of so bare a house, and what of it cannot be known, is no matter of faults. */
  private static List<Finding> withoutRules(Compilation plan) {
    return wattle.Structure.findings(plan);
  }

  /** Both example houses: a 50 kVA transformer near by, and an old 60 A service. */
  @Test
  void theExamplesHaveNone() throws SourceReader.Unreadable {
    for (String house : List.of("alder-court", "cottage")) {
      assertThat(withoutRules(new Compiler(SourceReader.FROM_DISK).compile(Path.of("examples/" + house + "/house.wattle")))).isEmpty();
    }
  }

  @Test
  void aSourceWithoutImpedanceIsToldOf() {
    String nothing = "0.0000001"; // far less than any house has, and within the bounds of figures
    for (String source : List.of("transformer 50 kVA " + nothing + " %", "transformer 25000000 kVA 2 %")) {
      List<Finding> findings = of(Plans.house("source " + source, "15 A 10 kA", "by 14/2 NM-B { P --1 m-- r.one }"));
      assertThat(findings).as(source).extracting(Finding::rule).containsExactly("source-without-impedance");
      assertThat(findings.toString()).doesNotContain("NaN").doesNotContain("Infinity");
    }
    List<Finding> weak = of(Plans.house("source available " + nothing + " A", "15 A", "by 14/2 NM-B { P --1 m-- r.one }"));
    assertThat(weak).extracting(Finding::rule).containsExactly("fault-below-instantaneous");
    assertThat(weak.toString()).doesNotContain("NaN").doesNotContain("Infinity");
  }

  /** A single pole opens a fault from its leg to neutral, and is not asked for the greater current between legs. */
  @Test
  void aSinglePoleIsJudgedByTheCurrentToNeutral() {
    String source = "source transformer 50 kVA 1.8 % ratio 2\n run 9 m of 4/0 Al triplex";
    Faults faults = Plans.faults(Plans.house(source, "15 A", "by 14/2 NM-B { P --20 m-- r.one }"));
    double lines = faults.panel("P").fault(FaultKind.LINE_LINE).orElseThrow().mostAmperes();
    double neutral = faults.panel("P").fault(FaultKind.LINE_NEUTRAL).orElseThrow().mostAmperes();
    String between = String.format(java.util.Locale.ROOT, "%.3f kA", (lines + neutral) / 2000);
    List<Finding> single = of(Plans.house(source, "15 A " + between, "by 14/2 NM-B { P --20 m-- r.one }"));
    assertThat(single.stream().anyMatch(f -> f.rule().equals("interrupting-rating-below-fault"))).isEqualTo(neutral > lines);
  }

  /** Where the breaker trips at once the conductor is left to the let-through that its maker states. */
  @Test
  void aShortRunIsQuiet() {
    assertThat(of(Plans.house("source available 9 kA", "15 A", "by 14/2 NM-B { P --0 m-- r.one }"))).isEmpty();
    assertThat(of(Plans.house("source available 9 kA", "15 A", "by 14/2 NM-B { P --25 m-- r.one }"))).isEmpty();
  }

  @Test
  void theGaugeOffered() {
    String plan = Plans.house("source available 9 kA", "15 A", "by 14/2 NM-B { P --70 m-- r.one }");
    Finding finding = of(plan).get(0);
    assertThat(finding.rule()).isEqualTo("fault-below-instantaneous");
    String size = finding.fixes().get(0).order().replaceAll(".* in (\\d+) AWG.*", "$1");
    assertThat(of(plan.replace("14/2", size + "/2"))).isEmpty();
    assertThat(of(plan.replace("14/2", (Integer.parseInt(size) + 2) + "/2"))).isNotEmpty();
  }
}
