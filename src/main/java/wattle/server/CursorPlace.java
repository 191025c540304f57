package wattle.server;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.syntax.Lexeme;
import wattle.syntax.Lexeme.Kind;
import wattle.syntax.LexemeReader;

/**
 * Where in a text something is being typed, told from the tokens before it alone, since a statement that is being typed
 * has no tree yet.
 *
 * @param heads first words of the blocks that are open, the innermost last, each with its own name: {@code panel P}
 * @param before tokens of the statement so far, without the word that is being typed
 * @param start where that word starts; the cursor itself where none has been begun
 */
record CursorPlace(List<List<Lexeme>> heads, List<Lexeme> before, int start, int cursor) {
  static CursorPlace at(Question question, int cursor) {
    Deque<List<Lexeme>> open = new ArrayDeque<>();
    List<Lexeme> statement = new ArrayList<>();
    int start = cursor;
    for (Lexeme lexeme : LexemeReader.read(question.source()).value()) {
      if (lexeme.span().start() >= cursor) {
        break;
      }
      if (lexeme.span().end() >= cursor && isWord(lexeme)) {
        start = lexeme.span().start();
        break;
      }
      take(lexeme, open, statement);
    }
    return new CursorPlace(List.copyOf(new ArrayList<>(open)), List.copyOf(statement), start, cursor);
  }

  private static void take(Lexeme lexeme, Deque<List<Lexeme>> open, List<Lexeme> statement) {
    if (lexeme.text().equals("{")) {
      open.addLast(List.copyOf(statement));
      statement.clear();
    } else if (lexeme.text().equals("}")) {
      open.pollLast();
      statement.clear();
    } else if (lexeme.kind() == Kind.LINE_END) {
      // A run may go on in the next line, and so may a list.
      boolean goesOn = !statement.isEmpty() && List.of("--", ",").contains(statement.get(statement.size() - 1).text());
      if (!goesOn) {
        statement.clear();
      }
    } else if (lexeme.kind() != Kind.COMMENT) {
      statement.add(lexeme);
    }
  }

  private static boolean isWord(Lexeme lexeme) {
    return lexeme.kind() == Kind.NAME || lexeme.kind() == Kind.KEYWORD || lexeme.kind() == Kind.UNIT;
  }

  /** The word that opened the innermost block, such as {@code panel}; empty outside of all. */
  String block() {
    return heads.isEmpty() || heads.get(heads.size() - 1).isEmpty() ? "" : heads.get(heads.size() - 1).get(0).text();
  }

  /** The name after the word that opened the outermost block. */
  String blockName() {
    return heads.isEmpty() || heads.get(0).size() < 2 ? "" : heads.get(0).get(1).text();
  }

  /** Names between the parentheses of the pattern that is open; none elsewhere. */
  List<String> parameters() {
    return heads.isEmpty() || heads.get(0).isEmpty() || !heads.get(0).get(0).text().equals("pattern")
        ? List.of()
        : heads.get(0).stream().skip(2).filter(CursorPlace::isWord).map(Lexeme::text).toList();
  }

  /** First word of the statement; empty at its start. */
  String first() {
    return before.isEmpty() ? "" : before.get(0).text();
  }

  /** Second token of the statement. */
  String second() {
    return before.size() < 2 ? "" : before.get(1).text();
  }

  /** The token just before; empty at the start of a statement. */
  String last() {
    return lastLexeme().map(Lexeme::text).orElse("");
  }

  Optional<Lexeme> lastLexeme() {
    return before.isEmpty() ? Optional.empty() : Optional.of(before.get(before.size() - 1));
  }

  boolean isAtStart() {
    return before.isEmpty();
  }

  /** Whether a number stands just before, so that a unit may follow. */
  boolean isAfterNumber() {
    return lastLexeme().filter(l -> l.kind() == Kind.NUMBER).isPresent();
  }

  /** The words of a path before the dot just typed; empty elsewhere. */
  List<String> pathBefore() {
    List<String> words = new ArrayList<>();
    int at = before.size() - 1;
    while (at > 0 && before.get(at).text().equals(".")) {
      words.add(0, before.get(at - 1).text());
      at -= 2;
    }
    return words;
  }

  /** The last of some words in the statement, which may hold several on one line; empty where there is none. */
  String lastOf(Set<String> words) {
    for (int at = before.size() - 1; at >= 0; at--) {
      if (words.contains(before.get(at).text())) {
        return before.get(at).text();
      }
    }
    return "";
  }

  /** How often a sign stands in the statement. */
  long count(String sign) {
    return before.stream().filter(l -> l.text().equals(sign)).count();
  }
}
