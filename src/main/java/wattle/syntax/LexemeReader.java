package wattle.syntax;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.antlr.v4.runtime.CommonTokenStream;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.ParseTree;
import org.antlr.v4.runtime.tree.TerminalNode;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.syntax.Lexeme.Construct;
import wattle.syntax.Lexeme.Kind;
import wattle.syntax.grammar.WattleLexer;
import wattle.syntax.grammar.WattleParser;

/** The token view of a file, comments and line ends with it, by the same grammar that makes the tree. */
public final class LexemeReader {
  private static final Set<Integer> STATEMENTS = Set.of(
      WattleParser.RULE_item, WattleParser.RULE_thing, WattleParser.RULE_fact, WattleParser.RULE_serviceStatement,
      WattleParser.RULE_panelSetting, WattleParser.RULE_slot, WattleParser.RULE_main, WattleParser.RULE_chain, WattleParser.RULE_leftOut,
      WattleParser.RULE_box, WattleParser.RULE_device, WattleParser.RULE_event, WattleParser.RULE_columns,
      WattleParser.RULE_cell, WattleParser.RULE_column, WattleParser.RULE_property, WattleParser.RULE_citation, WattleParser.RULE_ruleLine);

  private static final Map<Integer, Construct> CONSTRUCTS = Map.ofEntries(
      Map.entry(WattleParser.RULE_slotNumber, Construct.SLOT_SPAN),
      Map.entry(WattleParser.RULE_slotSpan, Construct.SLOT_SPAN),
      Map.entry(WattleParser.RULE_expression, Construct.EXPRESSION),
      Map.entry(WattleParser.RULE_claim, Construct.EXPRESSION),
      Map.entry(WattleParser.RULE_quantity, Construct.AMOUNT),
      Map.entry(WattleParser.RULE_amount, Construct.AMOUNT),
      Map.entry(WattleParser.RULE_unit, Construct.PAIR),
      Map.entry(WattleParser.RULE_unitName, Construct.AMOUNT),
      Map.entry(WattleParser.RULE_column, Construct.PAIR),
      Map.entry(WattleParser.RULE_voltages, Construct.PAIR),
      Map.entry(WattleParser.RULE_raceSize, Construct.PAIR),
      Map.entry(WattleParser.RULE_wireSize, Construct.PAIR),
      Map.entry(WattleParser.RULE_cell, Construct.CELL),
      Map.entry(WattleParser.RULE_useName, Construct.PAIR),
      Map.entry(WattleParser.RULE_subject, Construct.PAIR),
      Map.entry(WattleParser.RULE_breakerTrait, Construct.TRAIT),
      Map.entry(WattleParser.RULE_path, Construct.PATH),
      Map.entry(WattleParser.RULE_parameters, Construct.HEADING),
      Map.entry(WattleParser.RULE_arguments, Construct.HEADING),
      Map.entry(WattleParser.RULE_cableSize, Construct.CABLE_SIZE),
      Map.entry(WattleParser.RULE_cableSizes, Construct.CABLE_SIZE));

  private static final boolean[] STARTS = new boolean[WattleParser.ruleNames.length];
  private static final Construct[] CONSTRUCT_OF_RULE = new Construct[WattleParser.ruleNames.length];

  static {
    Arrays.fill(CONSTRUCT_OF_RULE, Construct.OTHER);
    CONSTRUCTS.forEach((rule, construct) -> CONSTRUCT_OF_RULE[rule] = construct);
    STATEMENTS.forEach(rule -> STARTS[rule] = true);
  }

  private final Spans spans;
  private final List<Token> tokens;
  // By the index of a token; null where no context holds it, such as that of a comment.
  private final Construct[] constructOf;
  private final boolean[] starts;
  private final boolean[] names;

  private LexemeReader(Spans spans, List<Token> tokens) {
    this.spans = spans;
    this.tokens = tokens;
    this.constructOf = new Construct[tokens.size() + 1]; // the end of the file may be a token too
    this.starts = new boolean[tokens.size() + 1];
    this.names = new boolean[tokens.size() + 1];
  }

