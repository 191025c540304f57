package wattle.emit.media.text;

/** Prose in lines of a width, broken at blanks; a word that is longer than a line stays whole. */
public final class Wrapped {
  private Wrapped() {}

  /**
   * The text with every line after the first indented.
   *
   * @param text of one paragraph, its own indent included
   * @param columns of a line; {@link Integer#MAX_VALUE} leaves it as one line
   * @param indent before each further line
   */
  public static String at(String text, int columns, String indent) {
    if (DisplayWidth.of(text) <= columns) {
      return text;
    }
    StringBuilder lines = new StringBuilder();
    StringBuilder line = new StringBuilder();
    boolean begun = false;
    for (String word : text.split("(?<=\\S) ")) {
      if (begun && DisplayWidth.of(line.toString()) + 1 + DisplayWidth.of(word) > columns) {
        lines.append(line).append('\n');
        line.setLength(0);
        line.append(indent).append(word);
      } else {
        line.append(begun ? " " : "").append(word);
      }
      begun = true;
    }
    return lines.append(line).toString();
  }
}
