package wattle.emit.media.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.io.InputStream;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FaceTest {

  /** The font library that writes the PDF reads the same files with code of its own. */
  @ParameterizedTest
  @EnumSource(Face.class)
  void agreesWithTheLibraryOnEveryGlyph(Face face) throws Exception {
    TrueTypeFont other;
    TrueType ours;
    try (InputStream in = face.open(); InputStream again = face.open()) {
      other = new TTFParser().parse(new RandomAccessReadBuffer(in));
      ours = new TrueType(again.readAllBytes());
    }
    CmapLookup map = other.getUnicodeCmapLookup(false);
    int compared = 0;
    for (int c = 0x20; c < 0x1F700; c++) {
      int glyph = ours.glyph(c);
      assertThat(glyph).as("glyph of U+%04X", c).isEqualTo(map.getGlyphId(c));
      if (glyph == 0) {
        continue;
      }
      compared++;
      assertThat(ours.advance(glyph)).as("advance of U+%04X", c).isEqualTo(other.getAdvanceWidth(glyph));
      if (c < 0x600 || compared % 16 == 0) {
        Rectangle2D box = boxOf(ours.outline(glyph));
        Rectangle2D theirs = other.getGlyph().getGlyph(glyph) == null
            ? new Rectangle2D.Double()
            : boxOf(other.getGlyph().getGlyph(glyph).getPath());
        assertThat(box.getX()).as("left of U+%04X", c).isCloseTo(theirs.getX(), within(1.5));
        assertThat(box.getWidth()).as("width of U+%04X", c).isCloseTo(theirs.getWidth(), within(1.5));
        assertThat(box.getMaxY()).as("top of U+%04X", c).isCloseTo(theirs.getMaxY(), within(1.5));
        assertThat(box.getHeight()).as("height of U+%04X", c).isCloseTo(theirs.getHeight(), within(1.5));
      }
    }
    assertThat(compared).isGreaterThan(2500);
  }

  /** Around all rings; a lone point, which some glyphs keep for hinting, is no ring. */
  private static Rectangle2D boxOf(Path2D outline) {
    Path2D rings = new Path2D.Double();
    double[] n = new double[6];
    boolean lone = false;
    double x = 0;
    double y = 0;
    for (PathIterator steps = outline.getPathIterator(null); !steps.isDone(); steps.next()) {
      int kind = steps.currentSegment(n);
      if (kind == PathIterator.SEG_MOVETO) {
        x = n[0];
        y = n[1];
        lone = true;
      } else if (kind != PathIterator.SEG_CLOSE && !(kind == PathIterator.SEG_LINETO && n[0] == x && n[1] == y)) {
        if (lone) {
          rings.moveTo(x, y);
          lone = false;
        }
        rings.lineTo(n[0], n[1]);
        if (kind == PathIterator.SEG_QUADTO) {
          rings.lineTo(n[2], n[3]);
        }
      }
    }
    return rings.getBounds2D();
  }

  @Test
  void widthGrowsWithSizeAndText() {
    assertThat(Face.SANS.width("", 12)).isZero();
    assertThat(Face.SANS.width("15 A", 24)).isCloseTo(2 * Face.SANS.width("15 A", 12), within(1e-9));
    assertThat(Face.SANS_BOLD.width("Kitchen", 12)).isGreaterThan(Face.SANS.width("Kitchen", 12));
    assertThat(Face.MONO.width("iii", 12)).isCloseTo(Face.MONO.width("WWW", 12), within(1e-9));
  }

  @Test
  void knowsTheSignsThatPlansUse() {
    for (Face face : Face.values()) {
      assertThat("Ω°²³×÷−–µ½¼é漢".codePoints().filter(c -> !face.has(c)).mapToObj(Character::toString))
          .containsExactly("漢");
    }
  }

  @Test
  void choosesTheFaceByFamilyAndWeight() {
    assertThat(Face.of(Face.SANS_FAMILIES, false)).isEqualTo(Face.SANS);
    assertThat(Face.of("Times,serif", true)).isEqualTo(Face.SANS_BOLD);
    assertThat(Face.of(Face.MONO_FAMILIES, true)).isEqualTo(Face.MONO);
  }
}
