package wattle.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import wattle.finding.Source;
import wattle.finding.Span;

/**
 * Cuts a text where no block is open and no list goes on: behind such a line end nothing before it matters to the parser.
 * It knows of the notation only what opens and closes: braces, quotes, comments, and the comma that carries a list over a
 * line end; and how {@link TokenRepair} closes what was left open, since a block that lacks its brace is closed by what
 * follows it, and the two must be read together.
 */
final class TextParts {
  private static final Pattern WORD = Pattern.compile("[\\p{L}_][\\p{L}_0-9]*(-[\\p{L}_0-9]+)*");

  private final String text;
  private final List<Integer> ends = new ArrayList<>();
  private int depth;
  private char last = ' ';

  private TextParts(String text) {
    this.text = text;
  }

  /** The parts in order, which together are the text. */
  static List<String> of(String text) {
    List<String> parts = new ArrayList<>();
    int start = 0;
    for (int end : ends(text)) {
      parts.add(text.substring(start, end));
      start = end;
    }
    return parts;
  }

  /** Neighbouring parts together, as few as are at least so long, which together are the text; the last may be shorter. */
  static List<Span> portions(Source source, int length) {
    List<Span> portions = new ArrayList<>();
    int start = 0;
    for (int end : ends(source.text())) {
      if (end - start >= length || end == source.text().length()) {
        portions.add(source.span(start, end));
        start = end;
      }
    }
    return portions;
  }

  private static List<Integer> ends(String text) {
    TextParts parts = new TextParts(text);
    parts.cut();
    return parts.ends;
  }

  private void cut() {
    for (int at = 0; at < text.length(); at++) {
      char c = text.charAt(at);
      if (c == '"') {
        at = endOfQuote(at);
      } else if (c == '/' && at + 1 < text.length() && text.charAt(at + 1) == '/') {
        at = endOfLine(at) - 1;
        continue;
      } else if (c == '{') {
        depth++;
      } else if (c == '}') {
        depth = Math.max(0, depth - 1);
      } else if (c == '\n' || c == '\r' && (at + 1 == text.length() || text.charAt(at + 1) != '\n')) {
        lineEnd(at + 1);
        continue;
      }
      last = c <= ' ' || c == '\u00A0' || c == '\uFEFF' ? last : c;
    }
    if (text.length() > (ends.isEmpty() ? 0 : ends.get(ends.size() - 1))) {
      ends.add(text.length());
    }
  }

  private void lineEnd(int next) {
    if (depth > 0) {
      if (text.charAt(next - 1) == '\n' && TokenRepair.opensStatement(wordAt(next))) {
        depth = 0; // the block that lacks its brace is closed before this
      }
    } else if (last != ',') {
      ends.add(next);
      last = ' ';
    }
  }

  /** The word that the lexer finds at a place; empty where there is none. */
  private String wordAt(int from) {
    Matcher word = WORD.matcher(text).region(from, text.length());
    return word.lookingAt() ? word.group() : "";
  }

  private int endOfLine(int from) {
    int at = from;
    while (at < text.length() && text.charAt(at) != '\n' && text.charAt(at) != '\r') {
      at++;
    }
    return at;
  }

  /** The last place of a text in quotes, by the rule of the lexer: one that is not closed ends before what cannot be in it. */
  private int endOfQuote(int open) {
    for (int at = open + 1; at < text.length(); at++) {
      switch (text.charAt(at)) {
        case '"' -> {
          return at;
        }
        case '\n', '\r' -> {
          return at - 1;
        }
        case '\\' -> {
          if (at + 1 == text.length() || "\\\"nt".indexOf(text.charAt(at + 1)) < 0) {
            return at - 1;
          }
          at++;
        }
        default -> {}
      }
    }
    return text.length() - 1;
  }
}
