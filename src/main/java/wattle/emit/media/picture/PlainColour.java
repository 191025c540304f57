package wattle.emit.media.picture;

import com.github.weisj.jsvg.paint.impl.DefaultPaintParser;
import java.awt.Color;
import java.util.OptionalInt;

/** The colours of SVG that are one opaque colour, as opposed to a pattern or a gradient. */
final class PlainColour {
  static OptionalInt rgb(String paint) {
    Color colour = new DefaultPaintParser().parseColor(paint.strip());
    return colour == null || colour.getAlpha() < 255 ? OptionalInt.empty() : OptionalInt.of(colour.getRGB() & 0xFFFFFF);
  }

  private PlainColour() {}
}
