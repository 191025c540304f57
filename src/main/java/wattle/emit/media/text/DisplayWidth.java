package wattle.emit.media.text;

/** How much room text takes on a terminal. */
public final class DisplayWidth {
  /** Columns that a text takes on a terminal: two for wide letters, none for combining marks. */
  public static int of(String text) {
    return text.codePoints().map(DisplayWidth::of).sum();
  }

  /** Columns of one character. */
  public static int of(int codePoint) {
    int type = Character.getType(codePoint);
    if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK || codePoint == 0x200D
        || codePoint >= 0xFE00 && codePoint <= 0xFE0F) {
      return 0;
    }
    boolean wide = codePoint >= 0x1100 && codePoint <= 0x115F
        || codePoint >= 0x2E80 && codePoint <= 0xA4CF
        || codePoint >= 0xAC00 && codePoint <= 0xD7A3
        || codePoint >= 0xF900 && codePoint <= 0xFAFF
        || codePoint >= 0xFE30 && codePoint <= 0xFE6F
        || codePoint >= 0xFF00 && codePoint <= 0xFF60
        || codePoint >= 0xFFE0 && codePoint <= 0xFFE6
        || codePoint >= 0x1F300 && codePoint <= 0x1FAFF
        || codePoint >= 0x20000 && codePoint <= 0x3FFFD;
    return wide ? 2 : 1;
  }

  private DisplayWidth() {}
}
