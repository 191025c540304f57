package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

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
    Ran ran =
        run("trial", COURT, "toaster-alone", "--event", "kitchen.c1.lower draws 4 A", "--event", "open breaker P/1", "--format", "json", "--all");
    assertThat(ran.code).isEqualTo(ExitCode.FINE);
    JsonNode root = new ObjectMapper().readTree(ran.out);
    assertThat(root.toString()).contains("current in neutral, P to kitchen.c1").contains("6 A");
  }

  @Test
  void withoutANameAllTrialsRun() {
    assertThat(run("trial", COURT).out).contains("Toaster and kettle: outlets", "Toaster alone: outlets");
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
}
