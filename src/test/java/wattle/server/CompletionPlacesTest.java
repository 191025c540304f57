package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.lsp4j.CompletionItem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.read.SourceReader;
import wattle.syntax.Lexeme;
import wattle.syntax.PlanParser;

/** At every place of the examples the word that stands there is proposed, and what is proposed can be read. */
class CompletionPlacesTest {
  /** Of the proposals at one place, each so many-th is put into the text and read. */
  private static final int TRIED = 97;
  /** Of the words of a plan each so many-th is looked at, so that the examples together have every sort of place several times. */
  private static final int STEP = Integer.getInteger("places", 5);

  private static Question question(Path plan, String text) {
    try {
      Analysis analysis = new Analysis(plan, Buffers.NONE,
          new Compiler(new SourceReader(Map.of(plan, text), SourceReader.USUAL_MOST_BYTES)).structure(plan));
      return new Question(analysis, plan, analysis.files().get(plan), analysis.lines(plan));
    } catch (SourceReader.Unreadable e) {
      throw new AssertionError(e);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"tern-court", "marlow-croft", "cottage", "weir-lane", "workshop"})
  void everyWordOfAnExampleIsProposedWhereItStands(String example) throws IOException {
    Path plan = Path.of("examples", example, "house.wattle").toAbsolutePath();
    String text = Files.readString(plan);
    Question question = question(plan, text);
    Set<Integer> given = new HashSet<>();
    question.analysis().derived().names().stream().filter(Occurrence::declares).forEach(o -> given.add(o.span().start()));
    List<String> missing = new ArrayList<>();
    List<String> unreadable = new ArrayList<>();
    int tried = 0;
    int place = 0;
    for (Lexeme lexeme : wattle.syntax.LexemeReader.read(question.source()).value()) {
      boolean word = lexeme.kind() == Lexeme.Kind.NAME || lexeme.kind() == Lexeme.Kind.KEYWORD || lexeme.kind() == Lexeme.Kind.UNIT;
      if (!word || lexeme.span().text().contains("{") || given.contains(lexeme.span().start()) || place++ % STEP != 0) {
        continue;
      }
      List<CompletionItem> items = Completions.at(question, question.lines().range(lexeme.span()).getStart());
      String word1 = lexeme.span().text();
      if (items.stream().map(CompletionItem::getLabel)
          .noneMatch(l -> l.equals(word1) || l.startsWith(word1 + " ") || l.startsWith(word1 + "."))) {
        missing.add(line(text, lexeme) + " ¦" + word1);
      }
      for (CompletionItem item : items) {
        if (tried++ % TRIED == 0) {
          read(text, lexeme, item).ifPresent(unreadable::add);
        }
      }
    }
    assertThat(missing).isEmpty();
    assertThat(unreadable).isEmpty();
  }

  private static String line(String text, Lexeme lexeme) {
    return text.substring(text.lastIndexOf('\n', lexeme.span().start() - 1) + 1, lexeme.span().start());
  }

  /** The statement up to the proposal has to be one that some text can go on with: what is wrong is wrong behind it. */
  private static java.util.Optional<String> read(String text, Lexeme lexeme, CompletionItem item) {
    // What begins a raceway is read as one only with what has to follow.
    String on = item.getLabel().equals("in") ? " EMT with 3 x 10 Cu THHN" : "";
    return unexpected(text, lexeme, item, on).flatMap(one -> unexpected(text, lexeme, item, ""));
  }

  private static java.util.Optional<String> unexpected(String text, Lexeme lexeme, CompletionItem item, String on) {
    String before = text.substring(0, lexeme.span().start());
    String put = before + item.getTextEdit().getLeft().getNewText() + on + text.substring(lexeme.span().end());
    int end = lexeme.span().start() + item.getTextEdit().getLeft().getNewText().length();
    return PlanParser.parse(new Source("", put)).findings().stream()
        .filter(f -> f.rule().equals("unexpected")
            && f.place().filter(m -> m.span().start() >= lexeme.span().start() && m.span().start() < end).isPresent())
        .findFirst()
        .map(f -> line(text, lexeme) + "¦" + item.getLabel() + ": " + f.headline());
  }

