package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.Reading;
import wattle.read.SourceReader;

/** One house under two codes, and rules of a plan's own. */
class CodesDifferTest {
  private static final Path ALDER_COURT = Path.of("examples/alder-court/house.wattle");

  private static Compilation under(String code) throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK, new Reading.UnderCode(code)).compile(ALDER_COURT);
  }

  /**
   * The counters of Alder Court are split receptacles on 20 A: what NFPA 70 210.52(B) allows, and CSA C22.1 26-722 d) does
   * not, which wants split ones at 15 A or 20 A ones unsplit. The outdoor run is within reach of advice in one code and of a
   * rule in the other.
   */
  @Test
  void alderCourtDiffersWhereTheCodesDiffer() throws SourceReader.Unreadable {
    assertThat(under("us-2023").findings()).isEmpty();
    assertThat(under("ca-2021").findings()).extracting(Finding::rule).containsOnly("counter-receptacle-kind").hasSize(4);
  }

  private static List<Finding> check(String more) {
    String plan = """
        plan "Local rules"
        use code us-2023
        service main 120/240 V 100 A { source available 10 kA   earth water-pipe by 4 Cu   earth rods by 6 Cu }
        panel P from main {
          bus 100 A   slots 20   bonded
          main breaker 100 A 10 kA
          1 15 A arc-fault b "Den"
        }
        branch b by 14/2 NM-B { P --5 m-- den.a --2 m-- den.b --2 m-- den.c }
        room den is living { a: receptacle tamper-resistant   b: receptacle tamper-resistant   c: receptacle tamper-resistant }
        """;
    // What cannot be known of so bare a house is no matter of codes.
    return wattle.Structure.known(
        new Compiler(SourceReader.FROM_DISK).compile(new Source("local.wattle", plan + more), Path.of("local.wattle")).findings());
  }

  @Test
  void aPlanTightensALimit() {
    assertThat(check("")).isEmpty();
    List<Finding> found = check("limit many-outlets 2 { source \"town office\" \"leaflet 4\" }\n");
    assertThat(found).extracting(Finding::headline).containsExactly("circuit 'b' has 3 outlets; 2 is the usual local limit");
  }

  @Test
  void aPlanAddsARule() {
    String rule = """
        rule long-run "Runs are short" {
          for each run r
          for all work
          require r.length is at most 4 m
          otherwise warning "the run to {r.to} is {r.length} long"
          at r "over 4 m"
          note "A habit of this office."
          fix "shorten it"
          source "town office" "leaflet 5"
          because "It is asked for here."
        }
        """;
    assertThat(check(rule)).extracting(Finding::headline).containsExactly("the run to den.a is 5 m long");
  }

  @Test
  void aSilenceKeepsTheFindingWithItsReason() {
    String limit = "limit many-outlets 2 { source \"town office\" }\n";
    List<Finding> found = check(limit + "silence many-outlets at b because \"agreed with the office\"\n");
    assertThat(found).singleElement().satisfies(f -> assertThat(f.silenced()).contains("agreed with the office"));
    assertThat(check("silence many-outlets because \"none\"\n")).extracting(Finding::rule).containsExactly("silence-idle");
    assertThat(check("silence many-outlet because \"none\"\n")).singleElement()
        .satisfies(f -> assertThat(f.fixes().get(0).order()).isEqualTo("write many-outlets"));
  }

  /** A mistake in a rule is a finding at its line, and the rest of the plan is checked. */
  @Test
  void mistakesInRulesAreFindings() {
    Stream.of(
        "require r.lenght is at most 4 m|rule-property-unknown",
        "require r.length is at most 4 A|rule-type-mismatch",
        "require r.length|rule-type-mismatch",
        "require limit.nothing is at most 4|rule-property-unknown",
        "require r.wiring.size is at least 4 m|rule-type-mismatch")
        .map(s -> s.split("\\|"))
        .forEach(s -> {
          String rule = "rule odd \"Odd\" {\n  for each run r\n  for all work\n  " + s[0]
              + "\n  otherwise error \"x\"\n  at r\n  note \"n\"\n  fix \"f\"\n  because \"b\"\n}\n";
          assertThat(check(rule)).as(s[0]).singleElement().satisfies(f -> {
            assertThat(f.rule()).isEqualTo(s[1]);
            assertThat(f.place().orElseThrow().span().text()).isNotEmpty();
          });
        });
    String guessed = "rule odd \"Odd\" {\n  for each run r\n  for all work\n  require r.color is at most 4 m\n  otherwise error"
        + " \"x\"\n  at r\n}\n";
    assertThat(check(guessed)).singleElement().satisfies(f -> assertThat(f.reason()).contains("There are ", " length,", " wiring"));
    String hole = "rule odd \"Odd\" {\n  for each run r\n  for all work\n  require r.length is at most 4 m\n  otherwise error"
        + " \"{r.nothing}\"\n  at r\n}\n";
    assertThat(check(hole)).extracting(Finding::rule).containsExactly("rule-property-unknown");
    assertThat(check("rule odd \"Odd\" { for each fish r\n}\n")).extracting(Finding::rule).contains("rule-kind-unknown");
  }
}
