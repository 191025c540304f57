package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A rule that stands beside a plan: it is explained with the plan, and its samples are run when asked for. */
class OwnRuleTest {
  private static final String PLAN = """
      plan "Shed"
      use code us-2023
      use "local.wattle"
      service main 120/240 V 100 A { source transformer 25 kVA 2 %   run 20 m of 4/0 Al triplex   earth water-pipe by 4 Cu }
      panel P from main { bus 100 A slots 20 bonded
        main breaker 100 A 22 kA
        1 15 A shed "Shed" }
      branch shed by 14/2 NM-B { P --40 m-- shed.o }
      room shed { o: receptacle }
      """;

  private static final String SAMPLE = "    panel P from main {\n      1 15 A a \"A\" }\n"
      + "    branch a by 14/2 NM-B { P --%s m-- den.o }\n    room den { o: receptacle }";

  @TempDir
  private Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... arguments) {
    return Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
  }

  private String plan(String accepted, String rejected) throws IOException {
    Files.writeString(folder.resolve("local.wattle"), """
        rule run-long "Runs are short" {
          for each run r
          for all work
          require r.length is at most 30 m
          otherwise advice "run of '{r.branch.name}' is long: {r.length}"
          at r
          fix "move the panel"
          because "Custom of one shop."
          source "common practice"
          accept {
        %s
          }
          reject {
        %s
          }
        }
        """.formatted(SAMPLE.formatted(accepted), SAMPLE.formatted(rejected)));
    return Files.writeString(folder.resolve("house.wattle"), PLAN).toString();
  }

  @Test
  void itsFindingSaysHowItIsExplained() throws IOException {
    String plan = plan("10", "40");
    run("check", plan);
    assertThat(out.toString()).contains("[run-long]").contains("more: wattle explain run-long " + plan);
    assertThat(run("explain", "run-long", plan)).isZero();
    assertThat(out.toString()).contains("Runs are short").contains("Custom of one shop.").contains("passes:");
  }

  @Test
  void withoutItsPlanTheWayIsShown() throws IOException {
    assertThat(run("explain", "zzz-nothing-like-it")).isEqualTo(ExitCode.USAGE);
    assertThat(err.toString()).contains("wattle explain RULE PLAN").hasLineCount(1);
    assertThat(run("explain", "box-overfilled", plan("10", "40"))).isEqualTo(ExitCode.USAGE);
    assertThat(err.toString()).contains("they have run-long");
  }

  @Test
  void samplesThatDoWhatTheyAreForAddNothing() throws IOException {
    run("check", "--rules", plan("10", "40"));
    assertThat(out.toString()).doesNotContain("sample-");
  }

  @Test
  void aRejectThatPassesIsAnError() throws IOException {
    assertThat(run("check", "--rules", plan("10", "20"))).isEqualTo(ExitCode.FOUND);
    assertThat(out.toString()).contains("sample-reject-passes").contains("raises it 0 times");
  }

  @Test
  void anAcceptThatIsRaisedIsAnError() throws IOException {
    assertThat(run("check", "--rules", plan("35", "40"))).isEqualTo(ExitCode.FOUND);
    assertThat(out.toString()).contains("sample-accept-raises");
  }

  @Test
  void aSampleThatCannotBeBoundIsAnError() throws IOException {
    assertThat(run("check", "--rules", plan("10 m", "40"))).isEqualTo(ExitCode.FOUND);
    assertThat(out.toString()).contains("sample-unreadable");
  }
}
