package wattle.edit;

import java.util.List;
import wattle.syntax.Lexeme;
import wattle.syntax.Lexeme.Construct;
import wattle.syntax.Lexeme.Kind;

/** One line of a plan: its tokens, its depth, the spaces between them, and where its columns begin. */
final class FormattedLine {
  /** Between statements that share a line. */
  private static final int GAP = 3;

  private final List<Lexeme> tokens;
  private final int[] spaces;
  private final boolean placed;
  private int indent;

  /**
   * @param tokens of this line, a comment last
   * @param depth how many blocks are open around it
   */
  FormattedLine(List<Lexeme> tokens, int depth) {
    this(tokens, Math.max(0, depth) * 2, usual(tokens), false);
  }

  private FormattedLine(List<Lexeme> tokens, int indent, int[] spaces, boolean placed) {
    this.tokens = List.copyOf(tokens);
    this.indent = indent;
    this.spaces = spaces;
    this.placed = placed;
  }

  private static int[] usual(List<Lexeme> tokens) {
    int[] spaces = new int[tokens.size()];
    for (int i = 1; i < spaces.length; i++) {
      spaces[i] = between(tokens.get(i - 1), tokens.get(i), i);
    }
    return spaces;
  }

  /** A line of a rule at its indent; no columns run through it. */
  static FormattedLine placed(List<Lexeme> tokens, int indent) {
    return new FormattedLine(tokens, indent, usual(tokens), true);
  }

  /** A line of a rule with the indent and the spaces that its writer gave it; tabs count as one. */
  static FormattedLine asWritten(List<Lexeme> tokens) {
    return asWritten(tokens, tokens.isEmpty() ? 0 : tokens.get(0).span().column() - 1);
  }

  /** The same at another indent. */
  static FormattedLine asWritten(List<Lexeme> tokens, int indent) {
    int[] spaces = new int[tokens.size()];
    for (int i = 1; i < spaces.length; i++) {
      spaces[i] = tokens.get(i).span().start() - tokens.get(i - 1).span().end();
    }
    return new FormattedLine(tokens, indent, spaces, true);
  }

  /** This line of a plan where the plan stands within a rule, so many columns further in. */
  FormattedLine within(int columns) {
    return new FormattedLine(tokens, tokens.isEmpty() ? 0 : indent + columns, spaces, true);
  }

  /** Whether it is a line of a rule, which has its place already. */
  boolean isPlaced() {
    return placed;
  }

  List<Lexeme> tokens() {
    return tokens;
  }

  boolean isEmpty() {
    return tokens.isEmpty();
  }

  boolean isCommentOnly() {
    return tokens.size() == 1 && tokens.get(0).kind() == Kind.COMMENT;
  }

  boolean opensBlock() {
    for (int i = tokens.size() - 1; i >= 0; i--) {
      if (tokens.get(i).kind() != Kind.COMMENT) {
        return tokens.get(i).text().equals("{");
      }
    }
    return false;
  }

  int indent() {
    return indent;
  }

  void setIndent(int columns) {
    indent = columns;
  }

  /** Puts so many spaces before a token. */
  void setSpaces(int token, int columns) {
    spaces[token] = columns;
  }

  /** The column at which a token begins. */
  int column(int token) {
    int column = indent;
    for (int i = 0; i < token; i++) {
      column += spaces[i] + width(tokens.get(i));
    }
    return column + spaces[token];
  }

  /** The column after a token. */
  int end(int token) {
    return column(token) + width(tokens.get(token));
  }

  private static int width(Lexeme token) {
    return token.text().codePointCount(0, token.text().length());
  }

  /** Index of the comment that ends this line, or -1. */
  int comment() {
    int last = tokens.size() - 1;
    return last > 0 && tokens.get(last).kind() == Kind.COMMENT ? last : -1;
  }

  private static int between(Lexeme left, Lexeme right, int at) {
    if (right.kind() == Kind.COMMENT) {
      return 2;
    }
    if (isTight(left, right)) {
      return 0;
    }
    boolean firstInBlock = left.text().equals("{");
    if (right.startsStatement() && !firstInBlock && at > 0) {
      return GAP;
    }
    return 1;
  }

  private static boolean isTight(Lexeme left, Lexeme right) {
    String l = left.text();
    String r = right.text();
    if (r.equals("(") && right.construct() == Construct.HEADING || r.equals(",") || r.equals(":") || r.equals(")") || l.equals("(")) {
      return true;
    }
    if (l.equals(".") || r.equals(".") || l.equals("..") || r.equals("..")) {
      return left.kind() != Kind.TEXT;
    }
    if (left.construct() == Construct.RUN_OPENS || right.construct() == Construct.RUN_CLOSES) {
      return true;
    }
    boolean leftSign = l.equals("/") || l.equals("+") || l.equals("-");
    boolean rightSign = r.equals("/") || r.equals("+") || r.equals("-");
    if (leftSign || rightSign) {
      Lexeme sign = rightSign ? right : left;
      boolean arithmetic = sign.construct() == Construct.EXPRESSION;
      boolean alone = sign.construct() == Construct.CELL && sign.text().equals("-");
      return !arithmetic && !alone;
    }
    return false;
  }

  /** The line as text, with nothing at its end. */
  String text() {
    StringBuilder text = new StringBuilder();
    write(text);
    return text.toString();
  }

  /** Adds the line to a text, with nothing at its end. */
  void write(StringBuilder text) {
    int start = text.length();
    blanks(text, tokens.isEmpty() ? 0 : indent);
    for (int i = 0; i < tokens.size(); i++) {
      blanks(text, spaces[i]);
      text.append(tokens.get(i).text());
    }
    int end = text.length();
    while (end > start && (text.charAt(end - 1) == ' ' || text.charAt(end - 1) == '\t')) {
      end--;
    }
    text.setLength(end);
  }

  private static void blanks(StringBuilder text, int count) {
    for (int i = 0; i < count; i++) {
      text.append(' ');
    }
  }

  /** Index of the first token with this construct, or -1. */
  int first(Construct construct) {
    for (int i = 0; i < tokens.size(); i++) {
      if (tokens.get(i).construct() == construct) {
        return i;
      }
    }
    return -1;
  }
}
