package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import wattle.golden.Golden;

/** The table of properties in the documents is the one that rules are checked by. */
class PropertyTableTest {
  private static final Path README = Path.of("stdlib/README.md");
  private static final String START = "<!-- properties: from here on made from the code -->\n";

  private static String table() {
    StringBuilder out = new StringBuilder();
    for (Kind kind : Kind.values()) {
      out.append("\n### ").append(kind.word()).append(": ").append(kind.meaning())
          .append("\n\n| property | value | meaning |\n| --- | --- | --- |\n");
      Vocabulary.of(kind).values().forEach(
          p -> out.append("| `").append(p.name()).append("` | ").append(p.type().text()).append(" | ").append(p.meaning()).append(" |\n"));
    }
    return out.toString();
  }

  @Test
  void theTableIsThatOfTheCode() throws IOException {
    String text = Files.readString(README);
    int at = text.indexOf(START);
    assertThat(at).as("the line that the table follows").isPositive();
    String wanted = text.substring(0, at + START.length()) + table();
    if ("write".equals(System.getProperty("golden"))) {
      Files.writeString(README, wanted);
    }
    Golden.sameLines(README.toString(), text, wanted);
  }
}
