package wattle.emit.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.derivation.Derivation;
import wattle.emit.document.Markup;
import wattle.emit.report.Steps.Step;
import wattle.emit.table.Cell;
import wattle.emit.table.Row;
import wattle.emit.table.Sheet;

/** How the figures of tables were come by, for paper, where they do not unfold; equal ones are told once. */
final class Workings {
  /** Most figures that are named above one working; the tables show which others are the same. */
  private static final int MOST_NAMES = 6;

  /** Rows of a table whose workings are told: those of all rows of a house are a hundred sheets. */
  static final int MOST_ROWS = 10;

  private final Unfolding unfolding = new Unfolding();
  private final Set<Step> told = new LinkedHashSet<>();
  private final Markup page = new Markup();
  private boolean cut;

  /** The id of the place where a figure's working stands; absent where it is not told. */
  Optional<String> place(Derivation derivation) {
    Step step = unfolding.step(derivation);
    return told.contains(step) ? Optional.of(Unfolding.id(step)) : Optional.empty();
  }

  /** Tells the figures of a sheet that have not been told. */
  void add(Sheet sheet) {
    Map<Step, List<String>> figures = figures(sheet);
    if (!figures.isEmpty()) {
      page.element("h3", sheet.title());
      Set<String> remarks = new LinkedHashSet<>();
      figures.forEach((step, names) -> {
        page.open("p", "id", Unfolding.id(step)).element("b", named(names) + ":").text(" ").raw(unfolding.sentence(step)).close();
        remarks.add(step.derivation().remark());
      });
      remarks.stream().filter(r -> !r.isEmpty()).forEach(r -> page.element("p", r, "class", "remark"));
      told.addAll(figures.keySet());
    }
  }

  /** All of them, and behind them what they share; empty where every figure is a plain one. */
  String markup() {
    List<Unfolding.Told> shared = unfolding.shared(told, unfolding::sentence);
    if (!shared.isEmpty()) {
      page.element("h3", "Steps that the figures rest on");
      shared.forEach(t -> page.open("p", "id", Unfolding.id(t.step())).raw(t.markup()).close());
    }
    return page.toString();
  }

  /** Whether some table has more rows than were told. */
  boolean isCut() {
    return cut;
  }

  private static String named(List<String> names) {
    String first = String.join("; ", names.subList(0, Math.min(names.size(), MOST_NAMES)));
    return names.size() > MOST_NAMES ? first + "; and " + (names.size() - MOST_NAMES) + " more" : first;
  }

  private Map<Step, List<String>> figures(Sheet sheet) {
    Map<Step, List<String>> figures = new LinkedHashMap<>();
    cut |= sheet.rows().size() > MOST_ROWS;
    for (Row row : sheet.rows().subList(0, Math.min(MOST_ROWS, sheet.rows().size()))) {
      for (int c = 0; c < row.cells().size(); c++) {
        if (row.cells().get(c) instanceof Cell.Figure figure && figure.derivation().isPresent()) {
          Step step = unfolding.step(figure.derivation().get());
          if (!told.contains(step)) {
            String name = nameOf(row) + ", " + sheet.columns().get(c).title();
            figures.computeIfAbsent(step, d -> new ArrayList<>()).add(name);
          }
        }
      }
    }
    return figures;
  }

  /** The first words of a row; they are what a reader looks it up by. */
  private static String nameOf(Row row) {
    return row.cells().stream()
        .filter(Cell.Words.class::isInstance)
        .map(c -> ((Cell.Words) c).text())
        .limit(3)
        .collect(Collectors.joining(" "));
  }
}
