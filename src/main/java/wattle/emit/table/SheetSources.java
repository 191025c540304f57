package wattle.emit.table;

import java.util.Collection;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import wattle.derivation.Derivation;

/** The published sources that the figures of sheets rest on. */
public final class SheetSources {
  private SheetSources() {}

  /** Each once, in the order of the alphabet. */
  public static List<String> of(Collection<Sheet> sheets) {
    SortedSet<String> sources = new TreeSet<>();
    sheets.forEach(sheet -> sheet.rows().forEach(row -> row.cells().forEach(cell -> add(cell, sources))));
    return List.copyOf(sources);
  }

  private static void add(Cell cell, SortedSet<String> sources) {
    if (cell instanceof Cell.Figure figure) {
      figure.derivation().ifPresent(d -> add(d, sources));
    }
  }

  private static void add(Derivation derivation, SortedSet<String> sources) {
    derivation.sources().forEach(s -> sources.add(s.toString()));
    derivation.inputs().forEach(d -> add(d, sources));
  }
}
