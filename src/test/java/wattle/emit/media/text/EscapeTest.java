package wattle.emit.media.text;

import static org.assertj.core.api.Assertions.assertThat;

import guru.nidi.graphviz.attribute.Label;
import guru.nidi.graphviz.engine.Engine;
import guru.nidi.graphviz.engine.Format;
import guru.nidi.graphviz.model.Factory;
import java.io.StringReader;
import javax.xml.parsers.DocumentBuilderFactory;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import wattle.emit.media.graphviz.DotEngine;

class EscapeTest {

  @Test
  void markUpStaysText() {
    assertThat(Escape.xml("<script>\"a\" & 'b' ]]></script>"))
        .isEqualTo("&lt;script&gt;&quot;a&quot; &amp; &#39;b&#39; ]]&gt;&lt;/script&gt;");
  }

  @Test
  void whatCannotBeSeenIsShown() {
    assertThat(VisibleText.of("a\u202Eb\u200Fc\u0007d\ne\u007F")).isEqualTo("a[U+202E]b[U+200F]c\u2407d\u240Ae\u2421");
    assertThat(VisibleText.of("Küche 漢 😀 שלום")).isEqualTo("Küche 漢 😀 שלום");
    assertThat(VisibleText.of("\uD800x\uFFFE")).isEqualTo("[U+D800]x[U+FFFE]");
    assertThat(Escape.xml("two\nlines\u0000")).isEqualTo("two\nlines\u2400");
  }

  /** Any text, in an element and in an attribute, is well-formed and is read back as what a reader is shown. */
  @Property(tries = 300)
  void anyTextIsWellFormedXml(@ForAll String text) throws Exception {
    String xml = "<a b=\"" + Escape.xml(text) + "\">" + Escape.xml(text) + "</a>";
    Document read = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
    String shown = read.getDocumentElement().getTextContent();
    assertThat(VisibleText.of(shown)).isEqualTo(VisibleText.of(text));
  }

  @ParameterizedTest
  @ValueSource(strings = {
      "plain", "a \\N b", "ends in \\", "&amp;", "&lt;b&gt;", "\"quoted\"", "<b>x</b>", "a\\nb", "\\\"", "5 mm² Ω 😀", "{a|b}"
  })
  void graphvizDrawsALabelAsItIsWritten(String text) throws Exception {
    String byHand = "digraph { n [label=" + Escape.dotString(text) + "] }";
    assertThat(labelOf(DotEngine.builtIn().render(byHand, Engine.DOT, Format.SVG).text())).isEqualTo(text);

    String bySerializer = DotEngine.builtIn()
        .svg(Factory.mutGraph("g").add(Factory.mutNode("n").add(Label.of(Escape.dotLabel(text))))).text();
    assertThat(labelOf(bySerializer)).isEqualTo(text);
  }

  private static String labelOf(String svg) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
    Document read = factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    return read.getElementsByTagName("text").item(0).getTextContent().replace('\u00A0', ' ');
  }

  @ParameterizedTest
  @CsvSource(quoteCharacter = '`', delimiter = '|', value = {
      "plain text       | plain text",
      "a,b              | \"a,b\"",
      "a;b              | \"a;b\"",
      "say \"x\"        | \"say \"\"x\"\"\"",
      "=HYPERLINK(1)    | '=HYPERLINK(1)",
      "=1,2             | \"'=1,2\"",
      "+1+2             | '+1+2",
      "-cmd             | '-cmd",
      "@SUM(A1)         | '@SUM(A1)",
      "＝1              | '＝1",
      "-12.5            | -12.5",
      "+3               | +3",
      "-2.5e-3          | -2.5e-3",
      "-4 %             | -4 %",
      "` =1`            | ' =1",
  })
  void csvCellsAreNeverFormulas(String text, String cell) {
    assertThat(Escape.csv(text)).isEqualTo(cell);
  }

  @Test
  void csvCellsStayOnTheirLine() {
    assertThat(Escape.csv("a\r\n=b\t")).isEqualTo("a\u240D\u240A=b\u2409");
  }

  @Test
  void markdownSignsStayText() {
    assertThat(Escape.markdown("a|b *c* <i> [x](y) `z`"))
        .isEqualTo("a\\|b \\*c\\* \\<i\\> \\[x\\](y) \\`z\\`");
  }
}
