package wattle.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * American spelling, in code as in what people read: one word has one spelling, so that a search finds it. Names that other
 * libraries chose are left as they are.
 */
class SpellingTest {
  private static final Pattern BRITISH = Pattern.compile(
      "(?i)aluminium|behaviour|colour|\\bgrey|metre|traveller|neighbour|judgement|labelled(?!by)|\\bcentre|favour|licence|armour"
          + "|\\bcancelled|modelled|honour|\\bfibre|towards|whilst|catalogue|analys(?:e |ed|ing)"
          + "|(?:recogn|standard|initial|optim|synchron|serial|normal|organ|summar|minim|maxim|general|special)is(?:e|ed|es|ing|ation)\\b");
  private static final Pattern OF_OTHERS = Pattern.compile(
      "Units\\.(?:SQUARE_)?METRE|Provider\\.initialise|neighbourpower\\.com");
  /** Which say how words were spelled earlier. */
  private static final List<String> OF_EARLIER = List.of("SpellingTest.java", "PropertyReader.java");
  private static final List<String> ROOMS = List.of("src", "stdlib", "grammar", "examples", "editors", "docs", "hooks", "README.md",
      "DEVELOPERS.md");
  private static final Pattern TEXT = Pattern.compile(".*\\.(?:java|md|wattle|g4|txt|js|css|html|sh|xml)");

  @Test
  void everyWordIsAmerican() throws IOException {
    List<String> british = new ArrayList<>();
    int files = 0;
    for (String room : ROOMS) {
      try (Stream<Path> all = Files.walk(Path.of(room))) {
        for (Path file : all.filter(f -> TEXT.matcher(f.toString()).matches() && !OF_EARLIER.contains(f.getFileName().toString()))
            .toList()) {
          files++;
          List<String> lines = Files.readAllLines(file);
          for (int i = 0; i < lines.size(); i++) {
            Matcher found = BRITISH.matcher(OF_OTHERS.matcher(lines.get(i)).replaceAll(""));
            while (found.find()) {
              british.add(file + ":" + (i + 1) + " " + found.group());
            }
          }
        }
      }
    }
    assertThat(files).as("files seen").isGreaterThan(1000);
    assertThat(british).isEmpty();
  }
}
