package wattle.emit.media.picture;

import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.nio.ByteBuffer;
import java.util.function.IntUnaryOperator;

/**
 * Reads outlines from a {@code glyf} table. A contour is a ring of points on and off the curve; between two off-curve
 * points one on the curve is implied half-way. A composite glyph places others by a transformation each.
 */
final class GlyphOutlines {
  private static final int DEEPEST = 8;

  private final ByteBuffer data;
  private final IntUnaryOperator startOf;

  /** @param startOf where the data of a glyph starts; it ends where that of the next starts */
  GlyphOutlines(ByteBuffer data, IntUnaryOperator startOf) {
    this.data = data;
    this.startOf = startOf;
  }

  Path2D of(int glyph) {
    Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO);
    append(path, glyph, new AffineTransform(), 0);
    return path;
  }

  private void append(Path2D path, int glyph, AffineTransform placed, int depth) {
    int start = startOf.applyAsInt(glyph);
    if (start == startOf.applyAsInt(glyph + 1)) {
      return;
    }
    int contours = data.getShort(start);
    if (contours >= 0) {
      Path2D simple = new Path2D.Double(Path2D.WIND_NON_ZERO);
      appendSimple(simple, start + 10, contours);
      path.append(simple.getPathIterator(placed), false);
    } else if (depth < DEEPEST) {
      appendParts(path, start + 10, placed, depth);
    } else {
      throw new IllegalArgumentException("glyph " + glyph + " is made of glyphs within glyphs without end");
    }
  }

  private void appendParts(Path2D path, int start, AffineTransform placed, int depth) {
    int at = start;
    int flags;
    do {
      flags = data.getShort(at);
      final int part = Short.toUnsignedInt(data.getShort(at + 2));
      at += 4;
      if ((flags & 0x2) == 0) {
        throw new IllegalArgumentException("a part of a glyph is placed by points, which is not supported");
      }
      boolean words = (flags & 0x1) != 0;
      final int dx = words ? data.getShort(at) : data.get(at);
      final int dy = words ? data.getShort(at + 2) : data.get(at + 1);
      at += words ? 4 : 2;
      double xx = 1;
      double xy = 0;
      double yx = 0;
      double yy = 1;
      if ((flags & 0x8) != 0) {
        xx = yy = fraction(at);
        at += 2;
      } else if ((flags & 0x40) != 0) {
        xx = fraction(at);
        yy = fraction(at + 2);
        at += 4;
      } else if ((flags & 0x80) != 0) {
        xx = fraction(at);
        xy = fraction(at + 2);
        yx = fraction(at + 4);
        yy = fraction(at + 6);
        at += 8;
      }
      AffineTransform inner = new AffineTransform(placed);
      inner.concatenate(new AffineTransform(xx, xy, yx, yy, dx, dy));
      append(path, part, inner, depth + 1);
    } while ((flags & 0x20) != 0);
  }

  /** A number of the format 2.14. */
  private double fraction(int at) {
    return data.getShort(at) / 16384.0;
  }

  private void appendSimple(Path2D path, int start, int contours) {
    if (contours == 0) {
      return;
    }
    int points = Short.toUnsignedInt(data.getShort(start + 2 * (contours - 1))) + 1;
    int at = start + 2 * contours;
    at += 2 + Short.toUnsignedInt(data.getShort(at));
    byte[] flags = new byte[points];
    for (int i = 0; i < points; i++) {
      flags[i] = data.get(at++);
      if ((flags[i] & 0x8) != 0) {
        for (int repeat = Byte.toUnsignedInt(data.get(at++)); repeat > 0; repeat--) {
          flags[i + 1] = flags[i];
          i++;
        }
      }
    }
    int[] xs = new int[points];
    at = coordinates(xs, flags, at, 0x2, 0x10);
    int[] ys = new int[points];
    coordinates(ys, flags, at, 0x4, 0x20);
    int first = 0;
    for (int contour = 0; contour < contours; contour++) {
      int last = Short.toUnsignedInt(data.getShort(start + 2 * contour));
      ring(path, flags, xs, ys, first, last);
      first = last + 1;
    }
  }

  /** Each coordinate is a step from the one before: a byte with its sign in the flags, a word, or nothing for none. */
  private int coordinates(int[] values, byte[] flags, int start, int isByte, int sameOrPositive) {
    int at = start;
    int value = 0;
    for (int i = 0; i < values.length; i++) {
      boolean same = (flags[i] & sameOrPositive) != 0;
      if ((flags[i] & isByte) != 0) {
        int step = Byte.toUnsignedInt(data.get(at++));
        value += same ? step : -step;
      } else if (!same) {
        value += data.getShort(at);
        at += 2;
      }
      values[i] = value;
    }
    return at;
  }

  private static void ring(Path2D path, byte[] flags, int[] xs, int[] ys, int first, int last) {
    int count = last - first + 1;
    if (count < 2) {
      return;
    }
    int start = first;
    while (start <= last && (flags[start] & 1) == 0) {
      start++;
    }
    double startX;
    double startY;
    if (start > last) { // no point lies on the curve: start half-way between the first two
      start = first;
      startX = (xs[first] + xs[last]) / 2.0;
      startY = (ys[first] + ys[last]) / 2.0;
    } else {
      startX = xs[start];
      startY = ys[start];
    }
    path.moveTo(startX, startY);
    boolean on = (flags[start] & 1) != 0;
    double offX = xs[start];
    double offY = ys[start];
    for (int i = 1; i < count; i++) {
      int next = first + (start - first + i) % count;
      boolean nextOn = (flags[next] & 1) != 0;
      if (on && nextOn) {
        path.lineTo(xs[next], ys[next]);
      } else if (!on && nextOn) {
        path.quadTo(offX, offY, xs[next], ys[next]);
      } else if (!on) {
        path.quadTo(offX, offY, (offX + xs[next]) / 2, (offY + ys[next]) / 2);
      }
      on = nextOn;
      offX = xs[next];
      offY = ys[next];
    }
    if (!on) {
      path.quadTo(offX, offY, startX, startY);
    }
    path.closePath();
  }
}
