package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code trial} and the tables of worst cases at the command line. */
class TrialCommandTest {
  private static final String COURT = "examples/alder-court/house.wattle";

  private record Ran(int code, String out, String err) {}

  private static Ran run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
    return new Ran(code, out.toString(), err.toString());
  }

  @Test
  void aTrialOfThePlanByName() {
    Ran ran = run("trial", COURT, "toaster-alone");
    assertThat(ran.code).isEqualTo(ExitCode.FINE);
    assertThat(ran.err).isEmpty();
    assertThat(ran.out).contains("Toaster alone: outlets", "P to kitchen.c1", "neutral", "10.00", "prove dead");
  }

  @Test
  void eventsOfTheCommandLineComeOnTop() throws IOException {
    Ran ran = run("trial", COURT, "toaster-alone", "--event", "kitchen.c1.lower draws 4 A", "--event", "open breaker P/1", "--format",
        "json", "--all");
    assertThat(ran.code).isEqualTo(ExitCode.FINE);
    JsonNode root = new ObjectMapper().readTree(ran.out);
    assertThat(root.toString()).contains("current in neutral, P to kitchen.c1").contains("6 A");
  }

  @Test
  void withoutANameTheTrialsAreListed() {
    Ran ran = run("trial", COURT);
    assertThat(ran.code).isEqualTo(ExitCode.FINE);
    assertThat(ran.out).contains("toaster-alone", "Toaster alone", "kitchen.c1.upper draws 10 A").doesNotContain("outlets");
    assertThat(ran.err).contains("wattle trial " + COURT + " NAME").contains("--every");
    assertThat(run("trial", COURT, "breakfast", "--every").err).contains("--every runs all trials");
  }

  @Test
  void everyTrialRuns() {
    assertThat(run("trial", COURT, "--every").out).contains("Toaster and kettle: outlets", "Toaster alone: outlets");
  }

  @Test
  void sourcesAndTransfersComeFromTheCommandLine() {
    Ran ran = run(
        "trial", "examples/marlow-croft/house.wattle", "--event", "lose main", "--event", "transfer E to yard.g", "--event", "yard.g on",
        "--event",
        "kitchen.f draws 5 A", "--format", "csv");
    assertThat(ran.code).isEqualTo(ExitCode.FINE);
    assertThat(ran.out).contains("main,utility,gives nothing").contains("yard.g,generator inlet,sets the voltage");
  }

  @Test
  void anEventThatCannotBeReadIsShownWhereItStands() {
    Ran ran = run("trial", COURT, "--event", "kitchn.c1.upper draws 10 A");
    assertThat(ran.code).isEqualTo(ExitCode.USAGE);
    assertThat(ran.out).isEmpty();
    assertThat(ran.err).contains("--event:2:1", "kitchn.c1.upper", "[name-unknown]");
  }

  @Test
  void aTrialThatIsNotThere() {
    Ran ran = run("trial", COURT, "brekfast");
    assertThat(ran.code).isEqualTo(ExitCode.USAGE);
    assertThat(ran.err).contains("no trial is called 'brekfast'; did you mean breakfast?");
    assertThat(run("trial", "examples/cottage/house.wattle").code).isEqualTo(ExitCode.USAGE);
    assertThat(run("trial", COURT, "breakfast", "--stated").code).isEqualTo(ExitCode.USAGE);
  }

  @Test
  void worstCasesNeedNoTrial() {
    assertThat(run("table", "--of", "neutral", COURT).out).contains("counter", "A + B", "20.0");
    assertThat(run("table", "--of", "voltage", COURT).out).contains("yard.back", "at full load");
    assertThat(run("table", "--of", "heat", COURT).out).contains("P to kitchen.c1", "insulation");
    assertThat(run("table", "--of", "heat", "--format", "csv", "examples/cottage/house.wattle").out).contains("stove");
  }

  @Test
  void aPictureGoesBesideTheTables(@TempDir Path folder) throws IOException {
    for (String name : List.of("a.svg", "a.png", "a.pdf")) {
      Path file = folder.resolve(name);
      Ran ran = run("trial", COURT, "warm-joint", "--picture", file.toString());
      assertThat(ran.code).as(ran.err).isEqualTo(ExitCode.FINE);
      assertThat(ran.out).contains("joints");
      assertThat(Files.size(file)).isGreaterThan(2000);
    }
    assertThat(Files.readString(folder.resolve("a.svg"))).contains("Branch micro: A loose neutral behind the microwave");
    Path other = folder.resolve("b.svg");
    assertThat(run("trial", COURT, "--stated", "--picture", other.toString(), "--branch", "dryer").code).isEqualTo(ExitCode.FINE);
    assertThat(Files.readString(other)).contains("Branch dryer: As stated");
  }

  @Test
  void aPictureThatCannotBeIsRefusedAndNothingIsWritten(@TempDir Path folder) throws IOException {
    String svg = folder.resolve("x.svg").toString();
    assertThat(run("trial", COURT, "--picture", svg).err).contains("of one trial");
    assertThat(run("trial", COURT, "breakfast", "--picture", svg, "--branch", "countr").err).contains("did you mean counter");
    assertThat(run("trial", COURT, "breakfast", "--branch", "counter").err).contains("--picture");
    assertThat(run("trial", COURT, "breakfast", "--picture", folder.resolve("x.jpg").toString()).err).contains(".svg, .png or .pdf");
    try (var files = Files.list(folder)) {
      assertThat(files).isEmpty();
    }
  }

  @Test
  void breakersThatWouldOpenAreTold() {
    Ran ran = run("trial", COURT, "--event", "kitchen.c1.upper draws 28 A");
    assertThat(ran.out).contains("breakers that carry more than their rating", "breaker P/2+4", "0.1 to 3347 s", "UL 489");
    assertThat(run("trial", COURT, "breakfast").out).doesNotContain("more than their rating");
  }
}
