package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.assertj.core.api.Condition;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** What a plan does not state is listed where a rule asked for it, and nowhere else. */
class CoverageTest {
  private static Compilation plan(String panel, String service, String run) {
    String text = """
        plan "Coverage"
        use code us-2023
        dwelling { floor-area 60 m2 }
        service main 120/240 V 200 A { source available 10 kA   run 20 m of 4/0 Al triplex   earth water-pipe by 4 Cu   earth rods by 6 Cu
          %s
        }
        panel P from main { bus 200 A   slots 40   bonded   terminals Cu Al   %s
          main breaker 200 A 22 kA
          1  15 A  arc-fault  b  "Den"
        }
        branch b by 14/2 NM-B { P --5 m %s-- den.r --3 m %s-- den.j --3 m %s-- den.a }
        room den is living wall 3 m floor 0 { r: receptacle 18 in3 tamper-resistant   j: junction 18 in3 accessible covered
          a: smoke alarm 3 W 18 in3 linked }
        room store is utility floor 0 { }
        """;
    Source source = new Source("coverage.wattle", text.formatted(service, panel, run, run, run));
    return new Compiler(SourceReader.FROM_DISK).compile(source, Path.of("coverage.wattle"));
  }

  private static final String PANEL = "room store   height 70 in   no over-steps   readily-accessible   working-depth 40 in  "
      + " working-width 32 in   working-height 84 in";

  @Test
  void whatIsStatedIsNotListed() {
    Compilation whole = plan(PANEL, "surge-protection   outdoor-disconnect   no footing-rebar   no steel-frame",
        "supported 1.2 m held 0.2 m from-edge 40 mm");
    assertThat(whole.findings()).isEmpty();
    assertThat(whole.coverage().unstated()).isEmpty();
    assertThat(whole.coverage().open()).isZero();
    assertThat(whole.coverage().rules()).isGreaterThan(90);
    assertThat(whole.coverage().told()).isPositive();
  }

  /** Each fact that is taken out is listed, with the thing that lacks it and the rules that asked; what is false is a finding. */
  @Test
  void whatIsLeftOutIsListed() {
    Coverage coverage = plan("", "", "").coverage();
    assertThat(coverage.unstated()).extracting(Unstated::fact)
        .containsExactlyInAnyOrder(
            "first-support", "support", "from-edge", "room", "height", "over-steps", "readily-accessible", "working-depth", "working-width",
            "working-height", "surge-protection", "outdoor-disconnect", "electrodes-used");
    Unstated support = coverage.unstated().stream().filter(u -> u.fact().equals("support")).findFirst().orElseThrow();
    assertThat(support.places()).containsExactly("b from P to den.r", "b from den.j to den.a", "b from den.r to den.j");
    assertThat(support.rules()).containsExactly("cable-support-sparse");
    Unstated room = coverage.unstated().stream().filter(u -> u.fact().equals("room")).findFirst().orElseThrow();
    assertThat(room.places()).containsExactly("P");
    assertThat(room.rules()).containsExactly("panel-in-bathroom", "panel-in-closet");
    assertThat(coverage.open()).isEqualTo(3 + 3 + 3 + 2 + 6 + 3);
  }

  private static Compilation service(String dwellings, String disconnect) {
    String text = """
        plan "Disconnect"
        use code us-2023
        %s
        service main 120/240 V 200 A { source available 10 kA   run 20 m of 4/0 Al triplex   earth water-pipe by 4 Cu   earth rods by 6 Cu
          %s }
        panel P from main { bus 200 A   slots 40   bonded
          main breaker 200 A 22 kA
          1+3  50 A  two-pole  east  "East"
        }
        panel east from P/1 by 4 m of 6/3 NM-B { slots 4
          1  15 A  spare
          2  15 A  spare
          3  15 A  spare
        }
        """;
    Source source = new Source("disconnect.wattle", text.formatted(dwellings, disconnect));
    return new Compiler(SourceReader.FROM_DISK).compile(source, Path.of("disconnect.wattle"));
  }

  private record Dwellings(String written, boolean asked) {}

  /** NFPA 70-2023 230.85 asks an emergency disconnect of one- and two-family dwellings, and of no larger house. */
  @TestFactory
  Stream<DynamicTest> anEmergencyDisconnectIsAskedOfOneAndTwoDwellings() {
    return Stream.of(
        new Dwellings("", true),
        new Dwellings("dwelling { floor-area 90 m2 }", true),
        new Dwellings("dwelling { dwellings 1 }", true),
        new Dwellings("dwelling { dwellings 2 }", true),
        new Dwellings("dwelling { dwellings 3 }", false),
        new Dwellings("dwelling upper on east { }\ndwelling lower on P { }", true),
        new Dwellings("dwelling upper on east { }\ndwelling lower on P { dwellings 2 }", false),
        new Dwellings("dwelling upper on east { }\ndwelling lower on P { }\ndwelling back on P { }", false))
        .map(d -> DynamicTest.dynamicTest(d.written + " is asked: " + d.asked, () -> {
          Condition<Finding> missing = new Condition<>(f -> f.rule().equals("emergency-disconnect-missing"), "of the disconnect");
          assertThat(service(d.written, "no outdoor-disconnect").findings()).haveExactly(d.asked ? 1 : 0, missing);
          assertThat(service(d.written, "outdoor-disconnect").findings()).haveExactly(0, missing);
          Compilation unsaid = service(d.written, "");
          assertThat(unsaid.coverage().rules()).isPositive();
          assertThat(unsaid.findings()).haveExactly(0, missing);
          assertThat(
              unsaid.coverage().unstated().stream().filter(u -> u.fact().equals("outdoor-disconnect")).flatMap(u -> u.rules().stream()))
              .isEqualTo(d.asked ? List.of("emergency-disconnect-missing") : List.of());
        }));
  }

  @Test
  void whatIsDeniedIsAFinding() {
    List<Finding> found = plan(PANEL.replace("no over-steps", "over-steps"), "no surge-protection   outdoor-disconnect",
        "supported 2 m held 0.2 m from-edge 40 mm").findings();
    assertThat(found).extracting(Finding::rule)
        .containsExactlyInAnyOrder("panel-over-steps", "surge-protection-missing", "cable-support-sparse", "cable-support-sparse",
            "cable-support-sparse");
  }

  /** Statements about the same plan never change what is found: a rule that cannot be told raises nothing. */
  @Test
  void nothingIsRaisedForWantOfAFact() {
    assertThat(plan("", "", "").findings()).isEmpty();
  }

  /** Rules are asked of a plan with mistakes as well; what a mistake leaves in doubt is counted by itself. */
  @Test
  void whatAMistakeLeavesInDoubtIsCounted() {
    Source source = new Source("broken.wattle", "plan \"Broken\"\nuse code us-2023\nbranch b by 14/2 NM-B { P --3 m-- den.r }\n");
    Coverage coverage = new Compiler(SourceReader.FROM_DISK).compile(source, Path.of("broken.wattle")).coverage();
    assertThat(coverage.rules()).isGreaterThan(90);
    assertThat(coverage.inDoubt()).isPositive();
  }
}
