package wattle.emit.media.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import wattle.emit.media.picture.Face;
import wattle.emit.media.text.VisibleText;

/** Cuts text to the room there is. */
public final class Fit {
  /** What does not stand before an ellipsis. */
  private static final Pattern AFTER_WORD = Pattern.compile("[\\s,;:(–-]+$");

  private Fit() {}

  /**
   * The text if it fits, else its first words and an ellipsis, or the beginning of a first word that is too long; what is hidden in it is
   * made visible.
   */
  public static String within(String text, double size, boolean bold, double width) {
    String visible = VisibleText.of(text);
    Face face = bold ? Face.SANS_BOLD : Face.SANS;
    if (face.width(visible, size) <= width) {
      return visible;
    }
    double left = width - face.width("…", size);
    StringBuilder kept = new StringBuilder();
    for (int codePoint : visible.codePoints().toArray()) {
      left -= face.width(Character.toString(codePoint), size);
      if (left < 0) {
        break;
      }
      kept.appendCodePoint(codePoint);
    }
    int word = visible.charAt(kept.length()) == ' ' ? kept.length() : kept.lastIndexOf(" ");
    return AFTER_WORD.matcher(word > 0 ? kept.substring(0, word) : kept).replaceFirst("") + "…";
  }

  /** Breaks a sentence at its spaces into lines; a single word may be wider than they are. */
  public static List<String> lines(String sentence, double size, double width) {
    return lines(sentence, size, false, width);
  }

  /** The same of a text that may be bold. */
  public static List<String> lines(String sentence, double size, boolean bold, double width) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : sentence.split(" ")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && width(longer, size, bold) > width) {
        lines.add(line);
        line = word;
      } else {
        line = longer;
      }
    }
    lines.add(line);
    return lines;
  }

  /** Width of a text as it will be drawn. */
  public static double width(String text, double size, boolean bold) {
    return (bold ? Face.SANS_BOLD : Face.SANS).width(VisibleText.of(text), size);
  }
}
