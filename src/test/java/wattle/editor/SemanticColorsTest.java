package wattle.editor;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.antlr.v4.runtime.Vocabulary;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import wattle.golden.Golden;
import wattle.library.StandardLibrary;
import wattle.server.ColorsOfPlans;
import wattle.syntax.grammar.WattleLexer;

/**
 * The grammar for editors without a language server colors every example as the server does, which knows what each name is: nowhere is
 * one thing shown as another. A name that is used, not made, may be shown as a name and no more.
 */
class SemanticColorsTest {
  /** What a token of the server may be to the grammar, as beginnings of scopes. */
  private static final Map<String, List<String>> SCOPES = Map.ofEntries(
      Map.entry("keyword", List.of("keyword.declaration", "keyword.control", "storage.modifier.status", "storage.modifier.trait")),
      Map.entry("number", List.of("constant.numeric")),
      // A unit in place of a name is a mistake, and stands where a name would.
      Map.entry("type", List.of("keyword.other.unit", "variable.other.property.device")),
      Map.entry("string", List.of("string", "invalid.illegal.open-string")),
      Map.entry("comment", List.of("comment")),
      Map.entry("operator", List.of("keyword.operator", "invalid.illegal.stray")),
      Map.entry("function", List.of("entity.name.function", "variable.other")),
      Map.entry("class", List.of("entity.name.type.class", "entity.name.namespace", "entity.name.function", "variable.other")),
      Map.entry("interface", List.of("entity.name.type.interface", "variable.other")),
      // A slot names what it feeds, be that a branch or a panel of a placement.
      Map.entry("namespace", List.of("entity.name.namespace", "entity.name.function.branch", "variable.other")),
      Map.entry("property", List.of("variable.other")),
      Map.entry("variable", List.of("variable.other", "entity.name.type")),
      Map.entry("event", List.of("entity.name.label", "variable.other")),
      Map.entry("struct", List.of("support.class", "support.type", "entity.name.type", "variable.other")),
      // Any word that the server finds no meaning for.
      Map.entry("parameter", List.of("variable", "keyword", "support", "entity")),
      Map.entry("enumMember", List.of("storage.modifier.trait", "constant.character.escape")));

  /** Words of the grammar and kinds of device may be names as well; which they are where one is used, no pattern of a line can tell. */
  private static final Set<String> ELSEWHERE = elsewhere();

  private static Set<String> elsewhere() {
    Set<String> words = new HashSet<>(StandardLibrary.library(StandardLibrary.packNames()).parts().keySet());
    Vocabulary vocabulary = WattleLexer.VOCABULARY;
    for (int type = 1; type <= vocabulary.getMaxTokenType(); type++) {
      if (vocabulary.getLiteralName(type) != null) {
        words.add(vocabulary.getLiteralName(type).replace("'", ""));
      }
    }
    return words;
  }

  private static List<Path> plans() {
    List<Path> plans = new ArrayList<>(Golden.plans("examples"));
    assertThat(plans).hasSizeGreaterThan(60);
    return plans;
  }

  @TestFactory
  Stream<DynamicTest> theGrammarShowsNothingAsWhatItIsNot() throws IOException {
    TextMateEngine engine = new TextMateEngine(Path.of("editors/wattle.tmLanguage.json"));
    return plans().stream().map(plan -> DynamicTest.dynamicTest(plan.toString(), () -> {
      String text = Files.readString(plan);
      String[] scopes = engine.scopes(text);
      List<String> wrong = new ArrayList<>();
      for (ColorsOfPlans.Token token : ColorsOfPlans.of(plan)) {
        String shown = text.substring(token.start(), token.end());
        String scope = scopes[token.start()];
        boolean word = !token.declares() && ELSEWHERE.contains(shown) && (scope.startsWith("keyword") || scope.startsWith("support"));
        boolean fits = word || SCOPES.get(token.type()).stream().anyMatch(scope::startsWith);
        boolean whole = Stream.of(scopes).skip(token.start()).limit(token.end() - token.start()).allMatch(s -> s.equals(scope))
            || shown.contains(" ");
        boolean plain = scope.startsWith("variable.other.wattle");
        boolean mayBePlain = !(token.declares() && List.of("function", "namespace").contains(token.type()) && !shown.contains("{"));
        if (!fits || !whole || plain && !mayBePlain) {
          wrong.add(text.substring(0, token.start()).lines().count() + ": " + shown + " is " + token.type() + ", shown as " + scope);
        }
      }
      assertThat(wrong).isEmpty();
    }));
  }
}