  /**
   * All tokens in order; the findings are those of the parser, and where there are any the constructs are a guess.
   *
   * <p>A text without a mistake is read once. In any other the tokens are not those that the parser is given in the end, and
   * it is read once more as it stands.
   */
  public static Checked<List<Lexeme>> read(Source source) {
    return faultless(source.span(0, source.text().length()))
        .map(lexemes -> new Checked<>(lexemes, List.<Finding>of()))
        .orElseGet(() -> new Checked<>(asItStands(source), PlanParser.parse(source).findings()));
  }

  /** The tokens of a text, or of such a part of it as means the same wherever it stands; absent where anything is wrong in it. */
  public static Optional<List<Lexeme>> faultless(Span span) {
    PlanParser.Portion portion = PlanParser.read(span);
    if (portion.plan().isEmpty() || !portion.mistakes().first().isEmpty()) {
      return Optional.empty();
    }
    LexemeReader reader = new LexemeReader(portion.spans(), portion.tokens());
    reader.mark(portion.plan().get());
    return Optional.of(reader.lexemes());
  }

  /**
   * A text in stretches that mean the same wherever they stand, and each of which but the last ends with an empty line outside
   * of all blocks.
   *
   * @param length characters of the shortest but for the last
   */
  public static List<Span> stretches(Source source, int length) {
    List<Span> stretches = new ArrayList<>();
    int start = 0;
    for (Span part : TextParts.portions(source, 1)) {
      boolean cut = part.end() - start >= length && isBlank(part);
      if (cut || part.end() == source.text().length()) {
        stretches.add(source.span(start, part.end()));
        start = part.end();
      }
    }
    return stretches;
  }

  private static boolean isBlank(Span part) {
    for (int at = part.start(); at < part.end(); at++) {
      if (part.source().text().charAt(at) > ' ') {
        return false;
      }
    }
    return true;
  }

  private static List<Lexeme> asItStands(Source source) {
    CommonTokenStream tokens = new CommonTokenStream(new PlanLexer(source.text(), source.name()));
    WattleParser parser = new WattleParser(tokens);
    parser.removeErrorListeners();
    Spans spans = new Spans(source);
    parser.setErrorHandler(new LineRecovery(spans));
    ParserRuleContext plan = parser.plan();
    LexemeReader reader = new LexemeReader(spans, tokens.getTokens());
    reader.mark(plan);
    return reader.lexemes();
  }

  /** Walks the contexts without recursion: an expression may be deep. */
  private void mark(ParserRuleContext root) {
    List<ParserRuleContext> open = new ArrayList<>(List.of(root));
    while (!open.isEmpty()) {
      ParserRuleContext context = open.remove(open.size() - 1);
      int rule = context.getRuleIndex();
      if (STARTS[rule] && context.getStart() != null) {
        starts[context.getStart().getTokenIndex()] = true;
      }
      if (rule == WattleParser.RULE_word || rule == WattleParser.RULE_mark) {
        names[context.getStart().getTokenIndex()] = true;
      }
      if (rule == WattleParser.RULE_run) {
        markDashes(context);
      }
      for (int i = 0; i < context.getChildCount(); i++) {
        ParseTree child = context.getChild(i);
        if (child instanceof ParserRuleContext inner) {
          open.add(inner);
        } else {
          markLeaf(((TerminalNode) child).getSymbol().getTokenIndex(), context);
        }
      }
    }
  }

  /** A token that was made up in place of a missing one has no index. */
  private void markLeaf(int token, ParserRuleContext parent) {
    if (token >= 0 && constructOf[token] == null) {
      constructOf[token] = construct(parent);
    }
  }

