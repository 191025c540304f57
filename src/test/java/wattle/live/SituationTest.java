package wattle.live;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.emit.media.page.Markup;
import wattle.emit.media.table.SheetHtml;
import wattle.emit.sheet.trial.TrialSheets;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.model.Branch;
import wattle.model.Event;
import wattle.model.Trial;
import wattle.read.SourceReader;
import wattle.trials.TrialResult;
import wattle.trials.Trials;

/** What is clicked is what is said: lines, controls, the block for the plan, and the figures of both. */
class SituationTest {
  private static final String COURT = "examples/alder-court/house.wattle";
  private static final Compiler COMPILER = new Compiler(SourceReader.FROM_DISK);

  private static Compilation compile(String plan) {
    try {
      return COMPILER.structure(Path.of(plan));
    } catch (SourceReader.Unreadable e) {
      throw new IllegalArgumentException(e);
    }
  }

  private static Asked asking(List<String> events, Optional<String> start) {
    return new Asked(events, start, Optional.empty(), Optional.empty(), Optional.empty(), 1000, 1000, true);
  }

  private static Situation clicked(Compilation plan, List<String> lines) {
    return Situation.of(plan, asking(lines, Optional.empty()));
  }

  private static Situation started(Compilation plan, String start) {
    return Situation.of(plan, asking(List.of(), Optional.of(start)));
  }

  /** All figures of a trial as tables show them, without their workings. */
  private static String figures(TrialResult result) {
    return TrialSheets.of(result, "x", Integer.MAX_VALUE).stream().map(s -> SheetHtml.render(s, d -> "")).collect(Collectors.joining());
  }

  /** The plan with the block written at its end. */
  private static Compilation with(String plan, Compilation read, String block) {
    return COMPILER.structure(new Source(plan, read.source().text() + "\n" + block), Path.of(plan));
  }

  private static void assertSaysTheSame(String plan, Compilation read, Situation situation) {
    Compilation written = with(plan, read, situation.block());
    assertThat(written.findings().stream().filter(f -> f.severity() == Severity.ERROR).map(Finding::headline))
        .as(situation.block())
        .isEqualTo(read.findings().stream().filter(f -> f.severity() == Severity.ERROR).map(Finding::headline).toList());
    Trial trial = written.house().trials().get(situation.trial());
    assertThat(trial.events()).hasSize((int) situation.lines().stream().filter(Line::counts).count());
    assertThat(figures(new Trials(written.house(), written.library()).run(trial).value())).as(situation.block())
        .isEqualTo(figures(situation.result()));
  }

  private static final Pattern CONTROL = Pattern.compile(
      "class=\"(toggle|event|event set)\"[^>]*? data-line=\"([^\"]*)\"(?: data-before=\"([^\"]*)\")?[^>]*>(?:.*?value=\"([^\"]*)\")?");

  /** What every control of a part of the page would add, as the page's script puts it together. */
  private static Set<String> lines(String html) {
    Set<String> lines = new LinkedHashSet<>();
    for (String piece : html.split("(?=<button|<form)")) {
      Matcher m = CONTROL.matcher(piece.replace('\n', ' '));
      if (m.find()) {
        lines
            .add(m.group(1).equals("toggle") ? m.group(2) : m.group(2) + (m.group(3).isEmpty() ? "" : " " + m.group(3)) + " " + m.group(4));
      }
    }
    return lines;
  }

  private static Set<String> controls(Compilation plan) {
    Situation nothing = clicked(plan, List.of());
    Set<String> lines = new LinkedHashSet<>(lines(new LoadPart(nothing).html()));
    plan.house().panels().values().forEach(p -> lines.addAll(lines(new PanelPart(nothing).html(Optional.of(p), 1000))));
    for (Branch branch : plan.house().branches().values()) {
      for (int p = 0; p < branch.points().size(); p++) {
        Markup out = new Markup();
        new BoxControls(out, nothing, branch).write(p);
        lines.addAll(lines(out.toString()));
      }
    }
    return lines;
  }

  @ParameterizedTest
  @ValueSource(strings = {COURT, "examples/classroom/lessons.wattle", "examples/apartment/house.wattle", "examples/duplex/house.wattle",
      "examples/workshop/house.wattle", "examples/linden-row/house.wattle", "examples/marlow-croft/house.wattle"})
  void everyControlIsAnEventThatCountsAndIsPressedThen(String plan) {
    Compilation read = compile(plan);
    Set<String> controls = controls(read);
    assertThat(controls.size()).isGreaterThan(40);
    Set<String> keys = new LinkedHashSet<>();
    List<Line> all = Lines.of(read, List.copyOf(controls));
    assertThat(all).extracting(Line::text).containsExactlyElementsOf(controls);
    for (Line line : all) {
      assertThat(line.complaint()).as(line.text()).isEmpty();
      assertThat(line.text()).startsWith(line.key());
      assertThat(keys.add(line.key())).as("two controls of one thing: " + line.text()).isTrue();
    }
    assertThat(clicked(read, List.copyOf(controls)).lines()).as("that cannot happen").allMatch(Line::counts);
  }