  private static List<String> at(String marked) {
    int cursor = marked.indexOf('¦');
    String text = marked.replace("¦", "");
    Question question = question(Path.of("house.wattle").toAbsolutePath(), text);
    return Completions.at(question, question.lines().range(question.source().span(cursor, cursor)).getStart()).stream()
        .map(CompletionItem::getLabel).toList();
  }

  private static final String PANEL = "use code us-2023\nservice main 120/240 V 100 A { }\npanel P from main {\n"
      + "  bus 100 A  slots 8\n  ¦\n}\n";

  @Test
  void aRatingIsNeverWrittenTwice() {
    assertThat(at(PANEL.replace("¦", "1  20 A  ¦"))).contains("arc-fault").noneMatch(p -> p.endsWith(" A"));
    assertThat(at(PANEL.replace("¦", "1  ¦"))).contains("20 A");
    assertThat(at(PANEL)).contains("3", "3+5", "main", "bonded");
  }

  @Test
  void whatMeansSomethingIsProposed() {
    assertThat(at("room x \"X\" is ¦")).contains("kitchen", "bathroom", "utility");
    assertThat(at("expect ¦")).contains("neutral", "voltage", "current");
    assertThat(at("expect neutral of kitchen is ¦")).contains("at", "at most", "at least");
    assertThat(at(PANEL.replace("¦", "") + "expect P/1 ¦")).contains("trips", "holds");
    assertThat(at("room k { r: receptacle ¦ }")).contains("tamper-resistant", "weather-resistant", "at", "for").doesNotContain("plan");
    assertThat(at("branch b by ¦ { }")).allMatch(p -> Character.isDigit(p.charAt(0)));
    assertThat(at("branch b by 12/2 ¦ { }")).contains("NM-B", "MC");
    assertThat(at("dwelling { ¦ }")).contains("floor-area", "basement-area", "year", "gas-heated");
    assertThat(at("service main 120/240 V 100 A { ¦ }")).contains("source", "run", "earth", "peak-demand", "surge-protection");
    assertThat(at("service main 120/240 V 100 A { source ¦ }")).contains("transformer", "available", "generator");
    assertThat(at("service main 120/240 V 100 A { earth ¦ }")).contains("rods", "ring", "water-pipe");
    assertThat(at("raceway r by 1 in ¦")).contains("EMT", "PVC");
    assertThat(at("room k { box b ¦ { } }")).contains("plastic", "metal");
    assertThat(at("panel P from main { terminals ¦ }")).contains("Cu", "Al");
    assertThat(at("let far = 3 m\npanel P from main { }\nbranch b by 14/2 NM { P --(¦)-- x.y }")).contains("far");
    assertThat(at("pattern p(run) { branch b by 14/2 NM { P --(¦)-- x.y } }")).contains("run");
    assertThat(at("// a remark ¦")).isEmpty();
    assertThat(at("trial t { fault hot to ¦ }")).contains("ground", "neutral");
    assertThat(at("trial t { open ¦ }")).contains("service", "breaker", "main", "neutral");
  }

  @Test
  void rulesAreProposedToo() {
    assertThat(at("rule r {\n  for each ¦\n}")).contains("device", "branch", "panel");
    assertThat(at("rule r {\n  for each device d\n  require ¦\n}")).contains("d", "limit", "not", "every");
    assertThat(at("rule r {\n  for each device d\n  require d.¦\n}")).contains("protection", "breaker");
    assertThat(at("rule r {\n  for each device d\n  require d.breaker.¦\n}")).contains("rating");
    assertThat(at("rule r {\n  for each device d\n  require limit.¦\n}")).contains("touch-voltage");
  }
}
