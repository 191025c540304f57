package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.finding.Citation;
import wattle.finding.Severity;
import wattle.library.Cell;
import wattle.library.Library;
import wattle.library.Table;

/**
 * The methods of load calculation of a plan's code packs. The packs say which methods they have and hold the figures; the
 * mechanism is in this package. A method that is asked for what its conditions forbid, or that lacks a figure of the plan,
 * gives objections and no worksheet: it never guesses.
 */
public final class Worksheets {
  private final List<Method> methods;
  private final Figures figures;

  public Worksheets(Library library) {
    figures = new Figures(library);
    methods = library.table("worksheet-methods").map(Worksheets::methods).orElse(List.of());
  }

  private static List<Method> methods(Table table) {
    List<Method> methods = new ArrayList<>();
    for (Table.Row row : table.rows()) {
      Mechanism.named(text(table, row, "mechanism"))
          .ifPresent(
              mechanism -> {
                String work = table.citations().stream().map(Citation::work).findFirst().orElse("");
                Citation source = new Citation(work, text(table, row, "place"), false);
                methods.add(new Method(text(table, row, "method"), mechanism, text(table, row, "title"), source));
              });
    }
    return methods;
  }

  private static String text(Table table, Table.Row row, String column) {
    return table.indexOf(column).map(i -> row.cells().get(i)).filter(c -> !(c instanceof Cell.None)).map(Cell::text).orElse("");
  }

  /** All methods, the usual one first; empty where the plan names no code. */
  public List<Method> methods() {
    return List.copyOf(methods);
  }

  public Optional<Method> method(String name) {
    return methods.stream().filter(m -> m.name().equals(name)).findFirst();
  }

  Optional<LeastCircuits> leastCircuits(Inputs inputs, LeastCircuits.General general) {
    return LeastCircuits.of(inputs, figures, general);
  }

  /** Calculates. */
  public Outcome calculate(Method method, Inputs inputs) {
    List<Objection> objections = new ArrayList<>();
    try {
      Calculation calculation = method.mechanism().calculation();
      objections.addAll(calculation.objections(inputs, figures));
      if (objections.stream().anyMatch(o -> o.severity() == Severity.ERROR)) {
        return new Outcome(method, Optional.empty(), objections);
      }
      return new Outcome(method, Optional.of(calculation.calculate(method, inputs, figures)), objections);
    } catch (Figures.Missing e) {
      objections.add(
          Objection.error(
              "figure-missing", "", "method '" + method.name() + "' lacks " + e.getMessage(),
              "A pack or a file of the plan has put another table in its place.",
              "give it that figure, or take out the table that replaces it"));
      return new Outcome(method, Optional.empty(), objections);
    }
  }
}
