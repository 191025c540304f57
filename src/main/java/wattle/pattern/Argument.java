package wattle.pattern;

import java.util.Optional;
import wattle.finding.Span;
import wattle.syntax.Tree;

/**
 * What a parameter stands for in one placement. A bare name may be that of a thing or of a figure: which, its use says.
 *
 * @param figure an expression, in the names of the house
 * @param name a name of the house
 * @param text a text in quotes
 * @param shown how it is put into a hole of a name or a text
 * @param span where it is given
 */
record Argument(
    Optional<Tree.Expression> figure, Optional<Tree.Path> name, Optional<Tree.Text> text, String shown, Span span) {

  /** A number that a repetition has come to. */
  static Argument number(int value, Span span) {
    return new Argument(
        Optional.of(new Tree.Figure(value, Optional.empty(), span)), Optional.empty(), Optional.empty(),
        Integer.toString(value), span);
  }
}