  @Test
  void theControlsOfAHouseSayAllKindsOfEvents() {
    Set<String> words = controls(compile(COURT)).stream()
        .map(l -> l.replaceAll("[a-z0-9]+\\.[a-z0-9.-]+|P/\\S+|G/\\S+|of \\S+|[0-9.]+ \\S+", "").strip()).collect(Collectors.toSet());
    assertThat(String.join("; ", words)).contains("open breaker", "open service neutral", "open neutral", "loosen neutral", "lift ground",
        "fault hot to ground", "swap at", "draws", "on", "off");
  }

  /** Twenty random handfuls of clicks in each house. */
  @ParameterizedTest
  @ValueSource(
      strings = {COURT, "examples/classroom/lessons.wattle", "examples/workshop/house.wattle", "examples/marlow-croft/house.wattle"})
  void theBlockInThePlanGivesTheSameFigures(String plan) {
    Compilation read = compile(plan);
    List<String> controls = new ArrayList<>(controls(read));
    for (int seed = 0; seed < 20; seed++) {
      Random random = new Random(seed);
      List<String> lines = new ArrayList<>();
      for (int n = 1 + random.nextInt(8); n > 0; n--) {
        lines.add(controls.get(random.nextInt(controls.size())));
      }
      lines.addAll(read.house().devices().values().stream().filter(d -> Loads.draws(d) && random.nextInt(3) == 0).map(d -> d.name() + " on")
          .toList());
      assertSaysTheSame(plan, read, clicked(read, lines));
    }
  }

  @Test
  void everythingStatedIsTheHouseAsStated() {
    for (String plan : List.of(COURT, "examples/cottage/house.wattle", "examples/apartment/house.wattle", "examples/duplex/house.wattle")) {
      Compilation read = compile(plan);
      Situation situation = started(read, "stated");
      assertThat(figures(situation.result())).as(plan).isEqualTo(figures(new Trials(read.house(), read.library()).stated()));
      assertSaysTheSame(plan, read, situation);
    }
  }

  @Test
  void aTrialOfThePlanIsABeginning() {
    for (String plan : List.of(COURT, "examples/classroom/lessons.wattle", "examples/marlow-croft/house.wattle")) {
      Compilation read = compile(plan);
      assertThat(read.house().trials().size()).isGreaterThan(6);
      for (Trial trial : read.house().trials().values()) {
        Situation situation = started(read, "trial " + trial.name());
        assertThat(situation.lines()).hasSize(trial.events().size()).allMatch(Line::counts);
        assertThat(figures(situation.result())).as(trial.name())
            .isEqualTo(figures(new Trials(read.house(), read.library()).run(trial).value()));
      }
    }
    assertThat(started(compile(COURT), "trial nosuch").lines()).isEmpty();
    assertThat(started(compile(COURT), "nothing").lines()).isEmpty();
  }

  /** The same figures over the wire as the command prints for the same text. */
  @Test
  void thePageAndTheCommandShowTheSame(@org.junit.jupiter.api.io.TempDir Path folder) throws java.io.IOException {
    String lesson = java.nio.file.Files.readString(Path.of("examples/classroom/lessons.wattle"));
    Path plan = java.nio.file.Files.writeString(folder.resolve("lessons.wattle"), lesson);
    String[] clicks = {"galley.c2.upper draws 1200 W", "galley.c2.lower draws 600 W", "open neutral of counter at galley.c1",
        "loosen hot at tubs.washer by 0.5 ohm", "tubs.washer on"};
    String page;
    String block;
    try (LiveServer server = new LiveServer(plan)) {
      var asked = LiveServer.object().put("everyRow", true);
      var events = asked.putArray("events");
      Arrays.stream(clicks).forEach(events::add);
      JsonNode look = server.look(asked);
      page = look.at("/parts/figures").asText();
      block = Pattern.compile("<pre[^>]*>(.*?)</pre>", Pattern.DOTALL).matcher(look.at("/parts/events").asText()).results().findFirst()
          .orElseThrow().group(1);
    }
    java.nio.file.Files.writeString(plan, lesson + block.replace("&#39;", "'"));
    java.io.StringWriter csv = new java.io.StringWriter();
    int code = wattle.cli.Main.run(new String[]{"trial", plan.toString(), "what-if", "--all", "--format", "csv"},
        new java.io.PrintWriter(csv), new java.io.PrintWriter(new java.io.StringWriter()));
    assertThat(code).isZero();
    assertThat(csv.toString()).contains("galley.c2.lower");
    Matcher volts = Pattern
        .compile(
            "<td[^>]*>galley.c2.lower</td><td[^>]*>counter</td><td[^>]*><details><summary>120</summary>.*?<summary>([0-9.]+)</summary>")
        .matcher(page);
    assertThat(volts.find()).isTrue();
    assertThat(Double.parseDouble(volts.group(1))).isBetween(158.0, 161.0); // 24 ohm of 36 ohm across 240 V, less what the wires take
    String row = csv.toString().lines().filter(l -> l.startsWith("galley.c2.lower,counter")).findFirst().orElseThrow();
    assertThat(Double.parseDouble(row.split(",")[3])).isCloseTo(Double.parseDouble(volts.group(1)),
        org.assertj.core.data.Offset.offset(0.051));
  }

