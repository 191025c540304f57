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
 * @param cable a cable, as behind {@code by}
 * @param shown how it is put into a hole of a name or a text
 * @param span where it is given
 */
record Argument(
    Optional<Tree.Expression> figure, Optional<Tree.Path> name, Optional<Tree.Text> text, Optional<Tree.CableWiring> cable,
    String shown, Span span) {

  static Argument figure(Tree.Expression figure, String shown, Span span) {
    return new Argument(Optional.of(figure), Optional.empty(), Optional.empty(), Optional.empty(), shown, span);
  }

  static Argument text(Tree.Text text, Span span) {
    return new Argument(Optional.empty(), Optional.empty(), Optional.of(text), Optional.empty(), text.value(), span);
  }

  static Argument cable(Tree.CableWiring cable, String shown, Span span) {
    return new Argument(Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(cable), shown, span);
  }

  /** A number that a repetition has come to. */
  static Argument number(int value, Span span) {
    return figure(new Tree.Figure(value, Optional.empty(), span), Integer.toString(value), span);
  }
}
