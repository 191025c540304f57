package wattle.syntax;

import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import wattle.finding.Source;
import wattle.finding.Span;

/**
 * Turns positions of the lexer, which count code points from the start of what it reads, into spans, which count UTF-16
 * units from the start of the source: the one place.
 */
final class Spans {
  private final Source source;
  private final int start;
  private final int end;
  private final int[] unitOfCodePoint;

  Spans(Source source) {
    this(source.span(0, source.text().length()), source.text());
  }

  /** @param text of the excerpt, which is all that the lexer reads */
  Spans(Span excerpt, String text) {
    this.source = excerpt.source();
    this.start = excerpt.start();
    this.end = excerpt.end();
    this.unitOfCodePoint = unitOfCodePoint(text);
  }

  /** The whole text that its spans are of. */
  String text() {
    return source.text();
  }

  Span of(Token token) {
    if (token.getType() == Token.EOF) {
      return new Span(source, end, end);
    }
    return source.span(units(token.getStartIndex()), units(token.getStopIndex() + 1));
  }

  Span of(Token first, Token last) {
    if (last == null || last.getStopIndex() < first.getStartIndex()) {
      int at = units(first.getStartIndex());
      return source.span(at, at);
    }
    return source.span(units(first.getStartIndex()), units(last.getStopIndex() + 1));
  }

  Span of(ParserRuleContext context) {
    return of(context.getStart(), context.getStop());
  }

  private int units(int codePoints) {
    return start + (unitOfCodePoint == null ? codePoints : unitOfCodePoint[Math.min(codePoints, unitOfCodePoint.length - 1)]);
  }

  /** Null for a text without surrogates, where both counts agree. */
  private static int[] unitOfCodePoint(String text) {
    int count = text.codePointCount(0, text.length());
    if (count == text.length()) {
      return null;
    }
    int[] units = new int[count + 1];
    for (int i = 0, unit = 0; i < count; i++) {
      units[i] = unit;
      unit += Character.charCount(text.codePointAt(unit));
    }
    units[count] = text.length();
    return units;
  }
}