  @Test
  void linesThatDoNotCountAreToldAndStayOutOfTheBlock() {
    Compilation read = compile("examples/classroom/lessons.wattle");
    Situation situation = clicked(read, List.of("open breaker P/6", "nosuch.lamp on", "open breaker P/8", "utter nonsense", "", "}",
        "} trial x {", "// only a remark", "den.lamp on   stair.lamp on", "open neutral of water", "panel X { }", "den.lamp draws 3"));
    assertThat(situation.lines()).filteredOn(Line::counts).extracting(Line::text).containsExactly("open breaker P/6", "den.lamp on",
        "stair.lamp on");
    assertThat(situation.lines()).filteredOn(l -> !l.counts()).hasSize(9)
        .allMatch(l -> !l.complaint().isEmpty() && !l.complaint().contains("Exception"));
    assertThat(situation.lines().stream().filter(l -> l.text().startsWith("nosuch")).findFirst().orElseThrow().complaint())
        .isEqualTo("no device is called 'nosuch.lamp'");
    assertSaysTheSame("examples/classroom/lessons.wattle", read, situation);
  }

  @Test
  void constantsOfThePlanMayBeUsed() {
    Compilation read = COMPILER.structure(
        new Source("c.wattle", "let warm = 0.3 ohm\n" + read("examples/classroom/lessons.wattle")), Path.of("examples/classroom/c.wattle"),
        List.of());
    Situation situation = clicked(read, List.of("tubs.washer draws 10 A", "loosen neutral at tubs.washer by (warm + 0.2 ohm)"));
    assertThat(situation.lines()).allMatch(Line::counts);
    assertThat(situation.result().joints().get(0).watts().si()).isCloseTo(50, org.assertj.core.data.Offset.offset(0.5)); // I² × R
  }

  private static String read(String file) {
    try {
      return java.nio.file.Files.readString(Path.of(file));
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @Test
  void theBlockTakesANameThatIsFree() {
    Compilation read = COMPILER.structure(
        new Source("c.wattle", read("examples/classroom/lessons.wattle") + "trial what-if { }\ntrial what-if-2 { }\n"),
        Path.of("examples/classroom/c.wattle"), List.of());
    assertThat(clicked(read, List.of("den.lamp on")).block()).isEqualTo("trial what-if-3 {\n  den.lamp on\n}\n");
    assertThat(clicked(read, List.of()).block()).isEmpty();
  }

  /** A new kind of event must be given its key. */
  @Test
  void everyKindOfEventHasAKeyThatBeginsItsLine() {
    List<String> lines = List.of(
        "open neutral of counter at galley.c1", "open breaker P/2+4", "open service neutral", "loosen hot at tubs.washer by 0.5 ohm",
        "lift ground at tubs.washer leaking 5 kohm",
        "fault hot to ground at tubs.washer through 10 ohm", "move counter to 2+6", "swap at tubs.washer", "galley.c1.upper draws 10 A",
        "den.lamp on", "den.sw off", "open other-hot of counter");
    List<Line> read = new ArrayList<>(Lines.of(compile("examples/classroom/lessons.wattle"), lines));
    read.addAll(Lines.of(compile("examples/marlow-croft/house.wattle"),
        List.of("open main P", "open neutral of E", "lose main", "transfer E to yard.g", "transfer E to off", "barn.pv gives 5 kW",
            "E draws 20 A")));
    assertThat(read).allMatch(Line::counts).allMatch(l -> l.text().startsWith(l.key()) && l.key().length() > 6);
    Set<Class<?>> kinds = read.stream().map(l -> l.event().orElseThrow().getClass()).collect(Collectors.toSet());
    assertThat(kinds).containsExactlyInAnyOrder(Event.class.getPermittedSubclasses());
  }
}
