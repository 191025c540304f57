package wattle.library;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.Completeness;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** Limits and tables that a plan has instead of those of its pack. */
class ReplacementsTest {
  private static Compilation compiled(String limit) {
    String text = """
        use code us-2023
        limit branch-drop "Most that a branch may lose" LIMIT { source "common practice" }
        service main 120/240 V 100 A { source available 10 kA  earth rods by 6 Cu }
        panel P from main { bus 100 A slots 4 bonded
          1 15 A arc-fault a
        }
        branch a by 14/2 NM-B { P --16 m-- den.o }
        room den { o: receptacle tamper-resistant }
        """.replace("LIMIT", limit);
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("den.wattle", text), Path.of("den.wattle"));
  }

  private static boolean drops(Compilation plan) {
    return plan.findings().stream().anyMatch(f -> f.rule().equals("voltage-drop-branch"));
  }

  /**
   * 12 A (80 % of the breaker), out and back at 3.07 ohm for 1000 ft of 14 AWG copper (NFPA 70-2023 chapter 9, table 8): 3.2 % of 120 V on
   * 16 m, where NFPA 70-2023 210.19 informational note 3 has 3 %.
   */
  @Test
  void oneOfTheSameKindIsUsed() {
    assertThat(drops(compiled("3 %"))).isTrue();
    assertThat(drops(compiled("3.5 %"))).isFalse();
    assertThat(compiled("3.5 %").completeness()).isEqualTo(Completeness.SOUND);
  }

  @Test
  void oneOfAnotherKindIsReportedWhereItStandsAndThatOfThePackStays() {
    Compilation plan = compiled("3 A");
    assertThat(drops(plan)).isTrue();
    assertThat(plan.completeness()).isEqualTo(Completeness.WRONG);
    assertThat(plan.findings()).filteredOn(f -> f.rule().equals("rule-type-mismatch")).isEmpty();
    Finding reported = plan.findings().stream().filter(f -> f.rule().equals("dimension-mismatch")).findFirst().orElseThrow();
    assertThat(reported.headline()).isEqualTo("limit 'branch-drop' cannot be 3 A");
    assertThat(reported.place().orElseThrow().span().line()).isEqualTo(2);
    assertThat(reported.place().orElseThrow().words()).isEqualTo("a plain number is expected here");
  }

  /** With 1 a transformer's halves would be one winding, and its matrix of impedances has no inverse; with 0 it would give power. */
  @Test
  void oneThatNothingCanBeWorkedOutWithIsReported() throws Exception {
    String house = Files.readString(Path.of("examples/alder-court/house.wattle"));
    for (String figure : List.of("0", "0.000001", "1", "2.5")) {
      String text = house + "\nlimit half-winding-resistance \"Half\" " + figure + " { source \"common practice\" }\n";
      Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", text), Path.of("house.wattle"));
      assertThat(plan.hasInternalError()).isFalse();
      assertThat(plan.findings()).extracting(Finding::rule).contains("limit-out-of-range");
    }
  }

  /** What looks up the bore of a raceway rests on every column of the table, and not on those alone that every table of its name has. */
  @Test
  void aTableWithoutTheColumnsOfThePackIsReportedAndThatOfThePackStays() throws Exception {
    String house = Files.readString(Path.of("examples/hollin-farm/house.wattle"));
    String text = house + "\ntable raceway-bore \"Bore\" {\n  source \"common practice\"\n  columns a\n  1\n}\n";
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", text), Path.of("house.wattle"));
    Compilation before = new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", house), Path.of("house.wattle"));
    assertThat(plan.hasInternalError()).isFalse();
    assertThat(plan.findings()).filteredOn(f -> !f.rule().equals("column-missing")).extracting(Finding::headline)
        .isEqualTo(before.findings().stream().map(Finding::headline).toList());
    assertThat(plan.findings()).extracting(Finding::rule).contains("column-missing");
  }

  /** Of two of one name each is held to the pack's, the shorter first: no column is looked for where the other has it. */
  @Test
  void twoOfOneNameAreEachReported() throws Exception {
    String text = Files.readString(Path.of("examples/hollin-farm/house.wattle"))
        + "\ntable raceway-bore \"Bore\" {\n  source \"common practice\"\n  columns a\n  1\n}\n"
        + "table raceway-bore \"Bore\" {\n  source \"common practice\"\n  columns a  b  c  size A  bore A\n  1 1 1 1 1\n}\n"
        + "limit branch-drop \"Drop\" 3 A { source \"common practice\" }\nlimit branch-drop \"Drop\" 3 V { source \"common practice\" }\n";
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", text), Path.of("house.wattle"));
    assertThat(plan.hasInternalError()).isFalse();
    assertThat(plan.findings()).filteredOn(f -> f.rule().equals("dimension-mismatch")).extracting(Finding::headline)
        .containsExactly("limit 'branch-drop' cannot be 3 A", "limit 'branch-drop' cannot be 3 V");
  }
}
