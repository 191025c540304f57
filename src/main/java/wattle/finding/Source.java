package wattle.finding;

import java.util.Arrays;
import java.util.Optional;

/**
 * One text that was read: its display name and its content. Positions in it are offsets in UTF-16 units; lines and
 * columns are worked out here, in one place, and only when they are shown.
 */
public sealed class Source permits Excerpt {
  private final String name;
  private final String text;
  private final Source written;
  private final Optional<Placed> placed;
  private int[] lineStarts;

  /**
   * @param name what a reader is shown, usually the path as it was given
   * @param text the whole content, line ends as they stand
   */
  public Source(String name, String text) {
    this.name = name;
    this.text = text;
    this.written = this;
    this.placed = Optional.empty();
  }

  private Source(Source written, Placed placed) {
    this.name = written.name;
    this.text = written.text;
    this.written = written;
    this.placed = Optional.of(placed);
  }

  /** The same text, as what a part of it says once more where a pattern is placed. */
  public Source placed(Placed by) {
    return new Source(written, by);
  }

  /** The text as it was read: this one, but for a part of it that is placed. */
  public Source written() {
    return written;
  }

  /** By what placement a part of the text is meant here. */
  public Optional<Placed> placed() {
    return placed;
  }

  public String name() {
    return name;
  }

  public String text() {
    return text;
  }

  /** The span from {@code start} up to and not including {@code end}, both held inside the text. */
  public Span span(int start, int end) {
    int from = Math.max(0, Math.min(start, text.length()));
    return new Span(this, from, Math.max(from, Math.min(end, text.length())));
  }

  /** Number of lines, at least one; a final line end does not start a further line. */
  public int lineCount() {
    int[] starts = starts();
    int last = starts.length;
    return last > 1 && starts[last - 1] == text.length() ? last - 1 : last;
  }

  /** The 1-based line in which the offset lies. */
  public int lineOf(int offset) {
    int found = Arrays.binarySearch(starts(), offset);
    return found >= 0 ? found + 1 : -found - 1;
  }

  /** The 1-based column of the offset, counted in code points. */
  public int columnOf(int offset) {
    int lineStart = starts()[lineOf(offset) - 1];
    return text.codePointCount(lineStart, Math.min(offset, text.length())) + 1;
  }

  /** Offset at which a 1-based line starts. */
  public int startOfLine(int line) {
    return starts()[line - 1];
  }

  /** A 1-based line without its line end. */
  public String line(int line) {
    int from = startOfLine(line);
    int to = line < starts().length ? starts()[line] : text.length();
    while (to > from && (text.charAt(to - 1) == '\n' || text.charAt(to - 1) == '\r')) {
      to--;
    }
    return text.substring(from, to);
  }

  // A race would only compute the same array twice, so no lock is taken.
  int[] starts() {
    if (written != this) {
      return written.starts();
    }
    int[] known = lineStarts;
    if (known != null) {
      return known;
    }
    int count = 1;
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) == '\n') {
        count++;
      }
    }
    int[] made = new int[count];
    int at = 1;
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) == '\n') {
        made[at++] = i + 1;
      }
    }
    lineStarts = made;
    return made;
  }

  @Override
  public String toString() {
    return name;
  }
}
