package wattle.server;

import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.ParameterInformation;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureInformation;
import wattle.syntax.Lexeme;
import wattle.syntax.Tree;

/** What a pattern is given, while a {@code place} line is typed. */
final class Signatures {
  private Signatures() {}

  /** Absent where the position is in no parentheses behind the name of a pattern. */
  static Optional<SignatureHelp> at(Question question, Position position) {
    List<Lexeme> before = CursorPlace.at(question, question.offset(position)).before();
    if (before.size() < 3 || !before.get(0).text().equals("place") || !before.get(2).text().equals("(")) {
      return Optional.empty();
    }
    int depth = 0;
    int parameter = 0;
    for (Lexeme lexeme : before.subList(2, before.size())) {
      switch (lexeme.text()) {
        case "(" -> depth++;
        case ")" -> depth--;
        case "," -> parameter += depth == 1 ? 1 : 0;
        default -> {
          /* part of an argument */ }
      }
    }
    if (depth == 0) {
      return Optional.empty();
    }
    int active = parameter;
    return question.analysis().items().stream()
        .filter(i -> i instanceof Tree.Pattern pattern && pattern.name().text().equals(before.get(1).text()))
        .map(i -> help((Tree.Pattern) i, active))
        .findFirst();
  }

  private static SignatureHelp help(Tree.Pattern pattern, int active) {
    SignatureInformation information = new SignatureInformation(PatternPages.heading(pattern));
    information.setParameters(pattern.parameters().stream().map(p -> new ParameterInformation(p.text())).toList());
    return new SignatureHelp(List.of(information), 0, Math.min(active, Math.max(0, pattern.parameters().size() - 1)));
  }
}
