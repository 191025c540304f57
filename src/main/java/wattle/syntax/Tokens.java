package wattle.syntax;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.Token;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.syntax.grammar.WattleLexer;

/** The tokens of a part of a text, whatever they mean there: for one who looks for a word or a figure in a statement. */
public final class Tokens {
  private Tokens() {}

  /** In order; comments and line ends are left out. */
  public static List<Tree.Word> of(Span part) {
    Spans spans = new Spans(new Source(part.source().name(), part.text()));
    List<Tree.Word> tokens = new ArrayList<>();
    for (Token token : PlanLexer.all(part.text(), part.source().name())) {
      if (token.getChannel() == Token.DEFAULT_CHANNEL && token.getType() != WattleLexer.NL) {
        Span within = spans.of(token);
        tokens.add(
            new Tree.Word(
                token.getText(), part.source().span(part.start() + within.start(), part.start() + within.end())));
      }
    }
    return tokens;
  }
}
