package wattle.syntax;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.antlr.v4.runtime.CommonToken;
import org.antlr.v4.runtime.Token;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Span;
import wattle.syntax.grammar.WattleLexer;

/**
 * Puts the tokens of a file in order before the parser sees them: closes texts and blocks that were left open, drops
 * what means nothing, and says so. A block left open is told by a statement that begins at the edge of the page with a
 * word that only opens statements of their own.
 */
final class TokenRepair {
  /** Deepest nesting of braces and parentheses; no house needs a tenth of it. */
  static final int DEEPEST = 64;

  /** Most signs of arithmetic in one line. */
  static final int MOST_SIGNS = 500;

  /** Words of statements that are nothing without a block. */
  private static final Set<String> WITH_BLOCK = Set.of("dwelling", "service", "panel", "branch", "room", "trial", "pattern", "override");

  private static final Set<String> OPENERS = Set.of(
      "plan", "use", "let", "dwelling", "service", "panel", "branch", "room", "trial", "expect", "silence",
      "pack", "part", "table", "limit", "raceway", "pattern", "place", "override");

  private final Spans spans;
  private final Mistakes mistakes = new Mistakes();
  private final Set<String> damagedWords = new HashSet<>();
  private final List<Token> repaired = new ArrayList<>();
  private final Deque<Token> open = new ArrayDeque<>();

  /** The brace that stands in for the one that a heading lacks, while its block is open; what closes it needs no telling. */
  private Token supplied;

  private boolean tooDeep;

  TokenRepair(Spans spans) {
    this.spans = spans;
  }

  /** Whether a word at the edge of the page begins a statement of its own, which no block holds. */
  static boolean opensStatement(String word) {
    return OPENERS.contains(word);
  }

  /** Whether a word at the edge of the page begins a statement that goes on in a block. */
  static boolean opensBlock(String word) {
    return WITH_BLOCK.contains(word);
  }

  Mistakes mistakes() {
    return mistakes;
  }

  Set<String> damagedWords() {
    return damagedWords;
  }

  /** True where nesting or arithmetic goes beyond the bound, and nothing more was read. */
  boolean tooDeep() {
    return tooDeep;
  }

  List<Token> repair(List<Token> tokens) {
    int parentheses = 0;
    int signs = 0;
    Token strayFrom = null;
    Token strayTo = null;
    Token before = null;
    Token heading = null; // of a block whose brace has not been seen yet
    for (int i = 0; i < tokens.size(); i++) {
      Token token = tokens.get(i);
      int type = token.getType();
      if (strayFrom != null && type != WattleLexer.STRAY) {
        stray(strayFrom, strayTo);
        strayFrom = null;
      }
      if (type == WattleLexer.STRAY) {
        strayFrom = strayFrom == null ? token : strayFrom;
        strayTo = token;
        heading = null; // what is amiss there has been told
        continue;
      }
      if (type == WattleLexer.COMMENT) {
        repaired.add(token);
        continue;
      }
      if (isMarkOfWye(tokens, i)) {
        markOfWye(tokens, i);
        continue;
      }
      if (type == WattleLexer.OPEN_STRING) {
        repaired.add(closed(token));
        before = token;
        heading = null; // the quote may have taken the brace with it
        continue;
      }
      boolean startsLine = before == null || before.getType() == WattleLexer.NL;
      if (type == WattleLexer.NL) {
        signs = 0;
        parentheses = 0;
        if (heading != null && !before.getText().equals(",")) {
          i = openBlock(heading, before, tokens, i);
          heading = null;
          token = tokens.get(i);
          type = token.getType();
        }
      } else if (startsLine && token.getCharPositionInLine() == 0 && opensStatement(token.getText())) {
        if (!open.isEmpty()) {
          closeAllBefore(token);
        }
        heading = opensBlock(token.getText()) ? token : null;
      }
      String literal = Literals.of(type);
      char sign = literal.length() == 1 ? literal.charAt(0) : ' ';
      switch (sign) {
        case '{' -> {
          open.push(token);
          heading = null;
        }
        case '(' -> parentheses++;
        case ')' -> parentheses--;
        case '+', '-', '*', '/', '×', '÷' -> signs++;
        default -> {
        }
      }
      if (open.size() + parentheses > DEEPEST || signs > MOST_SIGNS) {
        refuse(token, signs > MOST_SIGNS);
        return repaired;
      }
      if (sign == '}') {
        heading = null;
        if (open.isEmpty()) {
          unopened(token);
          continue;
        }
        open.pop();
      }
      repaired.add(token);
      before = token;
    }
    if (strayFrom != null) {
      stray(strayFrom, strayTo);
    }
    if (heading != null) {
      openBlock(heading, before, tokens, tokens.size());
    }
    if (!open.isEmpty() && before != null) {
      Token end = new CommonToken(before);
      closeAll(end, spans.of(before).after(), "");
    }
    return repaired;
  }

  /** The Y of {@code 208Y/120}, as a wye is written on nameplates. */
  private static boolean isMarkOfWye(List<Token> tokens, int at) {
    return at > 0 && at + 2 < tokens.size() && tokens.get(at).getText().equalsIgnoreCase("Y")
        && tokens.get(at - 1).getType() == WattleLexer.NUMBER && tokens.get(at - 1).getStopIndex() + 1 == tokens.get(at).getStartIndex()
        && tokens.get(at + 1).getText().equals("/") && tokens.get(at + 2).getType() == WattleLexer.NUMBER;
  }

