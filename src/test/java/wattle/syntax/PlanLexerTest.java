package wattle.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.Token;
import org.junit.jupiter.api.Test;
import wattle.syntax.grammar.WattleLexer;

/** The lexer against the one that ANTLR makes of the grammar: the same tokens, in every text. */
class PlanLexerTest {
  /** What words, figures, texts and comments begin, go on and end with, and what lies beside them. */
  private static final List<String> PIECES = List.of("a", "b", "m", "mm", "A", "A²s", "in", "ft", "°C", "°", "²", "³", "\u03A9", "\u2126",
      "m\u03A9",
      "1", "23", ".", "..", "-", "--", "{", "}", "{n}", "\"", "\\", "\\n", "\\x", "\r", "\n", "\r\n", " ", "\t", "\u00A0", "\uFEFF", "/",
      "//",
      "=", ",", "(", ")", "+", "\u00D7", "\u00F7", "*", ":", "%", "é", "ж", "漢", "\uD83D\uDE00", "\uD835\uDC00", "\uD835", "\u0301", "_",
      "three-phase", "to-remove",
      "plan", "x", "hp", "kcmil", "14/2", "NM-B", "#", "'", "\u2014", "\u0000", "\u0660");

  @Test
  void everyFileHasTheSameTokens() throws IOException {
    int files = 0;
    for (String folder : List.of("examples", "stdlib")) {
      try (Stream<Path> found = Files.walk(Path.of(folder))) {
        for (Path file : found.filter(f -> f.toString().endsWith(".wattle")).toList()) {
          same(Files.readString(file));
          files++;
        }
      }
    }
    assertThat(files).isGreaterThan(60);
  }

  @Test
  void piecesInAnyOrderHaveTheSameTokens() {
    Random random = new Random(20261130);
    for (int text = 0; text < 5_000; text++) {
      StringBuilder pieces = new StringBuilder();
      for (int i = random.nextInt(12); i >= 0; i--) {
        pieces.append(PIECES.get(random.nextInt(PIECES.size())));
      }
      same(pieces.toString());
    }
  }

  @Property(tries = 2000)
  void anyTextHasTheSameTokens(@ForAll String text) {
    same(text);
  }

  /** Letters are asked for by both in the same way: each of the first plane, and some of each block of the others. */
  @Test
  void codePointsAreTheSame() {
    for (int first = 0; first <= Character.MAX_CODE_POINT; first += first < 0x10000 ? 256 : 64 * 256) {
      StringBuilder some = new StringBuilder();
      for (int i = first; i < first + 256; i++) {
        some.append('a').appendCodePoint(i);
      }
      same(some.toString());
    }
  }

  @Test
  void unitsAreThoseOfTheGrammar() throws IOException {
    String grammar = Files.readString(Path.of("grammar/Wattle.g4"));
    String rule = grammar.substring(grammar.indexOf("\nUNIT"), grammar.indexOf(";", grammar.indexOf("\nUNIT")));
    Matcher quoted = Pattern.compile("'([^']+)'").matcher(rule);
    Set<String> units = new TreeSet<>();
    while (quoted.find()) {
      units.add(quoted.group(1).replace("\\u03A9", "\u03A9").replace("\\u2126", "\u2126"));
    }
    assertThat(units).containsExactlyInAnyOrder(Literals.UNITS);
  }

  private static void same(String text) {
    assertThat(shown(PlanLexer.all(text, "x"))).as(text).isEqualTo(shown(byAntlr(text)));
    PlanLexer lexer = new PlanLexer(text, "x");
    Token end = lexer.nextToken();
    while (end.getType() != Token.EOF) {
      end = lexer.nextToken();
    }
    WattleLexer other = new WattleLexer(CharStreams.fromString(text, "x"));
    other.removeErrorListeners();
    other.getAllTokens();
    assertThat(shown(List.of(end))).isEqualTo(shown(List.of(other.nextToken())));
  }

  private static List<? extends Token> byAntlr(String text) {
    WattleLexer lexer = new WattleLexer(CharStreams.fromString(text, "x"));
    lexer.removeErrorListeners();
    return lexer.getAllTokens();
  }

  private static List<String> shown(List<? extends Token> tokens) {
    List<String> shown = new ArrayList<>();
    for (Token t : tokens) {
      shown.add(t.getType() + " " + t.getChannel() + " " + t.getStartIndex() + "-" + t.getStopIndex() + " " + t.getLine() + ":"
          + t.getCharPositionInLine() + " " + t.getText());
    }
    return shown;
  }
}
