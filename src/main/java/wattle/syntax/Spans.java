package wattle.syntax;

import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import wattle.finding.Source;
import wattle.finding.Span;

/** Turns positions of the lexer, which count code points, into spans, which count UTF-16 units: the one place. */
final class Spans {
  private final Source source;
  private final int[] unitOfCodePoint;

  Spans(Source source) {
    this.source = source;
    this.unitOfCodePoint = unitOfCodePoint(source.text());
  }

  Source source() {
    return source;
  }

  Span of(Token token) {
    if (token.getType() == Token.EOF) {
      int end = source.text().length();
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
    return unitOfCodePoint == null ? codePoints : unitOfCodePoint[Math.min(codePoints, unitOfCodePoint.length - 1)];
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