  /** Two voltages are written in one way alone, which says how many legs come in; the mark does not. */
  private void markOfWye(List<Token> tokens, int at) {
    Token higher = tokens.get(at - 1);
    Token lower = tokens.get(at + 2);
    Span span = spans.of(higher, lower);
    String written = lower.getText() + "/" + higher.getText();
    Finding.Builder finding = Finding.error("voltages-reversed", "'" + span.text() + "' is written " + written + " here")
        .at(span, "the voltage from a leg to the neutral comes first");
    boolean threePhase = false;
    int next = at + 3;
    for (; next < tokens.size() && tokens.get(next).getType() != WattleLexer.NL; next++) {
      threePhase |= tokens.get(next).getText().equals("three-phase");
    }
    Token unit = at + 3 < tokens.size() && tokens.get(at + 3).getText().equals("V") ? tokens.get(at + 3) : lower;
    Span whole = spans.of(higher, unit);
    if (!threePhase) {
      finding.fix(Fix.offered("write " + written + " V three-phase where all three legs come in", whole, written + " V three-phase"));
    }
    String two = threePhase ? "" : " where two of its legs come in";
    mistakes.add(finding.fix(Fix.offered("write " + written + " V" + two, whole, written + " V")).build());
  }

  private void stray(Token from, Token to) {
    Span span = spans.of(from, to);
    String shown = span.text().codePoints().limit(12).mapToObj(TokenRepair::visible).reduce("", String::concat);
    Finding.Builder finding = Finding.error("character-stray", "'" + shown + "' is not part of the notation").at(span,
        "left out while reading");
    mistakes.add(finding.fix(Fix.safe("remove it", span, "")).build());
  }

  private static String visible(int codePoint) {
    return Character.isISOControl(codePoint) || !Character.isDefined(codePoint)
        ? String.format(Locale.ROOT, "U+%04X", codePoint)
        : Character.toString(codePoint);
  }

  private Token closed(Token token) {
    Span span = spans.of(token);
    String text = span.text().stripTrailing();
    Span end = span.source().span(span.start() + text.length(), span.start() + text.length());
    mistakes.add(
        Finding.error("text-unclosed", "a text in quotes has no closing quote")
            .at(span, "opens here and runs to the end of the line")
            .fix(Fix.safe("put a \" after it", end, "\""))
            .build());
    CommonToken closed = new CommonToken(token);
    closed.setType(WattleLexer.STRING);
    closed.setText((text.endsWith("\\") ? text.substring(0, text.length() - 1) : text) + "\"");
    return closed;
  }

  /**
   * Opens the block of a heading whose line ends without a brace, be it that the brace stands below, or nowhere.
   *
   * @param last token of the heading
   * @param at where the heading's line ends
   * @return the place of the token to go on with
   */
  private int openBlock(Token heading, Token last, List<Token> tokens, int at) {
    BlockOpening opening = new BlockOpening(spans, heading, last, tokens, at);
    mistakes.add(opening.finding());
    if (opening.isBelow()) {
      tokens.subList(at, opening.next()).stream().filter(t -> t.getType() == WattleLexer.COMMENT).forEach(repaired::add);
      return opening.next();
    }
    CommonToken brace = new CommonToken(last);
    brace.setType(typeOf("{"));
    brace.setText("{");
    supplied = brace;
    repaired.add(brace);
    open.push(brace);
    return at;
  }

  private void closeAllBefore(Token next) {
    Token last = repaired.isEmpty() ? next : repaired.get(repaired.size() - 1);
    closeAll(last, spans.of(next),
        "A statement at the edge of the page closes every block before it; one within a block begins with a blank.");
  }

  /** Closes what is open: one finding for the outermost block, whose missing brace explains the rest. */
  private void closeAll(Token at, Span noticed, String why) {
    Token outermost = open.peekLast();
    if (outermost != supplied) {
      mistakes.add(
          Finding.error("block-unclosed", "a block has no closing }")
              .at(spans.of(outermost), "opens here")
              .with(noticed, "no } before this")
              .because(why)
              .fix(Fix.safe("put a } on a line of its own before this", noticed.source().span(noticed.start(), noticed.start()), "}\n"))
              .build());
    }
    while (!open.isEmpty()) {
      open.pop();
      CommonToken line = new CommonToken(at);
      line.setType(WattleLexer.NL);
      line.setText("\n");
      repaired.add(line);
      CommonToken closing = new CommonToken(at);
      closing.setType(typeOf("}"));
      closing.setText("}");
      repaired.add(closing);
    }
  }

  private static int typeOf(String brace) {
    return Literals.typeOf(brace, 0, brace.length());
  }

  private void unopened(Token token) {
    Span span = spans.of(token);
    mistakes.add(
        Finding.error("block-unopened", "a } closes nothing")
            .at(span, "no block is open here")
            .fix(Fix.safe("remove it", span, ""))
            .build());
  }

  private void refuse(Token token, boolean arithmetic) {
    tooDeep = true;
    damagedWords.add(token.getText());
    mistakes.add(
        Finding.error(
            Stop.NESTING_TOO_DEEP.rule(),
            arithmetic
                ? "more than " + MOST_SIGNS + " signs of arithmetic in one line"
                : "blocks and parentheses are nested more than " + DEEPEST + " deep")
            .at(spans.of(token), "reading stopped here")
            .because("The limit keeps a damaged file from using up the memory; no plan of a house comes near it.")
            .build());
  }
}
