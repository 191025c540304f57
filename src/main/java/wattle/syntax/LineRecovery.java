package wattle.syntax;

import java.util.HashSet;
import java.util.Set;
import org.antlr.v4.runtime.DefaultErrorStrategy;
import org.antlr.v4.runtime.InputMismatchException;
import org.antlr.v4.runtime.Parser;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.RecognitionException;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.TokenStream;
import org.antlr.v4.runtime.atn.ATNState;
import org.antlr.v4.runtime.misc.IntervalSet;
import wattle.syntax.grammar.WattleLexer;
import wattle.syntax.grammar.WattleParser;

/**
 * One mistake, one finding. After a mistake the rest of its line is left out, with any block that opens there; the next
 * line is read as if nothing had been. Inside the heading of a block only the heading is given up, never the block.
 */
final class LineRecovery extends DefaultErrorStrategy {
  private static final Set<Integer> BLOCKS = Set.of(
      WattleParser.RULE_plan, WattleParser.RULE_pattern, WattleParser.RULE_dwelling, WattleParser.RULE_service, WattleParser.RULE_panel,
      WattleParser.RULE_branch, WattleParser.RULE_room, WattleParser.RULE_box, WattleParser.RULE_trial,
      WattleParser.RULE_part, WattleParser.RULE_cable, WattleParser.RULE_table, WattleParser.RULE_limit,
      WattleParser.RULE_ruleBlock);

  private final SyntaxMessages messages;
  private final Mistakes mistakes = new Mistakes();
  private final Set<String> damagedWords = new HashSet<>();

  LineRecovery(Spans spans) {
    this.messages = new SyntaxMessages(spans);
  }

  Mistakes mistakes() {
    return mistakes;
  }

  Set<String> damagedWords() {
    return damagedWords;
  }

  @Override
  public void reportError(Parser parser, RecognitionException problem) {
    if (inErrorRecoveryMode(parser)) {
      return; // the same mistake, seen again from an outer rule
    }
    beginErrorCondition(parser);
    report(parser, problem.getOffendingToken() == null ? parser.getCurrentToken() : problem.getOffendingToken());
  }

  private void report(Parser parser, Token offending) {
    mistakes.add(messages.unexpected(parser.getContext(), offending, parser.getTokenStream()));
  }

  @Override
  public Token recoverInline(Parser parser) {
    ParserRuleContext context = parser.getContext();
    if (BLOCKS.contains(context.getRuleIndex()) && !opened(context) && braceAhead(parser)) {
      reportError(parser, new InputMismatchException(parser));
      skipTo(parser, "{");
      Token brace = parser.getCurrentToken();
      parser.consume();
      endErrorCondition(parser);
      return brace;
    }
    throw new InputMismatchException(parser);
  }

  /** Called before each decision of a loop: in a block, an impossible token costs its statement and no more. */
  @Override
  public void sync(Parser parser) {
    ParserRuleContext context = parser.getContext();
    if (!BLOCKS.contains(context.getRuleIndex())) {
      return;
    }
    ATNState state = parser.getInterpreter().atn.states.get(parser.getState());
    IntervalSet next = parser.getATN().nextTokens(state);
    int type = parser.getTokenStream().LA(1);
    if (next.contains(type) || next.contains(Token.EPSILON)) {
      return;
    }
    boolean inBody = context.getRuleIndex() == WattleParser.RULE_plan || opened(context);
    if (!inBody && !braceAhead(parser)) {
      return; // the rule itself will fail, and its caller goes on with the next line
    }
    if (!inErrorRecoveryMode(parser)) {
      beginErrorCondition(parser);
      report(parser, parser.getCurrentToken());
    }
    if (inBody) {
      skipStatement(parser, false);
    } else {
      skipTo(parser, "{");
    }
    endErrorCondition(parser);
  }

  @Override
  public void recover(Parser parser, RecognitionException problem) {
    // A body that failed between its braces still ends at its own brace: the caller must not see it.
    skipStatement(parser, awaitsBrace(parser));
  }

  /** Whether a rule that called this one goes on with the brace that opens its block. */
  private static boolean awaitsBrace(Parser parser) {
    ParserRuleContext context = parser.getContext().getParent();
    return context != null && BLOCKS.contains(context.getRuleIndex()) && !opened(context)
        && context.getRuleIndex() != WattleParser.RULE_plan;
  }

  private static boolean opened(ParserRuleContext context) {
    return Pieces.hasToken(context, "{");
  }

  private static boolean braceAhead(Parser parser) {
    TokenStream tokens = parser.getTokenStream();
    for (int i = 1;; i++) {
      Token token = tokens.LT(i);
      if (token.getText().equals("{")) {
        return true;
      }
      if (endsLine(token)) {
        return false;
      }
    }
  }

  private static boolean endsLine(Token token) {
    return token.getType() == Token.EOF || token.getType() == WattleLexer.NL || token.getText().equals("}");
  }

  private void skipTo(Parser parser, String text) {
    while (!parser.getCurrentToken().getText().equals(text) && !endsLine(parser.getCurrentToken())) {
      skip(parser);
    }
  }

  private void skipStatement(Parser parser, boolean stopAtBrace) {
    noteLine(parser);
    int depth = 0;
    for (Token token = parser.getCurrentToken(); token.getType() != Token.EOF; token = parser.getCurrentToken()) {
      String text = token.getText();
      if (depth == 0 && (endsLine(token) || stopAtBrace && text.equals("{"))) {
        return;
      }
      depth += text.equals("{") ? 1 : text.equals("}") ? -1 : 0;
      skip(parser);
    }
  }

  private void skip(Parser parser) {
    note(parser.getCurrentToken());
    parser.consume();
  }

  /** The words of this line that were read before the mistake. */
  private void noteLine(Parser parser) {
    TokenStream tokens = parser.getTokenStream();
    for (int i = tokens.index() - 1; i >= 0; i--) {
      Token token = tokens.get(i);
      if (token.getType() == WattleLexer.NL) {
        return;
      }
      note(token);
    }
  }

  private void note(Token token) {
    if (Character.isLetter(token.getText().codePointAt(0))) {
      damagedWords.add(token.getText());
    }
  }
}
