package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
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

/**
 * What was judged and what was not stands behind the findings: the same figures in text, JSON, SARIF, the report and the permit summary,
 * a line for each that is not zero.
 */
class ClosingLinesTest {
  /** A box without a volume, runs without supports; an existing circuit without a ground and without a label. */
  private static final String PLAN = """
      plan "Sorrel Lodge" revision "A"
      use code us-2023
      dwelling { floor-area 60 m2   storeys 1 }
      service main 120/240 V 100 A existing { source transformer 25 kVA 2 %   run 15 m of 2 Al SER   earth rods by 6 Cu 20 ohm }
      panel P "Panel" from main existing { bus 100 A   slots 12   bonded
        main breaker 100 A 10 kA
        1  15 A arc-fault hall  "Hall" new
        2  15 A           attic "Attic"
      }
      branch hall  by 14/2 NM-B new { P --6 m-- hall.sw --3 m-- hall.lamp }
      branch attic by 14/2 NM without ground existing { P --9 m-- attic.r }
      room hall "Hall" is hall { sw: switch for lamp   lamp: light 40 W }
      room attic "Attic" is attic existing { r: receptacle }
      """;
  private static final String MISTAKE = "branch shed by 14/2 NMQ { P --4 m-- hall.sw }\n";
  private static final Pattern NUMBER = Pattern.compile("\\d+");

  @TempDir
  private Path folder;

  private String plan(String text) throws IOException {
    return Files.writeString(folder.resolve("plan.wattle"), text).toString();
  }

