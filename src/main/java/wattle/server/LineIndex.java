package wattle.server;

import java.util.Arrays;
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
    this.text = text;
    int[] found = new int[64];
    int count = 1;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\n' || c == '\r' && (i + 1 == text.length() || text.charAt(i + 1) != '\n')) {
        if (count == found.length) {
          found = Arrays.copyOf(found, 2 * count);
        }
        found[count++] = i + 1;
      }
    }
    this.starts = Arrays.copyOf(found, count);
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
