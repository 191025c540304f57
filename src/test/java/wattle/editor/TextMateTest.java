package wattle.editor;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.Token;
import org.junit.jupiter.api.Test;
import wattle.golden.Golden;
import wattle.syntax.grammar.WattleLexer;

/** Editors color every token as what it is to the lexer. */
class TextMateTest {
  private static final Path FILE = Path.of("editors/wattle.tmLanguage.json");

  private final TextMateEngine engine;

  TextMateTest() throws IOException {
    engine = new TextMateEngine(FILE);
  }

  /** What a token may be to an editor; a word that is no keyword where it stands may be shown as a name, and the other way round. */
  private static List<String> classesOf(Token token) {
    return switch (token.getType()) {
      case WattleLexer.COMMENT -> List.of("comment");
      case WattleLexer.STRING -> List.of("string");
      case WattleLexer.OPEN_STRING, WattleLexer.STRAY -> List.of("invalid");
      case WattleLexer.HALF_SLOT, WattleLexer.NUMBER -> List.of("number");
      case WattleLexer.UNIT -> List.of("unit", "word");
      case WattleLexer.WORD, WattleLexer.HOLED -> List.of("word");
      default -> {
        String text = token.getText();
        yield List.of("ft", "in", "hp").contains(text)
            ? List.of("unit", "word")
            : Character.isLetter(text.codePointAt(0)) ? List.of("word") : text.equals("/") ? List.of("sign", "number") : List.of("sign");
      }
    };
  }

  private static String classOf(String scope) {
    if (scope.isEmpty()) {
      return "none";
    }
    if (scope.startsWith("keyword.other.unit")) {
      return "unit";
    }
    if (scope.startsWith("constant.character.escape") || scope.startsWith("variable.parameter.hole")) {
      return "string";
    }
    return switch (scope.substring(0, scope.indexOf('.'))) {
      case "comment" -> "comment";
      case "string" -> "string";
      case "invalid" -> "invalid";
      case "constant" -> "number";
      case "variable", "entity", "support", "storage" -> "word";
      case "keyword" -> scope.startsWith("keyword.operator") ? "sign" : "word";
      default -> throw new AssertionError(scope);
    };
  }

  /** The first token that has another class to the editor than to the lexer; empty where there is none. */
  private String difference(String text) {
    WattleLexer lexer = new WattleLexer(CharStreams.fromString(text));
    lexer.removeErrorListeners();
    String[] scopes = engine.scopes(text);
    for (Token token = lexer.nextToken(); token.getType() != Token.EOF; token = lexer.nextToken()) {
      if (token.getType() == WattleLexer.NL) {
        continue;
      }
      int start = text.offsetByCodePoints(0, token.getStartIndex());
      for (int at = start; at < start + token.getText().length(); at++) {
        if (!classesOf(token).contains(classOf(scopes[at]))) {
          return start + " " + token.getText() + " " + classesOf(token) + " and not " + scopes[at];
        }
      }
    }
    return "";
  }

  @Test
  void theFileIsMadeFromTheGrammar() {
    Golden.check(FILE, TextMateGrammar.json());
  }

  /** A line that a file before it has as well is left out: it tells nothing new, and the engine is slow. */
  @Test
  void everyLineOfEveryPlanAndOfTheLibraryIsClassedAlike() throws IOException {
    Set<String> seen = new HashSet<>();
    int lines = 0;
    for (String folder : List.of("examples", "stdlib", "src/test/resources")) {
      for (Path plan : Golden.plans(folder)) {
        List<String> fresh = Files.readAllLines(plan).stream().filter(seen::add).toList();
        lines += fresh.size();
        assertThat(difference(String.join("\n", fresh) + "\n")).as(plan.toString()).isEmpty();
      }
    }
    assertThat(lines).isGreaterThan(5000);
  }

  private String scope(String text, String at) {
    return engine.scopes(text)[text.indexOf(at)];
  }

  @Test
  void kindsTraitsCablesUnitsAndNamesHaveClassesThatThemesColor() {
    String text = "panel P {\n  1  15 A arc-fault hall \"Hall {n} \\\"A\\\"\"\n}\nbranch hall by 14/2 NM-B { P --5 ft 6 in in attic--"
        + " hall.o1 }\n"
        + "room hall { o1: receptacle tamper-resistant   sw: switch for o1   f: heat pump }\n"
        + "raceway up by 3/4 in EMT\nbranch b by 14/2 NM-B bundled 4 in attic { }\n";
    assertThat(scope(text, "hall \"")).startsWith("entity.name.function");
    assertThat(scope(text, "{n}")).startsWith("variable.parameter.hole");
    assertThat(scope(text, "\\\"A")).startsWith("constant.character.escape");
    assertThat(scope(text, "hall by")).startsWith("entity.name.function");
    assertThat(scope(text, "/2 NM-B")).isEqualTo("constant.numeric.wattle");
    assertThat(scope(text, "NM-B")).startsWith("support.type.cable");
    assertThat(scope(text, "ft 6")).startsWith("keyword.other.unit");
    assertThat(scope(text, "in in attic")).startsWith("keyword.other.unit");
    assertThat(scope(text, "in attic")).startsWith("keyword.control");
    assertThat(scope(text, "in EMT")).startsWith("keyword.other.unit");
    assertThat(scope(text, "EMT")).startsWith("support.type.cable");
    assertThat(engine.scopes(text)[text.indexOf("4 in attic") + 2]).startsWith("keyword.control");
    assertThat(scope(text, "hall {")).startsWith("entity.name.namespace");
    assertThat(scope(text, "o1: ")).startsWith("variable.other.property");
    assertThat(scope(text, "receptacle")).startsWith("support.class.kind");
    assertThat(scope(text, "tamper")).startsWith("storage.modifier.trait");
    assertThat(scope(text, "arc-fault")).startsWith("storage.modifier.trait");
    assertThat(scope(text, "switch for")).startsWith("support.class.kind");
    assertThat(scope(text, "heat pump")).startsWith("support.class.kind");
  }

  @Provide
  Arbitrary<String> texts() {
    Arbitrary<String> pieces = Arbitraries.of(
        "two-pole", "two", "-pole", "main", "mainx", "main-", "A", "kA", "mm²", "mm2", "mm", "A²s", "°C", "Ω", "10a", "10ab",
        "10.5a", "1.", "..", "--", "-", "//x", "\"a\"", "\"a", "\\", "é", "²", "😀", "in", "in3", "in³", "_", "Cu", "x", "×", " ",
        " ", "\n", "\r\n", "\t", ".", "+", "{", "%", "#", "\u00A0", "type-b", "NM-B", "branch", "for", "receptacle", ":", "/", "ft",
        "\"{a}\"", "\"\\n\"", "room ", "each", "k{n}", "hp");
    return pieces.list().ofMaxSize(12).map(l -> String.join("", l));
  }

  @Property(tries = 3000, edgeCases = EdgeCasesMode.NONE)
  void anyTextIsClassedAlike(@ForAll("texts") String text) {
    assertThat(difference(text)).as(text).isEmpty();
  }
}
