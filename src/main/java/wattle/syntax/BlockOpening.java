package wattle.syntax;

import java.util.List;
import org.antlr.v4.runtime.Token;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Span;
import wattle.syntax.grammar.WattleLexer;

/** The heading of a block whose line ends without a brace, and what follows: the brace below, the block without it, or nothing. */
final class BlockOpening {
  private final Spans spans;
  private final String what;
  private final Span end;
  private final List<Token> tokens;
  private final int next;

  /**
   * @param heading the word that begins it
   * @param last its last token
   * @param at where its line ends among the tokens
   */
  BlockOpening(Spans spans, Token heading, Token last, List<Token> tokens, int at) {
    this.spans = spans;
    this.what = heading.getText();
    this.end = spans.of(last).after();
    this.tokens = tokens;
    int following = at;
    while (following < tokens.size() && isBetween(tokens.get(following).getType())) {
      following++;
    }
    this.next = following;
  }

  private static boolean isBetween(int type) {
    return type == WattleLexer.NL || type == WattleLexer.COMMENT;
  }

  /** The place of the first token behind line ends and comments. */
  int next() {
    return next;
  }

  /** Whether the brace stands below. */
  boolean isBelow() {
    return next < tokens.size() && tokens.get(next).getText().equals("{");
  }

  private String one() {
    return ("aeiou".indexOf(what.charAt(0)) < 0 ? "a " : "an ") + what;
  }

  Finding finding() {
    String reason = "What " + one() + " is made of is between { and }, and the { in the line of its heading.";
    if (!isBelow()) {
      return Finding.error("block-unopened", "nothing opens the block of " + one()).at(end, "a { is expected here").because(reason)
          .fix(fix()).build();
    }
    Span brace = spans.of(tokens.get(next));
    Span between = end.to(brace);
    boolean bare = between.text().substring(0, between.text().length() - 1).isBlank();
    Finding.Builder finding = Finding.error("block-unopened", "the { of " + one() + " is below its heading")
        .at(brace, "expected in the line of the heading")
        .with(end, "here").because(reason);
    return (bare ? finding.fix(Fix.safe("move it up", between, " {")) : finding.fix("move it up")).build();
  }

  /** The brace where the block is closed; else both of them, about what is there before the next statement. */
  private Fix fix() {
    int depth = 0;
    int at = next;
    while (at < tokens.size() && !(tokens.get(at).getCharPositionInLine() == 0 && TokenRepair.opensStatement(tokens.get(at).getText()))) {
      String text = tokens.get(at++).getText();
      depth += text.equals("{") ? 1 : text.equals("}") ? -1 : 0;
      if (depth < 0) {
        return Fix.safe("write { there", end, " {");
      }
    }
    if (at == next) {
      return Fix.safe("write { } there, and what belongs to it between them", end, " { }");
    }
    return Fix.of("write { there, and } after what belongs to it");
  }
}
