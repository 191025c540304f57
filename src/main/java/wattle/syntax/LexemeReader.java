package wattle.syntax;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.CommonTokenStream;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.ParseTree;
import org.antlr.v4.runtime.tree.TerminalNode;
import wattle.finding.Checked;
import wattle.finding.Source;
import wattle.syntax.Lexeme.Construct;
import wattle.syntax.Lexeme.Kind;
import wattle.syntax.grammar.WattleLexer;
import wattle.syntax.grammar.WattleParser;

/** The token view of a file, comments and line ends with it, by the same grammar that makes the tree. */
public final class LexemeReader {
  private static final Set<Integer> STATEMENTS =
      Set.of(
          WattleParser.RULE_item, WattleParser.RULE_thing, WattleParser.RULE_fact, WattleParser.RULE_serviceStatement,
          WattleParser.RULE_panelSetting, WattleParser.RULE_slot, WattleParser.RULE_main, WattleParser.RULE_chain,
          WattleParser.RULE_box, WattleParser.RULE_device, WattleParser.RULE_event, WattleParser.RULE_columns,
          WattleParser.RULE_cell, WattleParser.RULE_column, WattleParser.RULE_property, WattleParser.RULE_citation, WattleParser.RULE_ruleLine);

  private static final Map<Integer, Construct> CONSTRUCTS =
      Map.ofEntries(
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

  private final Spans spans;
  private final Map<Integer, Construct> constructOf = new HashMap<>();
  private final Set<Integer> starts = new HashSet<>();
  private final Set<Integer> names = new HashSet<>();

  private LexemeReader(Spans spans) {
    this.spans = spans;
  }

  /** All tokens in order; the findings are those of the parser, and where there are any the constructs are a guess. */
  public static Checked<List<Lexeme>> read(Source source) {
    WattleLexer lexer = new WattleLexer(CharStreams.fromString(source.text(), source.name()));
    lexer.removeErrorListeners();
    CommonTokenStream tokens = new CommonTokenStream(lexer);
    WattleParser parser = new WattleParser(tokens);
    parser.removeErrorListeners();
    Spans spans = new Spans(source);
    parser.setErrorHandler(new LineRecovery(spans));
    LexemeReader reader = new LexemeReader(spans);
    reader.mark(parser.plan());
    return new Checked<>(reader.lexemes(tokens), PlanParser.parse(source).findings());
  }

  /** Walks the contexts without recursion: an expression may be deep. */
  private void mark(ParserRuleContext root) {
    List<ParseTree> open = new ArrayList<>(List.of(root));
    while (!open.isEmpty()) {
      ParseTree at = open.remove(open.size() - 1);
      if (at instanceof TerminalNode leaf) {
        ParserRuleContext parent = (ParserRuleContext) leaf.getParent();
        constructOf.putIfAbsent(leaf.getSymbol().getTokenIndex(), construct(parent));
        continue;
      }
      ParserRuleContext context = (ParserRuleContext) at;
      if (context.getStart() != null && STATEMENTS.contains(context.getRuleIndex())) {
        starts.add(context.getStart().getTokenIndex());
      }
      if (context.getRuleIndex() == WattleParser.RULE_word || context.getRuleIndex() == WattleParser.RULE_mark) {
        names.add(context.getStart().getTokenIndex());
      }
      if (context.getRuleIndex() == WattleParser.RULE_run) {
        markDashes(context);
      }
      for (int i = 0; i < context.getChildCount(); i++) {
        open.add(context.getChild(i));
      }
    }
  }

  private void markDashes(ParserRuleContext run) {
    List<Integer> dashes = new ArrayList<>();
    for (ParseTree child : run.children) {
      if (child instanceof TerminalNode leaf && leaf.getText().equals("--")) {
        dashes.add(leaf.getSymbol().getTokenIndex());
      }
    }
    if (dashes.size() == 2) {
      constructOf.put(dashes.get(0), Construct.RUN_OPENS);
      constructOf.put(dashes.get(1), Construct.RUN_CLOSES);
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
    return CONSTRUCTS.getOrDefault(at.getRuleIndex(), Construct.OTHER);
  }

  private static boolean isInside(ParserRuleContext context, int rule, int other) {
    for (ParserRuleContext at = context; at != null; at = at.getParent()) {
      if (at.getRuleIndex() == rule || at.getRuleIndex() == other) {
        return true;
      }
    }
    return false;
  }

  private List<Lexeme> lexemes(CommonTokenStream tokens) {
    List<Lexeme> lexemes = new ArrayList<>();
    for (Token token : tokens.getTokens()) {
      if (token.getType() != Token.EOF) {
        int index = token.getTokenIndex();
        lexemes.add(
            new Lexeme(
                kind(token), constructOf.getOrDefault(index, Construct.OTHER), starts.contains(index), token.getText(),
                spans.of(token)));
      }
    }
    return lexemes;
  }

  private Kind kind(Token token) {
    switch (token.getType()) {
      case WattleLexer.COMMENT:
        return Kind.COMMENT;
      case WattleLexer.NL:
        return Kind.LINE_END;
      case WattleLexer.STRING:
      case WattleLexer.OPEN_STRING:
        return Kind.TEXT;
      case WattleLexer.NUMBER:
      case WattleLexer.HALF_SLOT:
        return Kind.NUMBER;
      case WattleLexer.UNIT:
        return names.contains(token.getTokenIndex()) ? Kind.NAME : Kind.UNIT;
      case WattleLexer.WORD, WattleLexer.HOLED:
        return Kind.NAME;
      default:
        break;
    }
    if (!Character.isLetter(token.getText().codePointAt(0))) {
      return Kind.SIGN;
    }
    return names.contains(token.getTokenIndex()) ? Kind.NAME : Kind.KEYWORD;
  }
}
