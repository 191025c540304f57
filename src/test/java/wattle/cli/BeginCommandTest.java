package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.begin.Answers;
import wattle.begin.Appliance;
import wattle.begin.ServiceSize;
import wattle.begin.SupplyChoice;
import wattle.begin.Work;

/** {@code begin}: from flags, from answers, and never over a file that is there. */
class BeginCommandTest {
  @TempDir
  private Path folder;

  private record Ran(int code, String out, String err) {}

  private static Ran run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
    return new Ran(code, out.toString(), err.toString());
  }

  @Test
  void aPlanFromFlagsChecksAndIsInOrder() throws IOException {
    String file = folder.resolve("house.wattle").toString();
    Ran ran = run("begin", "--title", "The \"new\" house", "--service", "125", "--area", "1600 ft2", "--bedrooms", "2", "--rooms",
        "living,garage",
        "--appliances", "range,vehicle-charger", file);
    assertThat(ran.code).as(ran.err).isEqualTo(ExitCode.FINE);
    assertThat(run("check", file).code).isEqualTo(ExitCode.FINE);
    assertThat(run("tidy", "--check", file).code).isEqualTo(ExitCode.FINE);
    assertThat(Files.readString(Path.of(file))).contains("\"The \\\"new\\\" house\"", "125 A", "1600 ft2", "vehicle charger 32 A");
  }

  @Test
  void aFileIsReplacedOnlyWhenToldTo() throws IOException {
    Path file = Files.writeString(folder.resolve("house.wattle"), "plan \"mine\"\n");
    Ran refused = run("begin", "--bedrooms", "1", file.toString());
    assertThat(refused.code).isEqualTo(ExitCode.USAGE);
    assertThat(refused.err).contains("it exists").contains("--force");
    assertThat(file).hasContent("plan \"mine\"\n");
    assertThat(run("begin", "--bedrooms", "1", "--force", file.toString()).code).isEqualTo(ExitCode.FINE);
    assertThat(Files.readString(file)).contains("Bedroom 1");
    Ran ours = run("begin", "--bedrooms", "2", file.toString());
    assertThat(ours.code).as("a plan once written is the user's").isEqualTo(ExitCode.USAGE);
  }

  @Test
  void standardOutputHoldsThePlanAlone() {
    Ran ran = run("begin", "--bedrooms", "1", "-");
    assertThat(ran.out).startsWith("// A first plan");
    assertThat(ran.err).isEmpty();
  }

  /** What the answers lead to is told at once, and the plan is written all the same. */
  @Test
  void aServiceTooSmallForItsLoadsIsTold() {
    String file = folder.resolve("small.wattle").toString();
    Ran ran = run("begin", "--service", "100", "--area", "4000 ft2", "--appliances", "range,dryer,heat-pump,vehicle-charger,hot-tub,sauna",
        file);
    assertThat(ran.code).isEqualTo(ExitCode.FINE);
    assertThat(ran.err).contains("to be fixed in it: service 'main' is rated 100 A").contains("  fix: make it");
    assertThat(run("check", file).out).contains("[service-below-load]");
  }

  @Test
  void whatCannotBeIsOneLineThatSaysWhatCan() {
    assertThat(run("begin", "--service", "90", "-").err).contains("'90' is not one of 100, 125, 150, 200, 225, 400 amperes");
    assertThat(run("begin", "--area", "150", "-").err).contains("with its unit");
    assertThat(run("begin", "--bedrooms", "99", "-").err).contains("from 0 to 8");
    assertThat(run("begin", "--rooms", "livng", "-").err).contains("did you mean living?");
    assertThat(run("begin", "--appliances", "toaster", "-").err).contains("no appliance is called 'toaster'");
    assertThat(run("begin", "--code", "nowhere", "-").err).contains("no code pack is called 'nowhere'");
    assertThat(run("begin", "--system", "277", "-").err).contains("'277' is none of 120/240, 120/208, 208Y/120, 230");
    assertThat(run("begin", "--system", "230", "--code", "us-2023", "-").err).contains("use --code none");
    assertThat(run("begin", "--dwellings", "41", "-").err).contains("from 1 to 40");
    assertThat(run("begin", "--work", "old", "-").err).contains("none of new, breakers, fuses");
    assertThat(run("begin", "--service", "60", "-").err).contains("60 A is of existing work");
    assertThat(run("begin", "--service", "600", "-").err).contains("'600' is not one of 100, 125, 150, 200, 225, 400 amperes");
    assertThat(run("begin").code).isEqualTo(ExitCode.USAGE);
  }

  private static Answers ask(String typed, StringWriter shown) {
    return new Questions(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)), new PrintWriter(shown)).ask(new HouseOptions())
        .answers();
  }

  @Test
  void anEmptyAnswerTakesTheUsualAndAWrongOneIsAskedAgain() {
    StringWriter shown = new StringWriter();
    Answers answers = ask("Elm Row\n\n\n\n\n\n90\n100\n\n2\n4\n\nnone\nrange, heat pump\n", shown);
    assertThat(answers.title()).isEqualTo("Elm Row");
    assertThat(answers.service()).isEqualTo(ServiceSize.A100);
    assertThat(answers.storeys()).isEqualTo(2);
    assertThat(answers.bedrooms()).isEqualTo(4);
    assertThat(answers.spaces()).isEmpty();
    assertThat(answers.appliances()).containsExactly(Appliance.RANGE, Appliance.HEAT_PUMP);
    assertThat(shown.toString()).contains("'90' is not one of", "Floor area with its unit [150 m2]: ");
  }

  @Test
  void systemDwellingsAndExistingWorkAreAskedFor() {
    StringWriter shown = new StringWriter();
    Answers answers = ask("Elm Row\n208y/120 V\n\n\nfuses\n12\n\n60 m2\n\n1\n1\nnone\nnone\n", shown);
    assertThat(answers.system()).isEqualTo(SupplyChoice.THREE_PHASE);
    assertThat(answers.work()).isEqualTo(Work.FUSES);
    assertThat(answers.dwellings()).isEqualTo(12);
    assertThat(shown.toString()).contains("System in volts (120/240, 120/208, 208Y/120, 230) [120/240]: ", "Identical dwellings [1]: ",
        "(60, 100, 125, 150, 200, 225, 400, 600, 800, 1000, 1200, 1600, 2000, 3000, 4000) [least for the load]: ",
        "Floor area with its unit of each [150 m2]: ");
    assertThat(ask("Elm\n230\nus-2023\n\n\n\n\n\n\n\n\n\n\n", shown).code()).isEmpty();
    assertThat(shown.toString()).contains("'us-2023' does not cover 230 V");
  }

  /** In Canada a plan has the Canadian pack and its cables, and nothing in it is an error; two that differ are asked for again. */
  @Test
  void thePackFollowsFromTheCountry() throws IOException {
    assertThat(ask("Elm\n\nca\n\n\n\n\n\n\n\n\n\n\n", new StringWriter()).code()).isEqualTo("ca-2021");
    assertThat(ask("Elm\n\n\n\n\n\n\n\n\n\n\n\n\n", new StringWriter()).code()).isEqualTo("us-2023");
    Path file = folder.resolve("canada.wattle");
    Ran ran = run("begin", "--country", "ca", "--rooms", "living,laundry,garage,basement", "--appliances",
        "range,dryer,water-heater,vehicle-charger,hot-tub,furnace,baseboard", file.toString());
    assertThat(ran.err).doesNotContain("to be fixed");
    assertThat(file).content().contains("use code ca-2021", "14/2 NMD90").doesNotContain("NM-B");
    assertThat(run("check", file.toString()).out + run("check", file.toString()).err).doesNotContain("error:");
    assertThat(run("begin", "--country", "xx", "-").err).contains("a country of 'xx' is none of us, ca, other");
  }

  /** Of several dwellings the service is the least one without an error of its load. */
  @Test
  void theServiceOfABlockIsTheLeastForItsLoad() throws IOException {
    Path file = folder.resolve("block.wattle");
    Ran ran = run("begin", "--system", "208Y/120", "--dwellings", "12", "--area", "70 m2", "--bedrooms", "1", "--bathrooms", "1",
        "--rooms", "living", "--appliances", "range,water-heater", file.toString());
    assertThat(ran.err).doesNotContain("to be fixed");
    Matcher size = Pattern.compile("120/208 V (\\d+) A three-phase").matcher(Files.readString(file));
    assertThat(size.find()).isTrue();
    List<ServiceSize> sizes = ServiceSize.of(SupplyChoice.THREE_PHASE, 12, Work.NEW);
    int found = sizes.indexOf(ServiceSize.of(Integer.parseInt(size.group(1))).orElseThrow());
    assertThat(found).isPositive();
    Ran smaller = run("begin", "--system", "208Y/120", "--dwellings", "12", "--area", "70 m2", "--bedrooms", "1", "--bathrooms", "1",
        "--rooms", "living", "--appliances", "range,water-heater", "--service", "" + sizes.get(found - 1).amperes(), "-");
    assertThat(smaller.err).contains("to be fixed in it: service 'main'");
  }

  @Test
  void answersThatEndTooSoonWriteNothing() {
    assertThatThrownBy(() -> ask("Elm Row\n", new StringWriter())).isInstanceOf(Failure.class).hasMessageContaining("nothing written");
    assertThatThrownBy(() -> ask("\n\n\n\n\n1\n2\n3\n4\n5\n6\n", new StringWriter())).hasMessageContaining("no usable answer");
  }
}
