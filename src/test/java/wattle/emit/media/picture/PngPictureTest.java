package wattle.emit.media.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.emit.media.text.Escape;

class PngPictureTest {
  private static final int WHITE = 0xFFFFFF;

  @Test
  void drawsShapesAtTheirPlaces() throws Exception {
    BufferedImage image = draw("<rect x='10' y='20' width='30' height='10' fill='#123456'/>", 96);

    assertThat(image.getWidth()).isEqualTo(200);
    assertThat(image.getHeight()).isEqualTo(100);
    assertThat(inkOf(image)).isEqualTo(new Rectangle(10, 20, 30, 10));
    assertThat(image.getRGB(15, 25) & WHITE).isEqualTo(0x123456);
  }

  @Test
  void resolutionScalesThePicture() throws Exception {
    byte[] png = PngPicture.of(svg("<rect x='10' y='20' width='30' height='10'/>"), 288);
    BufferedImage image = read(png);

    assertThat(image.getWidth()).isEqualTo(600);
    assertThat(inkOf(image)).isEqualTo(new Rectangle(30, 60, 90, 30));
    assertThat(new String(png, StandardCharsets.ISO_8859_1)).contains("pHYs", "tEXtSoftware\0Wattle");
  }

  @Test
  void drawsTextAsWideAsItWasMeasured() throws Exception {
    double width = Face.SANS.width("HHHHHHHH", 20);
    Rectangle start = inkOf(draw("<text x='20' y='50' font-size='20'>HHHHHHHH</text>", 96));
    Rectangle middle = inkOf(draw("<text x='100' y='50' font-size='20' text-anchor='middle'>HHHHHHHH</text>", 96));
    Rectangle end = inkOf(draw("<text x='190' y='50' style='font-size:20px; text-anchor:end'>HHHHHHHH</text>", 96));

    assertThat((double) start.width).isCloseTo(width, within(5.0));
    assertThat((double) start.x).isCloseTo(20, within(3.0));
    assertThat(middle.getCenterX()).isCloseTo(100, within(1.5));
    assertThat(end.getMaxX()).isCloseTo(190, within(3.0));
    assertThat(start.getMaxY()).isCloseTo(50, within(1.0));
  }

  @Test
  void followsSpansRulesAndTransformations() throws Exception {
    String label = "<text x='10' y='30' font-size='20'>HH<tspan x='10' dy='1.5em'>HH</tspan></text>";
    assertThat((double) inkOf(draw(label, 96)).height).isCloseTo(30 + 20 * 0.73, within(2.0));

    BufferedImage red = draw("<style>.a{fill:#f00} @media print{.a{fill:#0f0}}</style>"
        + "<text class='a' y='50' font-size='60'>H</text>", 96);
    assertThat(colorsOf(red, 0xFF0000)).isGreaterThan(100);
    assertThat(colorsOf(red, 0x00FF00)).isZero();

    Rectangle turned = inkOf(draw("<text transform='translate(50,90) rotate(-90)' font-size='20'>HHHH</text>", 96));
    assertThat(turned.height).isGreaterThan(turned.width);
    assertThat(inkOf(draw("<g visibility='hidden'><text y='50'>HH</text></g>", 96)).isEmpty()).isTrue();
  }

  @Test
  void letterInASymbolIsDrawnWhereTheSymbolIsUsed() throws Exception {
    Rectangle ink = inkOf(draw("<defs><symbol id='s'><text x='0' y='20' font-size='20'>H</text></symbol></defs>"
        + "<use href='#s' x='120' y='40'/>", 96));

    assertThat((double) ink.x).isCloseTo(121, within(3.0));
    assertThat(ink.getMaxY()).isCloseTo(60, within(1.0));
  }

  @Test
  void hostileTextIsDrawnAsText() throws Exception {
    for (String text : new String[]{"<script>alert(1)</script>", "]]>", "a\"b'c&d", "\u202Eevil", "\u0000\u0007", "\uD800"}) {
      String svg = "<text x='5' y='50' font-size='12'>" + Escape.xml(text) + "</text>";
      assertThat(inkOf(draw(svg, 96)).width).isGreaterThan(5);
    }
  }

  @Test
  void saysWhatCannotBeDrawn() {
    assertThatThrownBy(() -> PngPicture.of("<svg", 96))
        .isInstanceOf(UnreadablePictureException.class)
        .hasMessageContaining("not well-formed");
    assertThatThrownBy(() -> PngPicture.of("<html/>", 96)).hasMessageContaining("<html>");
    assertThatThrownBy(() -> PngPicture.of("<svg xmlns='http://www.w3.org/2000/svg'/>", 96))
        .hasMessageContaining("no size");
    assertThatThrownBy(() -> PngPicture.of("<svg width='40000' height='40000'/>", 300))
        .hasMessageContaining("125000 × 125000 pixels at 300");
  }

  @Test
  void drawsMoreShapesThanTheLibraryAllowsByDefault() throws Exception {
    BufferedImage image = draw("<path d='M0 0h1v1z'/>".repeat(3000) + "<rect x='100' y='50' width='9' height='9'/>", 96);

    assertThat(inkOf(image).getMaxX()).isEqualTo(109);
  }

  @Test
  void readsNoOtherFile(@TempDir Path folder) throws Exception {
    Path secret = Files.writeString(folder.resolve("secret.txt"), "HHHHHHHH");
    String svg = "<!DOCTYPE svg [<!ENTITY x SYSTEM '" + secret.toUri() + "'>]>"
        + "<svg xmlns='http://www.w3.org/2000/svg' width='200' height='100'><text y='50'>&x;</text></svg>";
    try {
      assertThat(inkOf(read(PngPicture.of(svg, 96))).isEmpty()).isTrue();
    } catch (UnreadablePictureException e) {
      assertThat(e).hasMessageContaining("x"); // refused for its unknown entity
    }
  }

  private static String svg(String content) {
    return "<svg xmlns='http://www.w3.org/2000/svg' width='200' height='100' viewBox='0 0 200 100'>" + content + "</svg>";
  }

  private static BufferedImage draw(String content, int pixelsPerInch) throws Exception {
    return read(PngPicture.of(svg(content), pixelsPerInch));
  }

  private static BufferedImage read(byte[] png) throws Exception {
    return ImageIO.read(new ByteArrayInputStream(png));
  }

  /** The smallest box around everything that is not nearly white. */
  private static Rectangle inkOf(BufferedImage image) {
    Rectangle ink = new Rectangle(-1, -1);
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        if ((image.getRGB(x, y) & 0xFF) < 0xC0 || (image.getRGB(x, y) >> 8 & 0xFF) < 0xC0) {
          ink.add(new Rectangle(x, y, 1, 1));
        }
      }
    }
    return ink;
  }

  private static long colorsOf(BufferedImage image, int rgb) {
    return java.util.stream.IntStream.range(0, image.getWidth() * image.getHeight())
        .filter(i -> (image.getRGB(i % image.getWidth(), i / image.getWidth()) & WHITE) == rgb).count();
  }
}
