package wattle.server;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensLegend;
import wattle.finding.Span;
import wattle.model.Words;
import wattle.syntax.Lexeme;
import wattle.syntax.Lexeme.Construct;
import wattle.syntax.LexemeReader;

/** Every token with its class, names by the kind of thing that they name, in the relative form of the protocol. */
final class TokenColors {
  private static final List<String> TYPES = List.of(
      "keyword", "number", "type", "string", "comment", "operator", "function", "class", "interface", "namespace",
      "property", "variable", "event", "struct", "parameter", "enumMember");

  /** Words that are units where a figure is before them, and something else elsewhere. */
  private static final Set<String> UNITS_BESIDES = Set.of("ft", "in", "hp");
  private static final Set<String> STATUS = Set.of("existing", "new", "to-remove", "later", "spare");
  /** What a text shows in place of a hole, and what stands for a sign that cannot be written in it. */
  private static final Pattern IN_TEXT = Pattern.compile("(\\\\[\"\\\\nt])|\\{[\\p{L}_][\\p{L}_0-9]*(?:[.-][\\p{L}_0-9]+)*\\}");

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
    Row row = new Row(question);
    List<Lexeme> lexemes = LexemeReader.read(question.source()).value();
    for (int i = 0; i < lexemes.size(); i++) {
      Lexeme lexeme = lexemes.get(i);
      Occurrence name = names.get(lexeme.span().start());
      if (lexeme.kind() == Lexeme.Kind.TEXT) {
        text(lexeme, row);
      } else if (lexeme.kind() == Lexeme.Kind.NUMBER && name == null) {
        int last = lastOfSize(lexemes, i);
        row.add(lexeme.span().to(lexemes.get(last).span()), "number", 0);
        i = last;
      } else {
        row.add(lexeme.span(), name == null ? type(lexeme) : type(name.thing().kind()),
            name == null ? 0 : (name.declares() ? 1 : 0) | (name.thing().isOfThePlan() ? 0 : 2));
      }
    }
    return new SemanticTokens(row.data);
  }

  /** The tokens so far, each told from where the one before it stands. */
  private static final class Row {
    private final Question question;
    private final List<Integer> data = new ArrayList<>();
    private Position before = new Position(0, 0);

    Row(Question question) {
      this.question = question;
    }

    void add(Span span, String color, int modifiers) {
      int type = TYPES.indexOf(color);
      if (type < 0 || span.start() == span.end()) {
        return;
      }
      Position at = question.lines().position(span.start());
      boolean sameLine = at.getLine() == before.getLine();
      data.add(at.getLine() - before.getLine());
      data.add(sameLine ? at.getCharacter() - before.getCharacter() : at.getCharacter());
      data.add(span.end() - span.start());
      data.add(type);
      data.add(modifiers);
      before = at;
    }
  }

  /** A text in pieces: what it says, signs that are written in another way, and holes. */
  private static void text(Lexeme lexeme, Row row) {
    Span span = lexeme.span();
    Matcher special = IN_TEXT.matcher(span.text());
    int at = span.start();
    while (special.find()) {
      row.add(span.source().span(at, span.start() + special.start()), "string", 0);
      at = span.start() + special.end();
      row.add(span.source().span(span.start() + special.start(), at), special.group(1) != null ? "enumMember" : "parameter", 0);
    }
    row.add(span.source().span(at, span.end()), "string", 0);
  }

  /** Figures with slashes between them and no blank are one: the size of a cable, a pair of voltages, a fraction. */
  private static int lastOfSize(List<Lexeme> lexemes, int first) {
    int last = first;
    while (last + 2 < lexemes.size() && lexemes.get(last + 1).text().equals("/")
        && lexemes.get(last + 2).kind() == Lexeme.Kind.NUMBER
        && lexemes.get(last).span().end() == lexemes.get(last + 1).span().start()
        && lexemes.get(last + 1).span().end() == lexemes.get(last + 2).span().start()) {
      last += 2;
    }
    return last;
  }

  private static String type(Lexeme lexeme) {
    String text = lexeme.text();
    Construct construct = lexeme.construct();
    if (lexeme.kind() == Lexeme.Kind.KEYWORD && UNITS_BESIDES.contains(text)
        && (construct == Construct.AMOUNT || construct == Construct.PAIR)) {
      return "type";
    }
    if (lexeme.kind() == Lexeme.Kind.KEYWORD && construct == Construct.TRAIT && !STATUS.contains(text) && !text.equals("leg")) {
      return "enumMember";
    }
    if (lexeme.kind() == Lexeme.Kind.NAME && Words.RACEWAYS.meant(text).isPresent()) {
      return "struct";
    }
    boolean trait = Words.DEVICE_TRAITS.known().contains(text) || Words.BOX_TRAITS.known().contains(text);
    return lexeme.kind() == Lexeme.Kind.NAME && trait ? "enumMember" : type(lexeme.kind());
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
