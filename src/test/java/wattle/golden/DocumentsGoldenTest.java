package wattle.golden;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.cli.Main;

/** Whole documents of the examples, as a user reads them. */
class DocumentsGoldenTest {
  private static String output(int code, String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    assertThat(Main.run(arguments, new PrintWriter(out), new PrintWriter(err))).as(err.toString()).isEqualTo(code);
    return out.toString();
  }

  @Test
  void lockoutOfAPanelWithSolar() {
    Golden.check(
        Path.of("examples/workshop/panel-S.lockout.txt"), output(0, "lockout", "examples/workshop/house.wattle", "panel", "S"));
  }

  @Test
  void lockoutOfASharedNeutral() {
    Golden.check(
        Path.of("examples/workshop/bench.lockout.txt"), output(0, "lockout", "examples/workshop/house.wattle", "workshop.b2"));
  }

  @Test
  void lockoutOfAPanelBehindATransferSwitch() {
    Golden.check(
        Path.of("examples/marlow-croft/panel-E.lockout.txt"), output(0, "lockout", "examples/marlow-croft/house.wattle", "panel", "E"));
  }

  @Test
  void trialsOfAHouseThatFeedsItself() {
    Golden.check(Path.of("examples/marlow-croft/trials.txt"), output(0, "trial", "examples/marlow-croft/house.wattle", "--every"));
  }

  @Test
  void changesOfARenovation() {
    String folder = "examples/kitchen-renovation/";
    Golden.check(Path.of(folder + "changes.txt"), output(1, "compare", folder + "before.wattle", folder + "after.wattle"));
  }

  /** Every line that the document shows of it is one of the output, in its order. */
  @Test
  void theChangesThatTheDocumentShowsAreThere() throws IOException {
    String document = Files.readString(Path.of("examples/README.md"));
    String block = document.substring(document.indexOf("```\n~ breaker of kitchen") + 4);
    List<String> shown = block.substring(0, block.indexOf("\n```")).lines().filter(l -> !l.isBlank()).toList();
    String folder = "examples/kitchen-renovation/";
    List<String> printed = output(1, "compare", folder + "before.wattle", folder + "after.wattle").lines().toList();
    assertThat(shown).hasSizeGreaterThan(20);
    assertThat(printed).containsSubsequence(shown);
  }

  @Test
  void materialsOfARenovation() {
    Golden.check(
        Path.of("examples/kitchen-renovation/materials.csv"),
        output(0, "table", "--of", "materials", "--format", "csv", "examples/kitchen-renovation/after.wattle"));
  }
}
