package wattle.emit.document.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.derivation.Derivation;
import wattle.emit.document.report.Steps.Step;
import wattle.emit.media.page.Markup;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;

/**
 * How the figures of tables were come by, for paper, where they do not unfold. Equal ones are told once, and each under a
 * number in rising order, so that a step that is named elsewhere is found by its number on paper, and by a link on a screen.
 */
final class Workings {
  /** Most figures that are named above one working; the tables show which others are the same. */
  private static final int MOST_NAMES = 6;

  private final LinkedSteps unfolding = new LinkedSteps();
  private final Set<Step> told = new LinkedHashSet<>();
  private final List<Table> tables = new ArrayList<>();

  /** @param figures those that no table before has, each with its names */
  private record Table(String title, Map<Step, List<String>> figures) {}

  /** The id of the place where a figure's working stands; absent where it is not told. */
  Optional<String> place(Derivation derivation) {
    Step step = unfolding.step(derivation);
    return told.contains(step) ? Optional.of(LinkedSteps.id(step)) : Optional.empty();
  }

  /**
   * Takes up the figures of a sheet.
   *
   * @return the id of the place where they are told; absent where the sheet has none that were not told before
   */
  Optional<String> add(Sheet sheet) {
    Map<Step, List<String>> figures = figures(sheet);
    if (figures.isEmpty()) {
      return Optional.empty();
    }
    figures.keySet().forEach(unfolding::number);
    told.addAll(figures.keySet());
    tables.add(new Table(sheet.title(), figures));
    return Optional.of(id(tables.size() - 1));
  }

  private static String id(int table) {
    return "workings-of-" + table;
  }

  /** The id of a table on the page, by the place where its figures are told. */
  static String tableOf(String workings) {
    return workings + "-table";
  }

  /** All of them, and behind them what they share; empty where every figure is a plain one. */
  String markup() {
    Markup page = new Markup();
    for (int i = 0; i < tables.size(); i++) {
      Table table = tables.get(i);
      page.open("h3", "id", id(i)).text(table.title() + ", ").raw("<a class=\"page\" href=\"#" + tableOf(id(i)) + "\">page </a>").close();
      Set<String> remarks = new LinkedHashSet<>();
      table.figures().forEach((step, names) -> {
        page.open("p", "id", LinkedSteps.id(step)).element("b", unfolding.number(step) + "  " + named(names) + ":").text(" ")
            .raw(unfolding.sentence(step)).close();
        remarks.add(step.derivation().remark());
      });
      remarks.stream().filter(r -> !r.isEmpty()).forEach(r -> page.element("p", r, "class", "remark"));
    }
    List<LinkedSteps.Told> shared = unfolding.shared(told, unfolding::sentence);
    if (!shared.isEmpty()) {
      page.element("h3", "Steps that the figures use");
      shared.forEach(
          t -> page.open("p", "id", LinkedSteps.id(t.step())).element("b", unfolding.number(t.step()) + " ").raw(t.markup()).close());
    }
    return page.toString();
  }

  private static String named(List<String> names) {
    String first = String.join("; ", names.subList(0, Math.min(names.size(), MOST_NAMES)));
    return names.size() > MOST_NAMES ? first + "; and " + (names.size() - MOST_NAMES) + " more" : first;
  }

  private Map<Step, List<String>> figures(Sheet sheet) {
    Map<Step, List<String>> figures = new LinkedHashMap<>();
    for (Row row : sheet.rows()) {
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
