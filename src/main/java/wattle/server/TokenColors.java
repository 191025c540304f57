package wattle.server;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensLegend;
import wattle.syntax.Lexeme;
import wattle.syntax.LexemeReader;

/** Every token with its class, names by the kind of thing that they name, in the relative form of the protocol. */
final class TokenColors {
  private static final List<String> TYPES = List.of(
      "keyword", "number", "type", "string", "comment", "operator", "function", "class", "interface", "namespace",
      "property", "variable", "event", "struct", "parameter");

  private static final List<String> MODIFIERS = List.of("declaration", "defaultLibrary");

  private TokenColors() {}

  static SemanticTokensLegend legend() {
    return new SemanticTokensLegend(TYPES, MODIFIERS);
  }

  static SemanticTokens of(Question question) {
    Map<Integer, Occurrence> names = new HashMap<>();
    for (Occurrence name : question.analysis().derived().names()) {
      if (name.span().source() == question.source()) {
        // The name of a part may be several words, each a token of its own.
        for (int at = name.span().start(); at < name.span().end(); at++) {
          names.putIfAbsent(at, name);
        }
      }
    }
    List<Integer> data = new ArrayList<>();
    Position before = new Position(0, 0);
    List<Lexeme> lexemes = LexemeReader.read(question.source()).value();
    for (int i = 0; i < lexemes.size(); i++) {
      Lexeme lexeme = lexemes.get(i);
      Occurrence name = names.get(lexeme.span().start());
      String color = isUnit(lexemes, i) ? type(Lexeme.Kind.UNIT) : type(lexeme.kind());
      int type = TYPES.indexOf(name == null ? color : type(name.thing().kind()));
      if (type < 0) {
        continue;
      }
      Position at = question.lines().position(lexeme.span().start());
      boolean sameLine = at.getLine() == before.getLine();
      data.add(at.getLine() - before.getLine());
      data.add(sameLine ? at.getCharacter() - before.getCharacter() : at.getCharacter());
      data.add(lexeme.span().end() - lexeme.span().start());
      data.add(type);
      data.add(name == null ? 0 : (name.declares() ? 1 : 0) | (name.thing().isOfThePlan() ? 0 : 2));
      before = at;
    }
    return new SemanticTokens(data);
  }

  /** Feet, and the inches behind them, are words of the grammar, since the latter are a word of their own elsewhere. */
  private static boolean isUnit(List<Lexeme> lexemes, int at) {
    String text = lexemes.get(at).text();
    boolean figure = at > 0 && lexemes.get(at - 1).kind() == Lexeme.Kind.NUMBER;
    return figure && (text.equals("ft") || text.equals("in") && at > 1 && lexemes.get(at - 2).text().equals("ft"));
  }

  /** Empty for what has no color: line ends, and words whose meaning is their place. */
  private static String type(Lexeme.Kind kind) {
    return switch (kind) {
      case KEYWORD -> "keyword";
      case NUMBER -> "number";
      case UNIT -> "type";
      case TEXT -> "string";
      case COMMENT -> "comment";
      case SIGN -> "operator";
      case NAME -> "parameter";
      case LINE_END -> "";
    };
  }

  private static String type(Named.Kind kind) {
    return switch (kind) {
      case BRANCH -> "function";
      case PANEL -> "class";
      case SERVICE -> "interface";
      case DWELLING, ROOM, PACK -> "namespace";
      case DEVICE -> "property";
      case RACEWAY, CONSTANT, LIMIT -> "variable";
      case PATTERN -> "class";
      case PLACEMENT -> "namespace";
      case PARAMETER -> "parameter";
      case TRIAL, RULE -> "event";
      case PART, CABLE, TABLE -> "struct";
    };
  }
}
