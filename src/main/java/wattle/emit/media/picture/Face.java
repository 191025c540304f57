package wattle.emit.media.picture;

import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Locale;

/**
 * The faces that are shipped, one family for every picture and page. Widths are those of PNG and PDF; a browser that
 * has the same family installed differs by kerning alone.
 */
public enum Face {
  SANS("DejaVu Sans", 400, "DejaVuSans.ttf"), SANS_BOLD("DejaVu Sans", 700, "DejaVuSans-Bold.ttf"), MONO("DejaVu Sans Mono", 400,
      "DejaVuSansMono.ttf");

  /** What SVG and HTML should name, so that a machine without the family shows something alike. */
  public static final String SANS_FAMILIES = "DejaVu Sans, Verdana, sans-serif";

  public static final String MONO_FAMILIES = "DejaVu Sans Mono, Menlo, Consolas, monospace";

  private final String family;
  private final int weight;
  private final String file;
  private TrueType read;

  Face(String family, int weight, String file) {
    this.family = family;
    this.weight = weight;
    this.file = file;
  }

  /** The face that stands for a list of families as CSS writes it; everything that is not monospaced is sans. */
  public static Face of(String families, boolean bold) {
    String first = families.toLowerCase(Locale.ROOT);
    boolean mono = first.contains("mono") || first.contains("courier") || first.contains("consolas");
    return mono ? MONO : bold ? SANS_BOLD : SANS;
  }

  public String family() {
    return family;
  }

  /** As CSS counts: 400 is regular, 700 bold. */
  public int weight() {
    return weight;
  }

  /** How far a line of text advances, in the unit of the size; no character is joined or kerned. */
  public double width(String text, double size) {
    TrueType font = font();
    long units = 0;
    for (int i = 0; i < text.length();) {
      int codePoint = text.codePointAt(i);
      units += font.advanceOf(codePoint);
      i += Character.charCount(codePoint);
    }
    return units * size / font.unitsPerEm();
  }

  /** Height above the baseline that a line reserves, in the unit of the size. */
  public double ascent(double size) {
    return font().ascent() * size / font().unitsPerEm();
  }

  /** Depth below the baseline that a line reserves, in the unit of the size. */
  public double descent(double size) {
    return font().descent() * size / font().unitsPerEm();
  }

  /** Whether the face has a glyph of its own for the character; otherwise a box is drawn. */
  public boolean has(int codePoint) {
    return font().glyph(codePoint) != 0;
  }

  /** The outline of a line that starts at the origin, y downwards as in SVG. */
  Path2D outline(String text, double size) {
    TrueType font = font();
    double scale = size / font.unitsPerEm();
    Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO);
    double x = 0;
    for (int codePoint : text.codePoints().toArray()) {
      int glyph = font.glyph(codePoint);
      path.append(font.outline(glyph).getPathIterator(new AffineTransform(scale, 0, 0, -scale, x, 0)), false);
      x += font.advance(glyph) * scale;
    }
    return path;
  }

  /** The TrueType file; the caller closes it. */
  InputStream open() {
    InputStream in = Face.class.getResourceAsStream(file);
    if (in == null) {
      throw new IllegalStateException("the font " + file + " is missing from this build");
    }
    return in;
  }

  private synchronized TrueType font() {
    if (read == null) {
      try (InputStream in = open()) {
        read = new TrueType(in.readAllBytes());
      } catch (IOException e) {
        throw new UncheckedIOException("cannot read the font " + file, e);
      }
    }
    return read;
  }
}
