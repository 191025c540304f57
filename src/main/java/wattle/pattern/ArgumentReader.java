package wattle.pattern;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** Reads what a place line gives for the parameters of its pattern, as it is meant where the line stands. */
final class ArgumentReader {
  private final Frame frame;

  ArgumentReader(Frame frame) {
    this.frame = frame;
  }

  /** Absent where one of them has no value, which has been told. */
  Optional<Map<String, Argument>> read(Tree.Pattern pattern, Tree.Placing placing) {
    Map<String, Argument> arguments = new LinkedHashMap<>();
    for (int i = 0; i < pattern.parameters().size(); i++) {
      Optional<Argument> argument = argument(placing.arguments().get(i));
      if (argument.isEmpty()) {
        return Optional.empty();
      }
      arguments.put(pattern.parameters().get(i).text(), argument.get());
    }
    return Optional.of(arguments);
  }

  private Optional<Argument> argument(Tree.Argument written) {
    if (written.text().isPresent()) {
      return Optional.of(Argument.text(frame.text(written.text().get()), frame.span(written.span())));
    }
    if (written.cable().isPresent()) {
      Tree.CableWiring cable = new PiecePlacer(frame).cable(written.cable().get());
      return Optional.of(Argument.cable(cable, cable.span().text().strip().replaceAll("\\s+", " "), frame.span(written.span())));
    }
    Tree.Expression figure = written.figure().orElseThrow();
    if (figure instanceof Tree.Reference reference) {
      return Optional.of(named(reference));
    }
    Tree.Expression meant = new PiecePlacer(frame).expression(figure);
    return frame
        .ledger()
        .evaluator()
        .valueOf(meant)
        .map(value -> Argument.figure(meant, shown(value), frame.span(written.span())));
  }

  /** A parameter is handed on as it was given; any other name may be that of a thing or of a figure. */
  private Argument named(Tree.Reference reference) {
    Optional<Argument> given = reference.path().words().size() > 1 ? Optional.empty() : frame.argument(reference.path().text());
    if (given.isPresent()) {
      Argument outer = given.get();
      return new Argument(
          outer.figure().map(f -> new Tree.Given(Optional.of(f), frame.span(reference.span()))), outer.name(), outer.text(),
          outer.cable(), outer.shown(), outer.span());
    }
    Tree.Path path = frame.reference(reference.path());
    Optional<Quantity> constant = Optional.ofNullable(frame.ledger().constants().get(path.text()));
    return new Argument(
        Optional.of(new Tree.Reference(path, path.span())), Optional.of(path), Optional.empty(), Optional.empty(),
        constant.map(ArgumentReader::shown).orElse(path.text()), path.span());
  }

  private static String shown(Quantity value) {
    return value.dimension().equals(Dimension.NONE) && value.si() == Math.rint(value.si())
        ? Long.toString((long) value.si())
        : value.toString();
  }
}
