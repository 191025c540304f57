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
 * line end; and how {@link TokenRepair} opens and closes what lacks a brace, since a block that lacks its last one is closed by
 * what follows it, and the two must be read together.
 */
final class TextParts {
  private static final Pattern WORD = Pattern.compile("[\\p{L}_][\\p{L}_0-9]*(-[\\p{L}_0-9]+)*");

  private final String text;
  private int depth;
  private char last = ' ';

  /** Where the statement starts that is being looked at outside of all blocks, and whether a brace has opened its block. */
  private int statement;
  private boolean opened;

  private TextParts(String text) {
    this.text = text;
  }

  /**
   * Where the part ends that starts at a place. What stands before that place does not matter, nor does what stands behind
   * the part, but for two: a part that reaches to the end of the text may go on if the text does, and a carriage return that
   * ends one is followed by no line feed.
   *
   * @param from 0, or the end of another part
   */
  static int end(String text, int from) {
    return new TextParts(text).endFrom(from);
  }

  /** The parts of such a stretch of a text as {@link #portions} gives, in order. */
  static List<Span> parts(Span stretch) {
    String text = stretch.text();
    List<Span> parts = new ArrayList<>();
    for (int start = 0; start < text.length();) {
      int end = end(text, start);
      parts.add(stretch.source().span(stretch.start() + start, stretch.start() + end));
      start = end;
    }
    return parts;
  }

  /** Neighboring parts together, as few as are at least so long, which together are the text; the last may be shorter. */
  static List<Span> portions(Source source, int length) {
    String text = source.text();
    List<Span> portions = new ArrayList<>();
    int start = 0;
    int end = 0;
    while (end < text.length()) {
      end = end(text, end);
      if (end - start >= length || end == text.length()) {
        portions.add(source.span(start, end));
        start = end;
      }
    }
    return portions;
  }

  private int endFrom(int from) {
    statement = from;
    for (int at = from; at < text.length(); at++) {
      char c = text.charAt(at);
      if (c == '<' && isLineStart(at) && ConflictMarks.begin(text, at)) {
        at = ConflictMarks.end(text, at) - 1; // what begins in one version may end in the other
        last = c;
      } else if (c == '"') {
        at = endOfQuote(at);
      } else if (c == '/' && at + 1 < text.length() && text.charAt(at + 1) == '/') {
        at = endOfLine(at) - 1;
        continue;
      } else if (c == '{') {
        depth++;
        opened |= at > 0 && text.charAt(at - 1) <= ' '; // within a name it is a hole
      } else if (c == '}') {
        depth = Math.max(0, depth - 1);
      } else if (c == '\n' || c == '\r' && (at + 1 == text.length() || text.charAt(at + 1) != '\n')) {
        if (endsAt(at + 1)) {
          return at + 1;
        }
        continue;
      }
      last = c <= ' ' || c == '\u00A0' || c == '\uFEFF' ? last : c;
    }
    return text.length();
  }

  /** Whether a part ends with the line before a place. */
  private boolean endsAt(int next) {
    if (depth == 0 && last != ',') {
      if (opened || !TokenRepair.opensBlock(wordAt(statement))) {
        return true;
      }
      depth = 1; // the block that lacks its first brace is opened here
      opened = true;
    }
    if (text.charAt(next - 1) == '\n' && TokenRepair.opensStatement(wordAt(next))) {
      depth = 0; // the block that lacks its last brace is closed before this
      statement = next;
      opened = false;
    }
    return false;
  }

  /** The word that the lexer finds at a place; empty where there is none. */
  private String wordAt(int from) {
    Matcher word = WORD.matcher(text).region(from, text.length());
    return word.lookingAt() ? word.group() : "";
  }

  private boolean isLineStart(int at) {
    return at == 0 || text.charAt(at - 1) == '\n' || text.charAt(at - 1) == '\r';
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
        default -> {
        }
      }
    }
    return text.length() - 1;
  }
}
