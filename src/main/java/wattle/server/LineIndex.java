package wattle.server;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import wattle.finding.Span;

/**
 * Positions of the protocol in one text: 0-based lines, ended by CR, LF or both, and 0-based columns in UTF-16 units. The
 * only place where they are worked out. A position outside the text is held inside it, as the protocol asks.
 */
final class LineIndex {
  private final String text;
  private final int[] starts;

  LineIndex(String text) {
    this(text, IntStream.concat(IntStream.of(0), startsWithin(text, 0, text.length())).toArray());
  }

  private LineIndex(String text, int[] starts) {
    this.text = text;
    this.starts = starts;
  }

  /** Lines that start behind a line end within a range of the text. */
  private static IntStream startsWithin(String text, int from, int to) {
    IntStream.Builder starts = IntStream.builder();
    for (int i = from; i < to; i++) {
      char c = text.charAt(i);
      if (c == '\n' || c == '\r' && (i + 1 == text.length() || text.charAt(i + 1) != '\n')) {
        starts.add(i + 1);
      }
    }
    return starts.build();
  }

  String text() {
    return text;
  }

  /** The text with something else in place of a range, of which only the lines about it are looked through. */
  LineIndex with(int start, int end, String put) {
    String now = text.substring(0, start) + put + text.substring(end);
    // A carriage return before the range, and a line feed behind it, are one line end or two by what is between them.
    int first = Math.max(0, position(Math.max(0, start - 1)).getLine());
    int moved = put.length() - (end - start);
    int to = Math.min(now.length(), start + put.length() + 1);
    IntStream before = Arrays.stream(starts, 0, first + 1);
    IntStream behind = Arrays.stream(starts).filter(s -> s > end + 1).map(s -> s + moved);
    return new LineIndex(now, IntStream.concat(IntStream.concat(before, startsWithin(now, starts[first], to)), behind).toArray());
  }

  /** Offset in UTF-16 units of a position. */
  int offset(Position position) {
    if (position.getLine() < 0) {
      return 0;
    }
    if (position.getLine() >= starts.length) {
      return text.length();
    }
    int start = starts[position.getLine()];
    return Math.min(start + Math.max(0, position.getCharacter()), lineEnd(position.getLine()));
  }

  /** Where a line ends, its line end not counted. */
  private int lineEnd(int line) {
    int end = line + 1 < starts.length ? starts[line + 1] : text.length();
    while (end > starts[line] && (text.charAt(end - 1) == '\n' || text.charAt(end - 1) == '\r')) {
      end--;
    }
    return end;
  }

  Position position(int offset) {
    int found = Arrays.binarySearch(starts, offset);
    int line = found >= 0 ? found : -found - 2;
    return new Position(line, offset - starts[line]);
  }

  Range range(Span span) {
    return range(span.start(), span.end());
  }

  Range range(int start, int end) {
    return new Range(position(start), position(end));
  }

  /** Everything. */
  Range whole() {
    return range(0, text.length());
  }
}
