package wattle.emit.media.picture;

import java.text.Bidi;

/** Text in the order in which it is drawn: words of a right-to-left script run the other way. */
final class VisualOrder {
  static String of(String text) {
    char[] chars = text.toCharArray();
    if (!Bidi.requiresBidi(chars, 0, chars.length)) {
      return text;
    }
    Bidi bidi = new Bidi(text, Bidi.DIRECTION_LEFT_TO_RIGHT);
    int runs = bidi.getRunCount();
    byte[] levels = new byte[runs];
    String[] pieces = new String[runs];
    for (int i = 0; i < runs; i++) {
      levels[i] = (byte) bidi.getRunLevel(i);
      String piece = text.substring(bidi.getRunStart(i), bidi.getRunLimit(i));
      pieces[i] = (levels[i] & 1) == 0 ? piece : mirrored(piece);
    }
    Bidi.reorderVisually(levels, 0, pieces, 0, runs);
    return String.join("", pieces);
  }

  private static String mirrored(String piece) {
    StringBuilder out = new StringBuilder(piece.length());
    int[] codePoints = piece.codePoints().toArray();
    for (int i = codePoints.length - 1; i >= 0; i--) {
      int at = "()[]{}<>«»".indexOf(codePoints[i]);
      out.appendCodePoint(at < 0 ? codePoints[i] : "()[]{}<>«»".charAt(at ^ 1));
    }
    return out.toString();
  }

  private VisualOrder() {}
}