  private static String run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
    assertThat(code).as(err.toString()).isIn(ExitCode.FINE, ExitCode.FOUND);
    return out.toString();
  }

  /** The lines behind the summary of a check. */
  private List<String> closing(String text, String... options) throws IOException {
    List<String> arguments = new ArrayList<>(List.of("check", plan(text)));
    arguments.addAll(List.of(options));
    List<String> lines = run(arguments.toArray(String[]::new)).lines().toList();
    int summary = 0;
    while (!lines.get(summary).contains("licensed person decide")) {
      summary++;
    }
    return lines.subList(summary + 1, lines.size());
  }

  private static int number(List<String> lines, String start) {
    String line = lines.stream().filter(l -> l.startsWith(start)).findFirst().orElse(start + " 0");
    Matcher number = NUMBER.matcher(line);
    assertThat(number.find()).as(line).isTrue();
    return Integer.parseInt(number.group());
  }

  private JsonNode json(String text, String... options) throws IOException {
    List<String> arguments = new ArrayList<>(List.of("check", plan(text)));
    arguments.addAll(List.of(options));
    return new ObjectMapper().readTree(run(arguments.toArray(String[]::new)));
  }

  private static void assertSame(JsonNode judged, List<String> lines) {
    assertThat(judged.path("checked").intValue()).isEqualTo(number(lines, "rules checked at"));
    assertThat(judged.path("notKnown").intValue()).isEqualTo(number(lines, "not checked at"));
    assertThat(judged.path("inDoubt").intValue()).isEqualTo(number(lines, "in doubt at"));
    assertThat(judged.path("ifNew").intValue()).isEqualTo(number(lines, "existing work:"));
  }

  @Test
  void whatIsNotStatedIsCountedAndNamedAndGoesOnceItIsStated() throws IOException {
    List<String> lines = closing(PLAN);
    assertThat(lines).hasSize(3);
    assertThat(lines.get(0)).matches("rules checked at \\d+ places");
    assertThat(lines.get(1)).matches("not checked at \\d+ places because the plan does not give: .+ of \\d .+, .+ of \\d .+, .+ and "
        + "\\d+ more; "
        + "wattle table --of unstated");
    assertThat(lines.get(2)).matches("existing work: \\d+ more findings if it were new; wattle check --as-new");
    // Two runs of new work lack their supports, which one rule asks for; stated, both are checked.
    List<String> supported = closing(PLAN.replace("14/2 NM-B new {", "14/2 NM-B new supported 1 m {"));
    assertThat(number(supported, "not checked at")).isEqualTo(number(lines, "not checked at") - 2);
    assertThat(number(supported, "rules checked at")).isEqualTo(number(lines, "rules checked at") + 2);
  }

  @Test
  void aMistakeLeavesPlacesInDoubtUntilItIsMended() throws IOException {
    assertThat(closing(PLAN)).noneMatch(l -> l.startsWith("in doubt"));
    List<String> lines = closing(PLAN + MISTAKE);
    assertThat(lines).anyMatch(l -> l.matches("in doubt at \\d+ places? until the errors are fixed"));
    JsonNode judged = json(PLAN + MISTAKE, "--format", "json").at("/judged/0");
    assertThat(judged.path("inDoubt").intValue()).isPositive();
    assertSame(judged, lines);
  }

  /** As many as a survey then shows. */
  @Test
  void existingWorkIsCountedAsTheSurveyHasIt() throws IOException {
    List<String> lines = closing(PLAN);
    int more = number(lines, "existing work:");
    JsonNode survey = json(PLAN, "--as-new", "--format", "json");
    long ifNew = 0;
    for (JsonNode finding : survey.path("findings")) {
      ifNew += finding.has("ifNew") ? 1 : 0;
    }
    assertThat(more).isEqualTo((int) ifNew).isPositive();
    assertThat(survey.at("/judged/0/asNew").booleanValue()).isTrue();
    assertThat(closing(PLAN, "--as-new")).contains("existing work: " + more + " of these if it were new");
    assertThat(closing(PLAN.replace(" existing", ""))).noneMatch(l -> l.startsWith("existing work"));
  }

  @Test
  void aPlanWithoutACodeSaysThatNoneWasAsked() throws IOException {
    String uncoded = PLAN.replace("use code us-2023\n", "");
    assertThat(closing(uncoded)).contains("no code is named, so only common practice was checked; wattle check --code us-2023");
    assertThat(closing(uncoded, "--code", "us-2023")).isEqualTo(closing(PLAN));
    assertThat(json(uncoded, "--format", "json").at("/judged/0/codes").size()).isZero();
    assertThat(json(PLAN, "--format", "json").at("/judged/0/codes/0").textValue()).isEqualTo("us-2023");
  }

  @Test
  void jsonAndSarifHaveTheSameFigures() throws IOException {
    List<String> lines = closing(PLAN);
    JsonNode judged = json(PLAN, "--format", "json").at("/judged/0");
    assertSame(judged, lines);
    JsonNode first = judged.at("/unstated/0");
    assertThat(lines.get(1)).contains("give: " + first.path("fact").textValue() + " of " + first.path("places").size() + " "
        + first.path("of").textValue());
    assertThat(json(PLAN, "--format", "sarif").at("/runs/0/invocations/0/properties/judged/0")).isEqualTo(judged);
  }

  @Test
  void theReportAndThePermitSummaryHaveTheSameLines() throws IOException {
    List<String> lines = closing(PLAN + MISTAKE);
    assertThat(lines).hasSize(4);
    Path out = folder.resolve("out");
    run("report", plan(PLAN + MISTAKE), "--out", out.toString());
    String report = Files.readString(out.resolve("report.html"));
    String head = report.substring(report.indexOf("licensed person decide"));
    Path permit = folder.resolve("permit.html");
    run("permit", plan(PLAN + MISTAKE), "--out", permit.toString());
    String page = Files.readString(permit);
    for (String line : lines) {
      assertThat(head).contains("<li>" + line + "</li>");
      assertThat(page).contains("<li>" + line.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + line.substring(1) + ".</li>");
    }
  }

  /** Each thing that was assumed, with the names of the figures that rest on it; the text counts them. */
  @Test
  void whatWasAssumedIsReadByPrograms() throws IOException {
    assertThat(json(PLAN, "--format", "json").has("assumed")).as("only where it is asked for").isFalse();
    JsonNode assumed = json(PLAN, "--assumptions", "--format", "json").path("assumed");
    List<String> text = run("check", "--assumptions", plan(PLAN)).lines().filter(l -> l.startsWith("assumed in ")).toList();
    assertThat(text).hasSize(assumed.size()).isNotEmpty();
    String figures = run("explain", plan(PLAN), "--figures");
    for (int i = 0; i < assumed.size(); i++) {
      JsonNode each = assumed.get(i);
      assertThat(text.get(i)).startsWith("assumed in " + each.path("plan").textValue() + ": " + each.path("what").textValue());
      int resting = each.path("figures").size();
      assertThat(text.get(i)).endsWith(switch (resting) {
        case 0 -> each.path("what").textValue();
        case 1 -> ", on which " + each.at("/figures/0").textValue() + " rests";
        default -> " and " + (resting - 1) + " more rest";
      });
      each.path("figures").forEach(f -> assertThat(figures).contains(f.textValue()));
    }
    assertThat(assumed).anySatisfy(a -> assertThat(a.path("what").textValue()).contains("30 °C"));
    assertThat(json(PLAN, "--assumptions", "--format", "sarif").at("/runs/0/invocations/0/properties/assumed")).isEqualTo(assumed);
  }
}
