package wattle.emit.media.text;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.TextNode;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class JsonTest {
  /** The categories of The Unicode Standard, chapter 4.5, whose characters have no shape or change how others are shown. */
  private static final Pattern HIDDEN = Pattern.compile("[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}]");

  /** RFC 8259, section 7: any character may be written by its number, one beyond the first 65,536 by two. */
  @Test
  void whatIsHiddenIsWrittenByItsNumberAndReadBackTheSame() {
    for (int c = 0; c <= Character.MAX_CODE_POINT; c++) {
      if (c == Character.MIN_SURROGATE) {
        c = Character.MAX_SURROGATE + 1;
      }
      String text = "a" + Character.toString(c) + "b";
      String line = Json.line(TextNode.valueOf(text));
      assertThat(HIDDEN.matcher(line).find()).as("%X", c).isFalse();
      assertThat(Json.read(line).textValue()).as("%X", c).isEqualTo(text);
    }
  }

  @Test
  void whatCanBeSeenStays() {
    assertThat(Json.line(TextNode.valueOf("Küche 240 Ω \ud83d\udca1"))).isEqualTo("\"Küche 240 Ω \ud83d\udca1\"");
    assertThat(Json.line(TextNode.valueOf("P\u202e1"))).isEqualTo("\"P\\u202e1\"");
  }
}
