package wattle.emit.media.picture;

import java.awt.geom.Path2D;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/**
 * What drawing needs of a TrueType file: which glyph a character has, how far it advances, its outline. Read in place,
 * in a few milliseconds; the font library that writes the PDF takes a tenth of a second to open the same file, and the
 * Java platform's own fonts need a font configuration that a bare server lacks.
 *
 * <p>Source: the OpenType specification, tables {@code head}, {@code hhea}, {@code hmtx}, {@code cmap} (format 12),
 * {@code loca} and {@code glyf}. Lengths are in font units.
 */
final class TrueType {
  private final ByteBuffer data;
  private final Map<String, Integer> tables = new HashMap<>();
  private final int cmapGroups;
  private final int metricCount;
  private final boolean longOffsets;
  private final GlyphOutlines outlines;

  /** Advances of the characters that plans are mostly written in, since every layout measures very many labels. */
  private final int[] usual = new int[0x250];

  /**
   * @param file the whole content of a TrueType file with a full Unicode character map
   */
  TrueType(byte[] file) {
    data = ByteBuffer.wrap(file);
    int count = data.getShort(4);
    for (int i = 0; i < count; i++) {
      int entry = 12 + 16 * i;
      tables.put(new String(file, entry, 4, StandardCharsets.US_ASCII), data.getInt(entry + 8));
    }
    cmapGroups = fullUnicodeMap();
    metricCount = unsigned(table("hhea") + 34);
    longOffsets = data.getShort(table("head") + 50) == 1;
    outlines = new GlyphOutlines(data, this::glyphStart);
    for (int c = 0; c < usual.length; c++) {
      usual[c] = advance(glyph(c));
    }
  }

  int unitsPerEm() {
    return unsigned(table("head") + 18);
  }

  /** Height above the baseline that a line reserves. */
  int ascent() {
    return data.getShort(table("hhea") + 4);
  }

  /** Depth below the baseline that a line reserves, as a positive length. */
  int descent() {
    return -data.getShort(table("hhea") + 6);
  }

  /** The glyph of a character; 0 is the box that stands for a missing one. */
  int glyph(int codePoint) {
    int low = 0;
    int high = data.getInt(cmapGroups + 12) - 1;
    while (low <= high) {
      int middle = (low + high) >>> 1;
      int group = cmapGroups + 16 + 12 * middle;
      if (codePoint < data.getInt(group)) {
        high = middle - 1;
      } else if (codePoint > data.getInt(group + 4)) {
        low = middle + 1;
      } else {
        return data.getInt(group + 8) + codePoint - data.getInt(group);
      }
    }
    return 0;
  }

  /** How far a character advances. */
  int advanceOf(int codePoint) {
    return codePoint < usual.length ? usual[codePoint] : advance(glyph(codePoint));
  }

  int advance(int glyph) {
    return unsigned(table("hmtx") + 4 * Math.min(glyph, metricCount - 1));
  }

  /** The outline, y upwards from the baseline; empty for a space. */
  Path2D outline(int glyph) {
    return outlines.of(glyph);
  }

  private int glyphStart(int glyph) {
    int loca = table("loca");
    return table("glyf") + (longOffsets ? data.getInt(loca + 4 * glyph) : 2 * unsigned(loca + 2 * glyph));
  }

  private int fullUnicodeMap() {
    int cmap = table("cmap");
    for (int i = 0; i < data.getShort(cmap + 2); i++) {
      int map = cmap + data.getInt(cmap + 4 + 8 * i + 4);
      if (data.getShort(map) == 12) {
        return map;
      }
    }
    throw new IllegalArgumentException("the font has no character map of format 12");
  }

  private int table(String name) {
    Integer start = tables.get(name);
    if (start == null) {
      throw new IllegalArgumentException("the font has no table " + name);
    }
    return start;
  }

  private int unsigned(int at) {
    return Short.toUnsignedInt(data.getShort(at));
  }
}
