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

class ExplainCommandTest {
  private static final Pattern MADE = Pattern.compile("Finding\\.(?:error|warning|advice)\\(\\s*\"([a-z0-9-]+)\"");

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
        Matcher matcher = MADE.matcher(Files.readString(file));
        while (matcher.find()) {
          made.add(matcher.group(1));
        }
      }
    }
    assertThat(made).hasSizeGreaterThan(80);
    assertThat(StructurePages.names()).containsAll(made);
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
}
