package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import wattle.compiler.StructurePages;

class ExplainCommandTest {
  private static final Pattern MADE = Pattern
      .compile("(?:Finding\\s*\\.(?:error|warning|advice)|Objection\\s*\\.(?:error|warning|advice))\\(\\s*\"([a-z0-9-]+)\"");

  /** Names that decide something stand in a type of their own. */
  private static final Pattern TYPED = Pattern.compile("[A-Z]+_[A-Z_]+\\(\\s*\"([a-z-]+)\"");

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... arguments) {
    return Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
  }

  /** Every name that a finding can bear in brackets is explained: the finding says that it is. */
  @Test
  void everyFindingHasAPage() throws IOException {
    TreeSet<String> made = new TreeSet<>();
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
        boolean typed = file.endsWith("syntax/Stop.java");
        Matcher matcher = (typed ? TYPED : MADE).matcher(Files.readString(file));
        while (matcher.find()) {
          made.add(matcher.group(1));
        }
      }
    }
    assertThat(made).hasSizeGreaterThan(80).contains("nesting-too-deep", "too-many-mistakes");
    assertThat(StructurePages.names()).containsAll(made)
        .contains("room-area-missing", "floor-area-missing", "dwelling-missing", "fault-below-instantaneous");
  }

  @Test
  void aRuleIsExplainedWithItsSamplesAndSource() {
    assertThat(run("explain", "box-overfilled")).isZero();
    assertThat(out.toString()).contains("314.16(B)").contains("passes:").contains("does not pass").contains("licensed person");
  }

  @Test
  void allRulesAreListedByPack() {
    assertThat(run("explain")).isZero();
    assertThat(out.toString()).contains("common\n").contains("us-2023\n").contains("ca-2021\n").contains("unit-missing");
  }

  @Test
  void aNameThatNothingHasGetsNearOnes() {
    assertThat(run("explain", "box-overfiled")).isEqualTo(ExitCode.USAGE);
    assertThat(err.toString()).contains("box-overfilled").hasLineCount(1);
  }

  private static final String HOUSE = "examples/alder-court/house.wattle";

  @Test
  void aFigureIsUnfoldedToTablesAndSources() {
    assertThat(run("explain", HOUSE, "--figure", "ampacity of hall from P to hall.sw")).isZero();
    assertThat(out.toString())
        .startsWith("ampacity of hall from P to hall.sw: 15.0 A\n")
        .contains("min(I_c, I_u) = min(25 A, 15 A) = 15 A")
        .contains("table ampacity, size 14 AWG, column copper-60; NFPA 70 Table 310.16")
        .contains("ambient = 30 °C   (assumed)");
  }

  @Test
  void theFigureThatWasAskedComesWithTheNamesOfOthersThatMatch() {
    assertThat(run("explain", HOUSE, "--figure", "voltage")).isZero();
    assertThat(out.toString()).startsWith("nominal voltage of ").contains("These match too:").contains("more: wattle explain " + HOUSE);
    assertThat(out.toString().lines().filter(l -> l.contains("voltage of") && !l.startsWith(" "))).hasSize(1);
  }

  @Test
  void severalFiguresAndThoseOfATrial() {
    assertThat(run("explain", HOUSE, "--figure", "neutral of counter", "--figure", "load of dryer")).isZero();
    assertThat(out.toString()).contains("neutral of counter at most: 20.0 A").contains("neutral of counter at stated loads")
        .contains("load of dryer: 5500 VA");
    assertThat(run("explain", HOUSE, "--trial", "warm-joint", "--figure", "heat of the joint at kitchen.micro")).isZero();
    assertThat(out.toString()).contains("I² × R_j");
  }

  @Test
  void aFigureThatIsNotThereGetsNearNamesAndTheList() {
    assertThat(run("explain", HOUSE, "--figure", "ampacity of hal")).isEqualTo(ExitCode.USAGE);
    assertThat(err.toString()).contains("no figure is called 'ampacity of hal'; did you mean ampacity of hall").contains("--figures")
        .hasLineCount(1);
    assertThat(out.toString()).isEmpty();
    assertThat(run("explain", HOUSE, "--figures")).isZero();
    assertThat(out.toString()).contains("Voltage\n").contains("  ampacity of hall from P to hall.sw ").contains("Worksheet result\n");
  }

  @Test
  void whatDoesNotGoTogetherIsRefused() {
    assertThat(run("explain", "--figure", "ampacity of hall")).isEqualTo(ExitCode.USAGE);
    assertThat(run("explain", HOUSE)).isEqualTo(ExitCode.USAGE);
    assertThat(run("explain", "box-overfilled", "--trial", "evening")).isEqualTo(ExitCode.USAGE);
    assertThat(run("explain", HOUSE, "--figures", "--figure", "x")).isEqualTo(ExitCode.USAGE);
    assertThat(run("explain", HOUSE, "--figures", "--trial", "evenin")).isEqualTo(ExitCode.USAGE);
    assertThat(err.toString())
        .contains("name its file").contains("is a plan").contains("--trial goes with").contains("did you mean evening")
        .hasLineCount(5);
  }

  @Test
  void whatMayBeSilencedSaysSo() {
    assertThat(run("explain", "fault-below-instantaneous")).isZero();
    assertThat(out.toString()).contains("may silence it").doesNotContain("cannot be silenced");
    assertThat(run("explain", "branch-loop")).isZero();
    assertThat(out.toString()).contains("cannot be silenced");
  }

  @Test
  void mendRefusesANameThatNoRuleHas() {
    assertThat(run("mend", "--rule", "arc-fault-mising", "examples/alder-court/house.wattle")).isEqualTo(ExitCode.USAGE);
    assertThat(err.toString()).contains("did you mean arc-fault-missing");
  }
}
