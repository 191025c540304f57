package wattle.server;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.syntax.Lexeme;
import wattle.syntax.Lexeme.Kind;
import wattle.syntax.LexemeReader;

/**
 * Where in a text something is being typed, told from the tokens before it alone, since a statement that is being typed
 * has no tree yet.
 *
 * @param heads first words of the blocks that are open, the innermost last, each with its own name: {@code panel P}
 * @param within tokens of the statements before this one in the innermost block
 * @param before tokens of the statement so far, without the word that is being typed
 * @param comment whether it is a comment that is being written
 * @param start where that word starts; the cursor itself where none has been begun
 */
record CursorPlace(List<List<Lexeme>> heads, List<Lexeme> within, List<Lexeme> before, int start, int cursor, boolean comment) {
  private static final Set<String> SAMPLES = Set.of("accept", "reject", "exception");

  static CursorPlace at(Question question, int cursor) {
    Deque<List<Lexeme>> open = new ArrayDeque<>();
    List<Lexeme> within = new ArrayList<>();
    List<Lexeme> statement = new ArrayList<>();
    int start = cursor;
    boolean comment = false;
    for (Lexeme lexeme : LexemeReader.read(question.source()).value()) {
      if (lexeme.span().start() >= cursor) {
        break;
      }
      if (lexeme.span().end() >= cursor && isWord(lexeme)) {
        start = lexeme.span().start();
        break;
      }
      comment = lexeme.kind() == Kind.COMMENT;
      take(lexeme, open, within, statement);
    }
    return new CursorPlace(List.copyOf(new ArrayList<>(open)), List.copyOf(within), List.copyOf(statement), start, cursor, comment);
  }

  private static void take(Lexeme lexeme, Deque<List<Lexeme>> open, List<Lexeme> within, List<Lexeme> statement) {
    if (lexeme.text().equals("{")) {
      open.addLast(List.copyOf(statement));
      within.clear();
      statement.clear();
    } else if (lexeme.text().equals("}")) {
      open.pollLast();
      statement.clear();
    } else if (lexeme.kind() == Kind.LINE_END) {
      // A run may go on in the next line, and so may a list.
      boolean goesOn = !statement.isEmpty() && List.of("--", ",").contains(statement.get(statement.size() - 1).text());
      if (!goesOn) {
        within.addAll(statement);
        statement.clear();
      }
    } else if (lexeme.kind() != Kind.COMMENT) {
      statement.add(lexeme);
    }
  }

  /** The text that a reader of the notation would have read of this statement and of the blocks around it. */
  String read() {
    int from = 0;
    for (int i = 0; i < heads.size(); i++) {
      boolean sample = !heads.get(i).isEmpty() && SAMPLES.contains(heads.get(i).get(0).text());
      from = sample ? i + 1 : from; // a plan within a rule is read as one
    }
    StringBuilder text = new StringBuilder();
    heads.subList(from, heads.size()).forEach(head -> text.append(text(head)).append(" {\n"));
    return text.append(text(before)).toString();
  }

  private static String text(List<Lexeme> lexemes) {
    return lexemes.stream().map(l -> l.span().text()).collect(Collectors.joining(" "));
  }

  /** What the rule that is open has given names to, by name. */
  Map<String, wattle.rules.Kind> things() {
    Map<String, wattle.rules.Kind> things = new LinkedHashMap<>();
    List<Lexeme> all = new ArrayList<>(within);
    all.addAll(before);
    for (int i = 2; i + 1 < all.size(); i++) {
      if (all.get(i - 1).text().equals("each") && all.get(i - 2).text().equals("for")) {
        String name = all.get(i + 1).text();
        String kind = all.get(i).text();
        Arrays.stream(wattle.rules.Kind.values()).filter(k -> k.word().equals(kind)).forEach(k -> things.put(name, k));
      }
    }
    return things;
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
