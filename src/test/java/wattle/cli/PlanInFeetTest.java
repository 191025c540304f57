package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * An invented house that is written in feet, square feet, inches and °F, through every command that shows figures to people.
 * Conversions are those of NIST SP 811 (2008) Appendix B: 1 ft = 0.3048 m exactly, t/°F = 1.8 t/°C + 32.
 */
class PlanInFeetTest {
  private static final String FEET = "src/test/resources/units/quarry-rise.wattle";
  private static final String METERS = "examples/kitchen-renovation/after.wattle";

  /** A figure in a unit that no reader of feet asked for; °C is told beside °F only, and sizes of wire are the trade's. */
  private static final Pattern METRIC = Pattern
      .compile("(?<![\\w.])[0-9.]+ (?:m|cm|mm|m²|W/m|Ω/km|VA/m²)(?![\\w²/])|\\((?:m|°C|W/m)\\)|[0-9] °C$");

  @TempDir
  private Path folder;

  private static String run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    assertThat(Main.run(arguments, new PrintWriter(out), new PrintWriter(err))).as(err.toString()).isLessThan(ExitCode.USAGE);
    return out.toString();
  }

  private static List<String> metric(String text) {
    List<String> found = new ArrayList<>();
    text.lines().filter(l -> METRIC.matcher(l).find()).forEach(found::add);
    return found;
  }

  private Path rewritten(String plan, String name, String... replacements) throws Exception {
    String text = Files.readString(Path.of(plan));
    for (int i = 0; i < replacements.length; i += 2) {
      assertThat(text).contains(replacements[i]);
      text = text.replace(replacements[i], replacements[i + 1]);
    }
    return Files.writeString(folder.resolve(name), text);
  }

  private static double figure(String text, String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(text);
    assertThat(matcher.find()).as(pattern + " in " + text).isTrue();
    return Double.parseDouble(matcher.group(1));
  }

  @Test
  void thePatternOfThisTestSeesMetricFigures() {
    assertThat(metric("length (m)\n8 m\n2.1 W/m\n30 °C\n6.5 Ω/km\n8 ft\n2.5 mm²\n30 °C (86 °F)\n120 V")).hasSize(5);
    assertThat(metric(run("explain", METERS, "--figures"))).isNotEmpty();
  }

  /** 28 ft of cable; 1.93 Ω/kft of 12 AWG is the figure of NFPA 70 Chapter 9 Table 8, which is shown as it stands there. */
  @Test
  void explainTellsFiguresAndStepsInFeet() {
    assertThat(metric(run("explain", FEET, "--figures"))).isEmpty();
    assertThat(run("explain", FEET, "--figure", "length of counter from P")).startsWith("length of counter from P to kitchen.c1: 28.0 ft\n")
        .contains("length = 28 ft   (stated)");
    String voltage = run("explain", FEET, "--figure", "voltage of shed.o2 at full load");
    assertThat(metric(voltage)).isEmpty();
    assertThat(voltage).contains("r × l = 1.93 Ω/kft × 8 ft = 0.01544 Ω", "length = 8 ft   (stated)", "75 °C = 167 °F   (assumed)");
    assertThat(run("explain", FEET, "--figure", "lighting of main")).contains("A × p = 1500 ft² × 3 VA/ft² = 4500 VA");
    assertThat(run("explain", FEET, "--figure", "heat of bench from S")).contains(" W/ft\n").doesNotContain(" W/m");
    assertThat(run("explain", FEET, "--trial", "noon", "--figure", "voltage of shed.o2")).contains(" ft")
        .doesNotContainPattern("[0-9] m\\b");
  }

  /** Formulas count in °C, as the tables of codes do; what comes of them is told in °F as well, and 122 °F are 50 °C. */
  @Test
  void explainTellsTemperaturesInFahrenheit() {
    String text = run("explain", FEET, "--figure", "temperature of heat at full load");
    assertThat(text).contains("50 °C + (90 °C − 30 °C)", "ambient = 50 °C = 122 °F   (stated)");
    double fahrenheit = figure(text, "running temperature of 12 AWG copper = .* = ([0-9.]+) °F\n");
    double celsius = figure(text, "running temperature of 12 AWG copper = .* = ([0-9.]+) °C = ");
    assertThat(fahrenheit).isCloseTo(1.8 * celsius + 32, org.assertj.core.api.Assertions.within(0.06));
    assertThat(text).startsWith("temperature of heat from P to attic.heater at full load: " + Math.round(1.8 * celsius + 32) + " °F\n");
  }

  @Test
  void aPlanInMetersIsExplainedInMeters() {
    assertThat(run("explain", METERS, "--figure", "length of counter from P"))
        .startsWith("length of counter from P to kitchen.c1: 8.0 m\n");
    assertThat(run("explain", METERS, "--figures")).doesNotContain(" ft\n").doesNotContain("°F").doesNotContain("W/ft").contains(" °C\n");
    assertThat(run("explain", METERS, "--figure", "temperature of water at full load")).doesNotContain("°F")
        .contains("ambient = 30 °C   (assumed)");
  }

  @Test
  void explainedFiguresForProgramsStayInOneUnit() {
    assertThat(run("explain", FEET, "--figures", "--format", "json")).contains(" m\"").doesNotContain(" ft\"");
    assertThat(run("explain", FEET, "--figure", "temperature of heat at full load", "--format", "json")).contains("\"unit\" : \"°C\"")
        .doesNotContain(" = 197");
  }

  /** Of 12 ft more, with 10 % of waste, 13.2 ft are to buy. */
  @Test
  void compareTellsLengthsInTheUnitsOfTheLaterPlan() throws Exception {
    String after = rewritten(FEET, "after.wattle", "--40 ft--", "--52 ft--").toString();
    String text = run("compare", FEET, after);
    assertThat(text).containsPattern("cable: 12/2 NM-B +[0-9.]+ ft -> +[0-9.]+ ft +\\+13.2 ft");
    assertThat(metric(text)).isEmpty();
    String markdown = run("compare", "--format", "md", FEET, after);
    assertThat(markdown).contains("| +13.2 ft |");
    assertThat(metric(markdown)).isEmpty();
    // 13.2 ft × 0.3048 m/ft = 4.0 m
    assertThat(run("compare", "--format", "json", FEET, after)).containsPattern("\"measure\" : \"cable: 12/2 NM-B\",\\s*\"unit\" : \"m\"")
        .contains("\"difference\" : 4.0");
  }

  @Test
  void compareOfAMetricAndACustomaryRevisionFollowsTheLater() throws Exception {
    String[] metric = {
        "--40 ft--", "--15 m--", "--22 ft--", "--7 m--", "--12 ft--", "--4 m--", "--30 ft--", "--9 m--", "by 85 ft", "by 26 m", "--28 ft--",
        "--9 m--",
        "--25 ft--", "--8 m--",
    };
    String meters = rewritten(FEET, "meters.wattle", metric).toString();
    assertThat(run("compare", FEET, meters)).containsPattern("cable: 12/2 NM-B +[0-9.]+ m -> +[0-9.]+ m ").contains("length 40 ft -> 15 m")
        .doesNotContainPattern("cable: .* ft");
    assertThat(run("compare", meters, FEET)).containsPattern("cable: 12/2 NM-B +[0-9.]+ ft -> +[0-9.]+ ft ")
        .contains("length 15 m -> 40 ft").doesNotContainPattern("cable: .* m ");
    assertThat(run("compare", "--help").replaceAll("\\s+", " ")).contains("in the units of the later plan");
  }

  @Test
  void thePermitSummaryIsInFeet() {
    String html = run("permit", "--format", "html", FEET);
    assertThat(html).contains("1500 ft²", "70 ft of 2 Al triplex", "1500 ft² × 3 VA/ft² = 4500 VA");
    assertThat(metric(html.replaceAll("<[^>]*>", "\n"))).isEmpty();
    assertThat(run("permit", "--format", "html", METERS)).contains("96 m²").doesNotContain("ft²</td>");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"panel", "loads", "runs", "voltage", "neutral", "heat", "unstated", "boxes", "rooms", "materials", "worksheet", "faults"})
  void everyTableIsInFeet(String table) {
    for (String format : List.of("text", "md")) {
      assertThat(metric(run("table", "--of", table, "--format", format, FEET))).isEmpty();
    }
  }

  /** What a plan would state stands in its own units, as the notation has them: added so, it is no longer lacking. */
  @Test
  void howAPlanStatesALengthIsInFeet() throws Exception {
    assertThat(run("table", "--of", "unstated", "--format", "csv", FEET)).contains("supported 4 ft on the run or its branch",
        "wall 40 ft in the line of the room");
    assertThat(run("table", "--of", "unstated", "--format", "csv", METERS)).contains("supported 1.2 m on the run or its branch")
        .doesNotContain("supported 4 ft");
    String stated = rewritten(FEET, "stated.wattle", "room kitchen \"Kitchen\" {", "room kitchen \"Kitchen\" wall 40 ft counter 10 ft {")
        .toString();
    assertThat(run("table", "--of", "unstated", "--format", "csv", stated)).doesNotContain("wall 40 ft", "counter 10 ft");
  }

  /** Of the length in meters and in feet that the list of materials has, people get the one of their plan. */
  @Test
  void materialsHaveOneLength() {
    assertThat(run("table", "--of", "materials", FEET)).contains("length (ft)", "s_b = 0.9843 ft")
        .containsPattern("12/3 NM-B +43\\.9 ");
    assertThat(run("table", "--of", "materials", METERS)).contains("length (m)", "length (ft)", "s_b = 0.3 m");
    assertThat(run("table", "--of", "materials", "--format", "csv", FEET)).contains("length-m,length-ft");
  }

  @Test
  void sheetsAndPlotsTellTemperaturesInBoth() {
    // 20 °C are 68 °F and 75 °C are 167 °F, as NFPA 70 Table 310.16 prints beside its columns.
    assertThat(run("test-sheet", FEET)).contains("20 °C (68 °F)");
    assertThat(run("test-sheet", METERS)).contains("at 20 °C;");
    assertThat(run("table", "--of", "voltage", FEET)).contains("Conductors at 75 °C (167 °F).");
    assertThat(run("table", "--of", "voltage", METERS)).contains("Conductors at 75 °C.");
    assertThat(run("table", "--of", "faults", FEET)).contains("20 °C (68 °F)");
    assertThat(run("trial", "--every", FEET)).contains("75 °C (167 °F)");
    assertThat(run("draw", "--view", "trip", "--of", "hall", FEET)).contains("20 °C (68 °F)");
    assertThat(run("draw", "--view", "voltage", "--of", "hall", FEET)).contains("75 °C (167 °F)", "60 ft");
  }

  @ParameterizedTest
  @ValueSource(strings = {"lockout", "lockout-page", "directory", "check", "balance", "one-line", "panel", "branch", "rooms", "legs"})
  void nothingElseIsInMeters(String what) {
    String text = switch (what) {
      case "lockout" -> run("lockout", FEET, "kitchen.c1");
      case "lockout-page" -> run("lockout", FEET, "panel", "S", "--format", "html");
      case "directory" -> run("directory", FEET);
      case "check" -> run("check", FEET);
      case "balance" -> run("balance", FEET);
      case "branch" -> run("draw", "--view", what, "--of", "heat", FEET);
      default -> run("draw", "--view", what, FEET);
    };
    assertThat(text).isNotBlank();
    assertThat(metric(text.replaceAll("(?s)<style.*?</style>", "").replaceAll("<[^>]*>", "\n"))).isEmpty();
  }

  /** NFPA 70 334.30: every 4 1/2 ft, and within 12 in of a box. */
  @Test
  void findingsTellLengthsInFeet() throws Exception {
    String plan = rewritten(FEET, "loose.wattle", "branch bench by 12/2 NM-B {", "branch bench by 12/2 NM-B supported 6 ft held 3 ft {",
        "--28 ft--", "--180 ft--").toString();
    String text = run("check", plan);
    assertThat(text).contains("is stapled every 6 ft", "4.5 ft at most", "12 in at most", "184 ft to its farthest box");
    assertThat(metric(text)).isEmpty();
  }

  @Test
  void aFirstPlanSpeaksOfTheUnitsOfItsArea() {
    assertThat(run("begin", "--area", "1600 ft2", "-")).contains("a length such as 12 ft", "run 65 ft of");
    assertThat(run("begin", "--area", "150 m2", "-")).contains("a length such as 4 m", "run 20 m of");
  }
}
