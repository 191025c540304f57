package wattle.emit.media.picture;

import com.github.weisj.jsvg.paint.impl.DefaultPaintParser;
import java.awt.Color;
import java.util.OptionalInt;

/** The colors of SVG that are one opaque color, as opposed to a pattern or a gradient. */
final class PlainColor {
  static OptionalInt rgb(String paint) {
    Color color = new DefaultPaintParser().parseColor(paint.strip());
    return color == null || color.getAlpha() < 255 ? OptionalInt.empty() : OptionalInt.of(color.getRGB() & 0xFFFFFF);
  }

  private PlainColor() {}
}
