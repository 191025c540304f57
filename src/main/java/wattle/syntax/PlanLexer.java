package wattle.syntax;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.CharStream;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.CommonToken;
import org.antlr.v4.runtime.CommonTokenFactory;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.TokenFactory;
import org.antlr.v4.runtime.TokenSource;
import org.antlr.v4.runtime.misc.Pair;
import wattle.syntax.grammar.WattleLexer;

/**
 * The tokens of a text, as the token rules of the grammar say: of all rules that fit, the one that takes most, and of those the first.
 *
 * <p>Written out, since the lexer that ANTLR makes of the same rules finds its way through a table that it builds anew in each process, and
 * steps through objects where a character would do. A test holds both against each other.
 */
final class PlanLexer implements TokenSource {
  private final String text;
  private final CharStream stream;
  private final Pair<TokenSource, CharStream> source;
  private TokenFactory<?> factory = CommonTokenFactory.DEFAULT;
  /** Where the next token begins, in UTF-16 units. */
  private int at;
  /** The same in code points, which is how ANTLR counts. */
  private int codePoint;
  private int line = 1;
  private int column;

  /** @param name of the text, for messages */
  PlanLexer(String text, String name) {
    this.text = text;
    this.stream = CharStreams.fromString(text, name);
    this.source = new Pair<>(this, stream);
  }

  /** All tokens of a text but its end, in order; comments are on a channel of their own. */
  static List<Token> all(String text, String name) {
    PlanLexer lexer = new PlanLexer(text, name);
    List<Token> tokens = new ArrayList<>(text.length() / 4 + 8);
    for (Token token = lexer.nextToken(); token.getType() != Token.EOF; token = lexer.nextToken()) {
      tokens.add(token);
    }
    return tokens;
  }

  @Override
  public Token nextToken() {
    while (at < text.length() && isSpace(text.charAt(at))) {
      pass(at + 1);
    }
    if (at == text.length()) {
      return new CommonToken(source, Token.EOF, Token.DEFAULT_CHANNEL, codePoint, codePoint - 1);
    }
    return token(text.charAt(at));
  }

  private Token token(char first) {
    if (first >= '0' && first <= '9') {
      return number();
    }
    if (isLetterAt(at)) {
      return word();
    }
    return switch (first) {
      case '"' -> string();
      case '\n' -> made(WattleLexer.NL, at + 1);
      case '\r' -> made(WattleLexer.NL, at + (is(at + 1, '\n') ? 2 : 1));
      case '/' -> is(at + 1, '/') ? comment() : sign();
      default -> sign();
    };
  }

  /** A unit that begins with no letter, a sign, or what means nothing. */
  private Token sign() {
    int unit = Literals.unitAt(text, at);
    if (unit > 0) {
      return made(WattleLexer.UNIT, at + unit);
    }
    int two = is(at + 1, text.charAt(at)) ? Literals.typeOf(text, at, at + 2) : 0;
    if (two > 0) {
      return made(two, at + 2);
    }
    int one = Literals.typeOf(text, at, at + 1);
    return one > 0 ? made(one, at + 1) : made(WattleLexer.STRAY, at + Character.charCount(text.codePointAt(at)));
  }

  private Token number() {
    int end = digits(at);
    if (is(end, 'a') || is(end, 'b')) {
      return made(WattleLexer.HALF_SLOT, end + 1);
    }
    int fraction = is(end, '.') ? digits(end + 1) : 0;
    return made(WattleLexer.NUMBER, fraction > end + 1 ? fraction : end);
  }

  private Token word() {
    int end = wordEnd(at);
    int holed = holedEnd(end);
    if (holed > end) {
      return made(WattleLexer.HOLED, holed);
    }
    int unit = Literals.unitAt(text, at);
    if (at + unit > end) {
      return made(WattleLexer.UNIT, at + unit); // its square or cube is no letter
    }
    int known = Literals.typeOf(text, at, end);
    return made(known > 0 ? known : at + unit == end ? WattleLexer.UNIT : WattleLexer.WORD, end);
  }

