package wattle.emit.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import wattle.derivation.Derivation;
import wattle.emit.document.Markup;
import wattle.emit.table.Cell;
import wattle.emit.table.Row;
import wattle.emit.table.Sheet;
import wattle.emit.unfolded.Unfolded;

/** How the figures of the tables were come by, for paper, where they do not unfold; equal ones are told once. */
final class Workings {
  /** Most figures that are named above one working; the tables show which others are the same. */
  private static final int MOST_NAMES = 12;

  private Workings() {}

  /** The list; empty where every figure is a plain one. */
  static String of(List<Sheet> sheets) {
    Markup page = new Markup();
    for (Sheet sheet : sheets) {
      Map<Derivation, List<String>> figures = figures(sheet);
      if (!figures.isEmpty()) {
        page.element("h3", sheet.title());
        figures.forEach((derivation, names) -> {
          page.element("p", named(names), "class", "of");
          page.raw(Unfolded.html(derivation));
        });
      }
    }
    return page.toString();
  }

  private static String named(List<String> names) {
    String first = String.join("; ", names.subList(0, Math.min(names.size(), MOST_NAMES)));
    return names.size() > MOST_NAMES ? first + "; and " + (names.size() - MOST_NAMES) + " more" : first;
  }

  private static Map<Derivation, List<String>> figures(Sheet sheet) {
    Map<Derivation, List<String>> figures = new LinkedHashMap<>();
    for (Row row : sheet.rows()) {
      for (int c = 0; c < row.cells().size(); c++) {
        if (row.cells().get(c) instanceof Cell.Figure figure && figure.derivation().isPresent()) {
          String name = nameOf(row) + ", " + sheet.columns().get(c).title();
          figures.computeIfAbsent(figure.derivation().get(), d -> new ArrayList<>()).add(name);
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
