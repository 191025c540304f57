package wattle.emit.media.text;

import java.util.Locale;

/**
 * Characters that a reader cannot see, or that change how others are shown, made visible. A name must look like what
 * it is: a mark that turns the writing direction could make one breaker's name read as another's.
 */
public final class VisibleText {

  /** The text on one line, each control, direction and zero-width character replaced by a sign that shows it. */
  public static String of(String text) {
    if (text.codePoints().noneMatch(VisibleText::isHidden)) {
      return text;
    }
    StringBuilder out = new StringBuilder(text.length() + 16);
    text.codePoints().forEach(c -> {
      if (isHidden(c)) {
        out.append(sign(c));
      } else {
        out.appendCodePoint(c);
      }
    });
    return out.toString();
  }

  /** Whether a character has no shape of its own, or none that is safe to show. */
  static boolean isHidden(int codePoint) {
    return switch (Character.getType(codePoint)) {
      case Character.CONTROL, Character.FORMAT, Character.SURROGATE, Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
        true;
      default -> (codePoint & 0xFFFE) == 0xFFFE;
    };
  }

  /** The picture of a control character that Unicode provides, or else its number. */
  static String sign(int codePoint) {
    if (codePoint < 0x20) {
      return Character.toString(0x2400 + codePoint);
    }
    return codePoint == 0x7F ? "\u2421" : String.format(Locale.ROOT, "[U+%04X]", codePoint);
  }

  private VisibleText() {}
}
