package wattle.emit.media.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class VisibleWriterTest {
  private static String shown(String text) {
    StringWriter out = new StringWriter();
    PrintWriter gate = new VisibleWriter(new PrintWriter(out), false);
    gate.print(text);
    gate.flush();
    return out.toString();
  }

  @Test
  void whatMovesHidesOrTurnsTextIsShownByASign() {
    assertThat(shown("\u001b[2J\u0007")).isEqualTo("\u241b[2J\u2407");
    assertThat(shown("\u001b]0;owned\u0007")).isEqualTo("\u241b]0;owned\u2407");
    assertThat(shown("a\u202eb\u200bc\ufeff\u009b")).isEqualTo("a[U+202E]b[U+200B]c[U+FEFF][U+009B]");
    assertThat(shown("a\rb")).isEqualTo("a\u240db");
  }

  @Test
  void textAndOurOwnColorsPass() {
    String text = "error: 5 \u03a9, 2.5 mm\u00b2\t\ud83d\udca1\n\u001b[1;31merror\u001b[0m\r\n";
    assertThat(shown(text)).isEqualTo(text);
    assertThat(shown("\u001b[31m")).as("no color of ours").isEqualTo("\u241b[31m");
  }
}
