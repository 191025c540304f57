package wattle.syntax;

import wattle.finding.Span;

/**
 * One token as a formatter or a highlighter sees it: what was typed and what it is part of.
 *
 * @param construct the innermost construct of the notation that it belongs to
 * @param startsStatement whether a statement, or a part that stands in a row of its like, begins with it
 */
public record Lexeme(Kind kind, Construct construct, boolean startsStatement, String text, Span span) {
  /** What sort of token it is. */
  public enum Kind {
    KEYWORD, NAME, NUMBER, UNIT, TEXT, SIGN, LINE_END, COMMENT
  }

  /** What a token is part of, as far as its place on the line depends on it. */
  public enum Construct {
    /** The figures of a slot: {@code 2+4}. */
    SLOT_SPAN,
    /** A figure with its unit. */
    AMOUNT,
    /** Arithmetic. */
    EXPRESSION,
    /** A word of a slot line that says how its breaker works. */
    TRAIT,
    /** The name of what a slot feeds. */
    TARGET,
    /** A quoted text of a slot line. */
    LABEL,
    /** A name with dots. */
    PATH,
    /** Dashes before the length of a run. */
    RUN_OPENS,
    /** Dashes after it. */
    RUN_CLOSES,
    /** A cell of a table's row. */
    CELL,
    /** The sizes of a cable: {@code 2-2-4}, {@code 14/2}. */
    CABLE_SIZE,
    /** A pair of voltages, a unit made of two, a fraction: no space around its slash. */
    PAIR,
    /** What is listed in parentheses behind a name, and the names that head it. */
    HEADING,
    /** The name of a device before its colon. */
    DEVICE_NAME,
    /** Anything else. */
    OTHER
  }
}