  private void markDashes(ParserRuleContext run) {
    int opens = -1;
    int closes = -1;
    int dashes = 0;
    for (int i = 0; i < run.getChildCount(); i++) {
      if (run.getChild(i) instanceof TerminalNode leaf && leaf.getSymbol().getTokenIndex() >= 0
          && Literals.of(leaf.getSymbol().getType()).equals("--")) {
        dashes++;
        opens = dashes == 1 ? leaf.getSymbol().getTokenIndex() : opens;
        closes = leaf.getSymbol().getTokenIndex();
      }
    }
    if (dashes == 2) {
      constructOf[opens] = Construct.RUN_OPENS;
      constructOf[closes] = Construct.RUN_CLOSES;
    }
  }

  private static Construct construct(ParserRuleContext parent) {
    ParserRuleContext at = parent;
    while (at != null && (at.getRuleIndex() == WattleParser.RULE_word || at.getRuleIndex() == WattleParser.RULE_mark)) {
      at = at.getParent();
      if (at.getRuleIndex() == WattleParser.RULE_slotItem) {
        return at.getChildCount() == 1 ? Construct.TARGET : Construct.TRAIT;
      }
      if (at.getRuleIndex() == WattleParser.RULE_device) {
        return Construct.DEVICE_NAME;
      }
    }
    if (at == null) {
      return Construct.OTHER;
    }
    if (at.getRuleIndex() == WattleParser.RULE_path && at.getParent().getRuleIndex() == WattleParser.RULE_slotItem) {
      return Construct.TARGET;
    }
    if (at.getRuleIndex() == WattleParser.RULE_quantity && isInside(at, WattleParser.RULE_slotNumber, WattleParser.RULE_repetition)) {
      return Construct.EXPRESSION; // no rating, which has a column of its own
    }
    if (at.getRuleIndex() == WattleParser.RULE_slotItem) {
      return at.getStart().getType() == WattleLexer.STRING ? Construct.LABEL : Construct.TRAIT;
    }
    if (at.getRuleIndex() == WattleParser.RULE_status && at.getParent().getRuleIndex() == WattleParser.RULE_slotItem) {
      return Construct.TRAIT;
    }
    if (at.getRuleIndex() == WattleParser.RULE_panelItem || at.getRuleIndex() == WattleParser.RULE_event) {
      return Construct.PAIR;
    }
    return CONSTRUCT_OF_RULE[at.getRuleIndex()];
  }

  private static boolean isInside(ParserRuleContext context, int rule, int other) {
    for (ParserRuleContext at = context; at != null; at = at.getParent()) {
      if (at.getRuleIndex() == rule || at.getRuleIndex() == other) {
        return true;
      }
    }
    return false;
  }

  private List<Lexeme> lexemes() {
    List<Lexeme> lexemes = new ArrayList<>(tokens.size());
    for (int i = 0; i < tokens.size(); i++) {
      Token token = tokens.get(i);
      if (token.getType() != Token.EOF) {
        Span span = spans.of(token);
        String literal = Literals.of(token.getType());
        Construct construct = constructOf[i] == null ? Construct.OTHER : constructOf[i];
        lexemes.add(new Lexeme(kind(token, i), construct, starts[i], literal.isEmpty() ? span.text() : literal, span));
      }
    }
    return lexemes;
  }

  private Kind kind(Token token, int index) {
    switch (token.getType()) {
      case WattleLexer.COMMENT :
        return Kind.COMMENT;
      case WattleLexer.NL :
        return Kind.LINE_END;
      case WattleLexer.STRING :
      case WattleLexer.OPEN_STRING :
        return Kind.TEXT;
      case WattleLexer.NUMBER :
      case WattleLexer.HALF_SLOT :
        return Kind.NUMBER;
      case WattleLexer.UNIT :
        return names[index] ? Kind.NAME : Kind.UNIT;
      case WattleLexer.WORD, WattleLexer.HOLED :
        return Kind.NAME;
      default :
        break;
    }
    if (!Character
        .isLetter(token.getType() == WattleLexer.STRAY ? token.getText().codePointAt(0) : Literals.of(token.getType()).codePointAt(0))) {
      return Kind.SIGN;
    }
    return names[index] ? Kind.NAME : Kind.KEYWORD;
  }
}
