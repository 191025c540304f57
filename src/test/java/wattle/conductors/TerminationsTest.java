package wattle.conductors;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.derivation.Derivation;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.model.Branch;
import wattle.model.Metal;
import wattle.model.Panel;
import wattle.model.Section;
import wattle.read.SourceReader;

/**
 * The column that both ends of a run are held to. Ampacities: NFPA 70 Table 310.16; which column: NFPA 70 110.14(C)(1), and
 * CSA C22.1 Tables 2 and 4 with 4-006.
 */
class TerminationsTest {
  /** A circuit in a raceway, where only its ends can hold it below 90 °C or 75 °C. */
  private static Compilation plan(String code, String amperes, String atBreaker, String wires, String atDevice) {
    String text = """
        plan "Ends"
        use code %s
        service main 120/240 V 200 A { source available 10 kA   run 20 m of 4/0 Al triplex   earth water-pipe by 4 Cu   earth rods by 6 Cu }
        panel P from main {
          bus 200 A   slots 40   bonded
          main breaker 200 A 22 kA
          1+3  %s  two-pole  %s  f  "Furnace"
        }
        branch f by 2 in EMT with 2 x %s, 6 Cu ground { P --5 m-- utility.f }
        room utility { f: electric furnace 9 kW %s }
        """
        .formatted(code, amperes, atBreaker, wires, atDevice);
    Compilation made = new Compiler(SourceReader.FROM_DISK).compile(new Source("ends.wattle", text), Path.of("ends.wattle"));
    assertThat(made.findings()).filteredOn(f -> f.severity() == Severity.ERROR && f.rule().endsWith("unknown")).isEmpty();
    return made;
  }

  private static double between(Compilation plan) {
    Conductors conductors = Conductors.of(plan.house(), plan.library());
    Branch branch = plan.house().branches().get("f");
    Section section = branch.sections().get(0);
    Derivation rating = Derivation.stated("rating", "I",
        plan.house().breaker(branch.hots().get(0).breaker()).orElseThrow().rating().orElseThrow());
    Conditions conditions = conductors.runs().of(branch, section, section.wiring().hot()).orElseThrow();
    return conductors.ampacities().between(conditions, rating, conductors.terminations().of(branch, section, rating)).orElseThrow().si();
  }

  private record Case(String code, String amperes, String breaker, String wires, String device, double allowed) {}

  @TestFactory
  Stream<DynamicTest> bothEndsCount() {
    return Stream.of(
        new Case("us-2023", "60 A", "", "6 Cu THHN", "", 55),
        new Case("us-2023", "60 A", "terminals 75 degC", "6 Cu THHN", "terminals 75 degC", 65),
        new Case("us-2023", "60 A", "terminals 75 degC", "6 Cu THHN", "", 55),
        new Case("us-2023", "60 A", "", "6 Cu THHN", "terminals 75 degC", 55),
        new Case("us-2023", "60 A", "terminals 60 degC", "6 Cu THHN", "terminals 90 degC", 55),
        new Case("us-2023", "60 A", "terminals 167 degF Cu", "6 Cu THHN", "terminals 75 degC Cu Al", 65),
        new Case("us-2023", "100 A", "terminals 75 degC", "3 Cu THHN", "terminals 75 degC", 100),
        new Case("us-2023", "100 A", "", "3 Cu THHN", "", 85),
        new Case("us-2023", "125 A", "", "1 Cu THHN", "", 130),
        new Case("us-2023", "125 A", "terminals 60 degC", "1 Cu THHN", "", 110),
        new Case("us-2023", "60 A", "terminals 75 degC Al", "4 Al XHHW-2", "terminals 75 degC Al", 65),
        new Case("us-2023", "60 A", "", "4 Al XHHW-2", "", 55),
        new Case("ca-2021", "60 A", "", "6 Cu RW90", "", 55),
        new Case("ca-2021", "60 A", "terminals 75 degC", "6 Cu RW90", "terminals 75 degC", 65),
        new Case("ca-2021", "125 A", "", "1 Cu RW90", "", 130))
        .map(
            c -> DynamicTest.dynamicTest(
                c.toString(),
                () -> assertThat(between(plan(c.code, c.amperes, c.breaker, c.wires, c.device))).isEqualTo(c.allowed)));
  }

  /** 3 AWG carries 100 A at 75 °C and 85 A at 60 °C: the marking decides whether a 100 A breaker guards it. */
  @Test
  void theRuleGoesByTheMarking() {
    Case marked = new Case("us-2023", "100 A", "terminals 75 degC", "3 Cu THHN", "terminals 75 degC", 100);
    for (String device : List.of("terminals 75 degC", "")) {
      List<Finding> findings = plan(marked.code, marked.amperes, marked.breaker, marked.wires, device).findings();
      assertThat(findings.stream().anyMatch(f -> f.rule().equals("breaker-above-conductor"))).as(device).isEqualTo(device.isEmpty());
    }
  }

  @Test
  void aPanelSpeaksForItsBreakersAndTheLowerMarkingHolds() {
    String head = "plan \"Ends\"\nservice main 120/240 V 200 A { source available 10 kA   earth rods by 6 Cu }\n";
    String text = head
        + """
            panel P from main { bus 200 A   slots 40   bonded   terminals 75 degC Cu
              main breaker 200 A 22 kA terminals 90 degC Cu Al
              1  20 A  terminals 90 degC  b
              3  20 A  terminals 60 degC Al  b2
              5  20 A  b3
            }
            """;
    Panel panel = new Compiler(SourceReader.FROM_DISK).structure(new Source("p.wattle", text), Path.of("p.wattle")).house()
        .panels().get("P");
    assertThat(panel.breakers()).extracting(b -> panel.terminalsOf(b).text()).containsExactly("75 °C Cu", "60 °C Al", "75 °C Cu");
    assertThat(panel.incoming().text()).isEqualTo("75 °C Cu Al");
    assertThat(panel.incoming().take(Metal.ALUMINUM)).isEqualTo(Optional.of(true));
    assertThat(panel.terminals().take(Metal.ALUMINUM)).isEqualTo(Optional.of(false));
  }

  /** A splice with nothing said of its connectors is an end that is not marked. */
  @Test
  void aSpliceIsAnEndToo() {
    String text = """
        plan "Splice"
        use code us-2023
        service main 120/240 V 200 A { source available 10 kA   earth rods by 6 Cu }
        panel P from main { bus 200 A   slots 40   bonded   terminals 75 degC
          main breaker 200 A 22 kA
          1+3  60 A  two-pole  f  "Furnace"
        }
        branch f by 1 in EMT with 2 x 6 Cu THHN, 10 Cu ground { P --5 m-- utility.j --2 m-- utility.f }
        room utility { j: junction %s   f: electric furnace 9 kW terminals 75 degC }
        """;
    for (String connector : List.of("", "terminals 90 degC")) {
      Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(new Source("s.wattle", text.formatted(connector)),
          Path.of("s.wattle"));
      assertThat(between(plan)).as(connector).isEqualTo(connector.isEmpty() ? 55 : 65);
    }
  }
}
