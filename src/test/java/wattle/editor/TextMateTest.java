package wattle.editor;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.Token;
import org.junit.jupiter.api.Test;
import wattle.editor.TextMateEngine.Piece;
import wattle.golden.Golden;
import wattle.syntax.grammar.WattleLexer;

/** Editors color every token as what it is to the lexer. */
class TextMateTest {
  private static final Path FILE = Path.of("editors/wattle.tmLanguage.json");

  private final TextMateEngine engine;

  TextMateTest() throws IOException {
    engine = new TextMateEngine(FILE);
  }

  private static String classOf(Token token) {
    return switch (token.getType()) {
      case WattleLexer.COMMENT -> "comment";
      case WattleLexer.STRING -> "string";
      case WattleLexer.OPEN_STRING, WattleLexer.STRAY -> "invalid";
      case WattleLexer.HALF_SLOT, WattleLexer.NUMBER -> "number";
      case WattleLexer.UNIT -> "unit";
      case WattleLexer.WORD, WattleLexer.HOLED -> "name";
      default -> Character.isLetter(token.getText().codePointAt(0)) ? "keyword" : "sign";
    };
  }

  private static String classOf(String scope) {
    if (scope.startsWith("keyword.other.unit")) {
      return "unit";
    }
    return switch (scope.substring(0, scope.indexOf('.'))) {
      case "comment" -> "comment";
      case "string" -> "string";
      case "invalid" -> "invalid";
      case "constant" -> "number";
      case "variable" -> "name";
      case "storage" -> "keyword";
      case "keyword" -> scope.startsWith("keyword.operator") ? "sign" : "keyword";
      default -> throw new AssertionError(scope);
    };
  }

  /** Each token with its place in UTF-8 bytes and its class. */
  private static List<String> byLexer(String text) {
    WattleLexer lexer = new WattleLexer(CharStreams.fromString(text));
    lexer.removeErrorListeners();
    List<String> tokens = new ArrayList<>();
    for (Token token = lexer.nextToken(); token.getType() != Token.EOF; token = lexer.nextToken()) {
      if (token.getType() != WattleLexer.NL) {
        int start = text.substring(0, text.offsetByCodePoints(0, token.getStartIndex())).getBytes(StandardCharsets.UTF_8).length;
        tokens.add(start + " " + token.getText() + " " + classOf(token));
      }
    }
    return tokens;
  }

  private List<String> byEditor(String text) {
    List<String> pieces = new ArrayList<>();
    for (Piece piece : engine.pieces(text)) {
      pieces.add(piece.start() + " " + piece.text() + " " + classOf(piece.scope()));
    }
    return pieces;
  }

  @Test
  void theFileIsMadeFromTheGrammar() {
    Golden.check(FILE, TextMateGrammar.json());
  }

  @Test
  void everyTokenOfEveryPlanAndOfTheLibraryIsClassedAlike() throws IOException {
    List<Path> plans = new ArrayList<>();
    for (String folder : List.of("examples", "stdlib", "src/test/resources")) {
      plans.addAll(Golden.plans(folder));
    }
    int tokens = 0;
    for (Path plan : plans) {
      String text = Files.readString(plan);
      List<String> lexed = byLexer(text);
      assertThat(byEditor(text)).as(plan.toString()).isEqualTo(lexed);
      tokens += lexed.size();
    }
    assertThat(tokens).isGreaterThan(10_000);
  }

  @Provide
  Arbitrary<String> texts() {
    Arbitrary<String> pieces = Arbitraries.of(
        "two-pole", "two", "-pole", "main", "mainx", "main-", "A", "kA", "mm²", "mm2", "mm", "A²s", "°C", "Ω", "10a", "10ab",
        "10.5a", "1.", "..", "--", "-", "//x", "\"a\"", "\"a", "\\", "é", "²", "😀", "in", "in3", "in³", "_", "Cu", "x", "×", " ",
        " ", "\n", "\r\n", "\t", ".", "+", "{", "%", "#", "\u00A0", "type-b");
    return pieces.list().ofMaxSize(12).map(l -> String.join("", l));
  }

  @Property(tries = 3000, edgeCases = EdgeCasesMode.NONE)
  void anyTextIsClassedAlike(@ForAll("texts") String text) {
    assertThat(byEditor(text)).as(text).isEqualTo(byLexer(text));
  }
}
