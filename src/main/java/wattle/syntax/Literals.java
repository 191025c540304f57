package wattle.syntax;

import wattle.syntax.grammar.WattleLexer;

/** Words and signs that the grammar writes out, by the type of their tokens: told without the lexer copying their text. */
final class Literals {
  private static final String[] LITERALS = literals();

  private Literals() {}

  /** Empty for a type whose tokens differ, such as names and figures. */
  static String of(int type) {
    return type > 0 ? LITERALS[type] : "";
  }

  private static String[] literals() {
    String[] literals = new String[WattleLexer.VOCABULARY.getMaxTokenType() + 1];
    for (int type = 0; type < literals.length; type++) {
      String quoted = WattleLexer.VOCABULARY.getLiteralName(type);
      literals[type] = quoted == null ? "" : quoted.substring(1, quoted.length() - 1);
    }
    return literals;
  }
}
