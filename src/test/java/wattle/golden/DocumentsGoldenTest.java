package wattle.golden;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
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
  void changesOfARenovation() {
    String folder = "examples/kitchen-renovation/";
    Golden.check(Path.of(folder + "changes.txt"), output(1, "compare", folder + "before.wattle", folder + "after.wattle"));
  }

  @Test
  void materialsOfARenovation() {
    Golden.check(
        Path.of("examples/kitchen-renovation/materials.csv"),
        output(0, "table", "--of", "materials", "--format", "csv", "examples/kitchen-renovation/after.wattle"));
  }
}
