package wattle.questions;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.cli.Main;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** Questions have answers that a hand calculation gives, on every supply, and are asked only where the house has the thing. */
class QuestionSheetTest {
  /** A house of which one circuit shares a neutral; short heavy runs, so that no voltage is lost to speak of. */
  private static final String SHARED = """
      plan "Shared"
      service main %s 100 A { source available 50 kA   earth rods by 6 Cu 25 ohm }
      panel P from main {
        bus 100 A   slots 12   bonded
        main breaker 100 A
        %s  20 A  %s  pair  "Pair"
      }
      branch pair by 12/3 NM-B { P --0.1 m-- r.a --0.1 m-- r.b }
      room r { a: split receptacle   b: split receptacle }
      """;

  @TempDir
  Path folder;

  private static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("q.wattle", text), Path.of("q.wattle"));
  }

  private static Map<String, Question> byKind(String text) {
    return QuestionSheet.of(compile(text), 1, 30).questions().stream()
        .collect(Collectors.toMap(Question::kind, q -> q, (a, b) -> a, TreeMap::new));
  }

  private static double figure(Question question, int working) {
    return question.workings().get(working).si();
  }

  /** 120/240 V: one loaded hot returns 10 A, two cancel; open, 1200 W and 400 W (12 Ω and 36 Ω) divide 240 V as 60 V and 180 V. */
  @Test
  void onSplitPhase() {
    Map<String, Question> asked = byKind(SHARED.formatted("120/240 V", "1+3", "two-pole"));
    assertThat(figure(asked.get("neutral of one"), 0)).isCloseTo(10, within(0.05));
    assertThat(figure(asked.get("neutral of two"), 0)).isCloseTo(0, within(0.05));
    assertThat(asked.get("neutral of two").answer()).anyMatch(a -> a.contains("cancel"));
    assertThat(figure(asked.get("most in a neutral"), 0)).isCloseTo(20, within(0.01));
    Question open = asked.get("open shared neutral");
    assertThat(open.text()).contains("1200 W").contains("400 W");
    assertThat(figure(open, 0)).isCloseTo(60, within(1.0));
    assertThat(figure(open, 1)).isCloseTo(180, within(1.0));
    assertThat(asked.get("poles").answer().get(0)).startsWith("240 V");
  }

  /** 120/208 V: equal currents on two legs of a wye return the same current; open, 208 V divides as 52 V and 156 V. */
  @Test
  void onTwoLegsOfAWye() {
    Map<String, Question> asked = byKind(SHARED.formatted("120/208 V", "1+3", "two-pole"));
    assertThat(figure(asked.get("neutral of two"), 0)).isCloseTo(10, within(0.05));
    assertThat(asked.get("neutral of two").answer()).anyMatch(a -> a.contains("three-phase"));
    assertThat(figure(asked.get("open shared neutral"), 0)).isCloseTo(52, within(1.0));
    assertThat(figure(asked.get("open shared neutral"), 1)).isCloseTo(156, within(1.0));
    assertThat(asked.get("poles").answer().get(0)).startsWith("208 V");
  }

  /** Both hots on one leg: the neutral carries the sum, and 40 A at most behind two 20 A breakers. */
  @Test
  void onOneLeg() {
    Map<String, Question> asked = byKind(SHARED.formatted("120/240 V", "1+2", "handle-tied"));
    assertThat(figure(asked.get("neutral of two"), 0)).isCloseTo(20, within(0.1));
    assertThat(asked.get("neutral of two").answer()).anyMatch(a -> a.contains("add on the neutral"));
    assertThat(figure(asked.get("most in a neutral"), 0)).isCloseTo(40, within(0.1));
    assertThat(asked.get("poles").answer().get(0)).startsWith("0 V");
  }

  /** 230 V on one leg: no question of legs and poles; 10 A in 0.2 Ω is 20 W; an open neutral leaves 0 V between the contacts. */
  @Test
  void onOnePhase() {
    Map<String, Question> asked = byKind("""
        plan "Metric"
        service main 230 V 60 A { source available 6 kA }
        panel P from main { bus 60 A   slots 6   order one-column   bonded
          main breaker 60 A
          1  16 A  sockets  "Sockets"
        }
        branch sockets by 2.5 mm2 TPS { P --12 m-- r.a --4 m-- r.b }
        room r { a: receptacle   b: receptacle }
        """);
    assertThat(asked).doesNotContainKeys("leg", "poles", "neutral of two", "open shared neutral", "open service neutral", "box", "switch");
    assertThat(figure(asked.get("loose joint"), 0)).isCloseTo(20, within(0.01));
    assertThat(figure(asked.get("open neutral"), 0)).isCloseTo(0, within(0.01));
    assertThat(asked.get("bond").answer().get(0)).isEqualTo("In panel P.");
  }

  private static org.assertj.core.data.Offset<Double> within(double offset) {
    return org.assertj.core.data.Offset.offset(offset);
  }

  /** Each answer that a trial shows comes out of the command that the key gives, on houses of every supply and of fuses. */
  @Test
  void everyExampleHasQuestionsThatItsTrialsAnswer() {
    for (String house : List.of("alder-court", "cottage", "duplex", "mill-quay", "longcroft", "workshop")) {
      Path file = Path.of("examples", house, "house.wattle");
      Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(read(file), file);
      for (long seed : new long[]{1, 2}) {
        List<Question> questions = QuestionSheet.of(plan, seed, 14).questions();
        assertThat(questions).as(house).hasSizeGreaterThan(6);
        assertThat(questions).isSortedAccordingTo(java.util.Comparator.comparing(Question::level));
        assertThat(questions).allSatisfy(q -> {
          assertThat(q.text()).endsWith("?");
          assertThat(q.answer()).isNotEmpty().allMatch(a -> a.endsWith("."));
          assertThat(q.workings().isEmpty()).isEqualTo(q.answer().stream().noneMatch(a -> a.matches("[0-9.]+ (A|kA|W|in³).*"))
              && q.events().isEmpty() && !q.kind().equals("load"));
        });
      }
      assertThat(texts(plan, 1)).isEqualTo(texts(plan, 1)).isNotEqualTo(texts(plan, 2));
    }
  }

  private static List<String> texts(Compilation plan, long seed) {
    return QuestionSheet.of(plan, seed, 14).questions().stream().map(Question::text).toList();
  }

  private static Source read(Path file) {
    try {
      return new Source(file.toString(), Files.readString(file));
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static String run(int code, String... arguments) {
    StringWriter out = new StringWriter();
    assertThat(Main.run(arguments, new PrintWriter(out), new PrintWriter(out))).as(out.toString()).isEqualTo(code);
    return out.toString();
  }

  @Test
  void theKeyStandsOnAnotherPage() throws Exception {
    String house = "examples/alder-court/house.wattle";
    String text = run(0, "questions", house);
    assertThat(text).startsWith("Questions about 14 Alder Court, sheet 1").contains("ANSWER KEY").contains("try: wattle trial " + house);
    assertThat(text.indexOf("ANSWER KEY")).isGreaterThan(text.lastIndexOf("WORK IT OUT"));
    String page = run(0, "questions", house, "-f", "html");
    assertThat(page).contains("page-break-before: always").contains("<details>").contains("Answer key");
    Path pdf = folder.resolve("sheet.pdf");
    run(0, "questions", house, "--seed", "3", "-n", "6", "-o", pdf.toString());
    assertThat(Files.readAllBytes(pdf)).startsWith("%PDF".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    assertThat(run(2, "questions", "examples/broken/ten-mistakes.wattle")).contains("in doubt");
    assertThat(run(2, "questions", house, "--count", "0")).contains("1 to 30");
  }
}
