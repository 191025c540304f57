package wattle.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Cuts a text where no block is open and no list goes on: behind such a line end nothing before it matters to the parser.
 * It knows of the notation only what opens and closes: braces, quotes, comments, and the comma that carries a list over a
 * line end.
 */
final class TextParts {
  private final String text;
  private final List<String> parts = new ArrayList<>();
  private int start;
  private int depth;
  private char last = ' ';

  private TextParts(String text) {
    this.text = text;
  }

  /**
   * The parts in order, which together are the text; absent for a text whose braces or quotes are not in order, which must
   * be read as a whole, since the parser then looks far for what was meant.
   */
  static Optional<List<String>> of(String text) {
    TextParts parts = new TextParts(text);
    return parts.cut() ? Optional.of(parts.parts) : Optional.empty();
  }

  private boolean cut() {
    for (int at = 0; at < text.length(); at++) {
      char c = text.charAt(at);
      if (c == '"') {
        at = endOfQuote(at);
        if (at < 0) {
          return false;
        }
      } else if (c == '/' && at + 1 < text.length() && text.charAt(at + 1) == '/') {
        at = endOfLine(at) - 1;
        continue;
      } else if (c == '{') {
        depth++;
      } else if (c == '}') {
        if (--depth < 0) {
          return false;
        }
      } else if (c == '\n' || c == '\r' && (at + 1 == text.length() || text.charAt(at + 1) != '\n')) {
        if (!lineEnd(at + 1)) {
          return false;
        }
        continue;
      }
      last = c <= ' ' || c == '\u00A0' || c == '\uFEFF' ? last : c;
    }
    if (start < text.length()) {
      parts.add(text.substring(start));
    }
    return depth == 0;
  }

  /** False where a block is open and a word begins at the edge of the page: there a brace may be missing before it. */
  private boolean lineEnd(int next) {
    if (depth > 0) {
      return next == text.length() || !Character.isLetter(text.charAt(next));
    }
    if (last != ',') {
      parts.add(text.substring(start, next));
      start = next;
      last = ' ';
    }
    return true;
  }

  private int endOfLine(int from) {
    int at = from;
    while (at < text.length() && text.charAt(at) != '\n' && text.charAt(at) != '\r') {
      at++;
    }
    return at;
  }

  /** Where a text in quotes ends, by the rule of the lexer; -1 for one that is not closed. */
  private int endOfQuote(int open) {
    for (int at = open + 1; at < text.length(); at++) {
      switch (text.charAt(at)) {
        case '"' -> {
          return at;
        }
        case '\n', '\r' -> {
          return -1;
        }
        case '\\' -> {
          at++;
          if (at == text.length() || "\\\"nt".indexOf(text.charAt(at)) < 0) {
            return -1;
          }
        }
        default -> {}
      }
    }
    return -1;
  }
}