  /** Where a word ends that begins with a letter at a place. */
  private int wordEnd(int start) {
    int end = lettersAndDigits(start);
    while (is(end, '-')) {
      int more = lettersAndDigits(end + 1);
      if (more == end + 1) {
        break;
      }
      end = more;
    }
    return end;
  }

  /** Where a name with holes ends whose first word ends at a place; that place where no hole follows. */
  private int holedEnd(int word) {
    int end = holeEnd(is(word, '-') ? word + 1 : word);
    if (end < 0) {
      return word;
    }
    while (true) {
      int from = is(end, '-') ? end + 1 : end;
      int hole = holeEnd(from);
      int more = hole > 0 ? hole : lettersAndDigits(from);
      if (more == from) {
        return end;
      }
      end = more;
    }
  }

  /** Where a hole ends that begins at a place; less than nought where none does. */
  private int holeEnd(int start) {
    if (!is(start, '{') || !isLetterAt(start + 1)) {
      return -1;
    }
    int end = wordEnd(start + 1);
    return is(end, '}') ? end + 1 : -1;
  }

  private Token string() {
    int end = at + 1;
    while (end < text.length()) {
      char next = text.charAt(end);
      if (next == '"') {
        return made(WattleLexer.STRING, end + 1);
      }
      if (next == '\r' || next == '\n') {
        break;
      }
      if (next == '\\') {
        if (end + 1 == text.length() || "\"\\nt".indexOf(text.charAt(end + 1)) < 0) {
          break;
        }
        end++;
      }
      end++;
    }
    return made(WattleLexer.OPEN_STRING, end);
  }

  private Token comment() {
    int end = at + 2;
    while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
      end++;
    }
    return made(WattleLexer.COMMENT, Token.HIDDEN_CHANNEL, end);
  }

  private int digits(int start) {
    int end = start;
    while (end < text.length() && isDigit(text.charAt(end))) {
      end++;
    }
    return end;
  }

  private int lettersAndDigits(int start) {
    int end = start;
    while (end < text.length()) {
      char next = text.charAt(end);
      if (isLetter(next) || isDigit(next)) {
        end++;
      } else if (next > 0x7f && isLetterAt(end)) {
        end += Character.charCount(text.codePointAt(end));
      } else {
        break;
      }
    }
    return end;
  }

  private static boolean isDigit(char sign) {
    return sign >= '0' && sign <= '9';
  }

  private static boolean isLetter(char sign) {
    return sign >= 'a' && sign <= 'z' || sign >= 'A' && sign <= 'Z' || sign == '_';
  }

  private boolean isLetterAt(int place) {
    if (place >= text.length()) {
      return false;
    }
    char first = text.charAt(place);
    return first > 0x7f ? Character.isLetter(text.codePointAt(place)) : isLetter(first);
  }

  private static boolean isSpace(char sign) {
    return sign == ' ' || sign == '\t' || sign == '\u00A0' || sign == '\uFEFF';
  }

  private boolean is(int place, char sign) {
    return place < text.length() && text.charAt(place) == sign;
  }

  private Token made(int type, int end) {
    return made(type, Token.DEFAULT_CHANNEL, end);
  }

  private Token made(int type, int channel, int end) {
    CommonToken token = new CommonToken(source, type, channel, codePoint, 0);
    pass(end);
    token.setStopIndex(codePoint - 1);
    return token;
  }

  /** Goes on to a place. */
  private void pass(int end) {
    while (at < end) {
      char passed = text.charAt(at++);
      boolean second = Character.isLowSurrogate(passed) && at > 1 && Character.isHighSurrogate(text.charAt(at - 2));
      codePoint += second ? 0 : 1;
      column += second ? 0 : 1;
      if (passed == '\n') {
        line++;
        column = 0;
      }
    }
  }

  @Override
  public int getLine() {
    return line;
  }

  @Override
  public int getCharPositionInLine() {
    return column;
  }

  @Override
  public CharStream getInputStream() {
    return stream;
  }

  @Override
  public String getSourceName() {
    return stream.getSourceName();
  }

  @Override
  public void setTokenFactory(TokenFactory<?> other) {
    factory = other;
  }

  @Override
  public TokenFactory<?> getTokenFactory() {
    return factory;
  }
}
