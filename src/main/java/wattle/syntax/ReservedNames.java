package wattle.syntax;

import java.util.Optional;
import java.util.Set;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.TokenStream;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
import wattle.finding.Span;

/** Words of the notation that stand where a name was meant: most may be names, those that could end a name's statement not. */
final class ReservedNames {
  private static final Set<String> BEFORE_A_NAME = Set.of(".", "let", "service", "panel", "branch", "raceway", "room", "box", "trial",
      "pattern", "place", "override", "as", "silence", "rule", "table", "limit");

  private ReservedNames() {}

  /** Whether a token is a word of the notation behind one that gives a name or a dot, or before the colon of a device. */
  static boolean standsForName(Token token, TokenStream tokens) {
    String word = Literals.of(token.getType());
    if (word.isEmpty() || !Character.isLetter(word.charAt(0))) {
      return false;
    }
    boolean device = tokens.LT(1) == token && tokens.LT(2).getText().equals(":");
    return device || before(token, tokens).filter(t -> BEFORE_A_NAME.contains(Literals.of(t.getType()))).isPresent();
  }

  private static Optional<Token> before(Token token, TokenStream tokens) {
    for (int i = token.getTokenIndex() - 1; i >= 0; i--) {
      if (tokens.get(i).getChannel() == Token.DEFAULT_CHANNEL) {
        return Optional.of(tokens.get(i));
      }
    }
    return Optional.empty();
  }

  static Finding finding(Token token, Span span) {
    String text = token.getText();
    return Finding.error(Mistake.UNEXPECTED, "'" + text + "' is a word of the notation and cannot be a name")
        .at(span, "a name is expected here")
        .fix(Fix.offered("write another name, such as " + text + "1", span, text + "1"))
        .build();
  }
}
