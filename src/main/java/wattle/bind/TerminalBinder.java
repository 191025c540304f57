package wattle.bind;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.model.Terminals;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.syntax.Tree;

/** What terminals are marked for. */
final class TerminalBinder {
  /** The markings that there are, in °C; ampacity tables have a column for each. */
  private static final List<Integer> MARKED = List.of(60, 75, 90);

  private TerminalBinder() {}

  static Terminals bind(Optional<Tree.Terminals> written, Scope scope) {
    return written.map(w -> bind(w, scope)).orElse(Terminals.UNMARKED);
  }

  private static Terminals bind(Tree.Terminals written, Scope scope) {
    Optional<Quantity> temperature = written
        .temperature()
        .flatMap(t -> scope.evaluator().valueOf(t, Dimension.TEMPERATURE, "the marking of terminals"))
        .filter(t -> isMarked(t, written, scope));
    Set<Terminals.Mark> metals = EnumSet.noneOf(Terminals.Mark.class);
    for (Tree.Word word : written.metals()) {
      Arrays.stream(Terminals.Mark.values()).filter(m -> m.word().equals(word.text())).forEach(metals::add);
    }
    return new Terminals(temperature, metals);
  }

  private static boolean isMarked(Quantity temperature, Tree.Terminals written, Scope scope) {
    double celsius = temperature.in(Units.CELSIUS);
    boolean known = MARKED.stream().anyMatch(m -> Math.abs(m - celsius) < 0.5);
    if (!known) {
      scope.report(
          Finding.error("terminal-marking-odd", "no terminals are marked " + temperature)
              .at(written.temperature().orElseThrow().span(), "60, 75 or 90 degC is expected here")
              .because("The ampacity of a wire between its terminals is read in the column of their marking.")
              .fix("write the marking on them")
              .fix(Fix.takenOut("leave it out where it cannot be read",
                  written.metals().isEmpty() ? written.span() : written.temperature().orElseThrow().span())));
    }
    return known;
  }
}
