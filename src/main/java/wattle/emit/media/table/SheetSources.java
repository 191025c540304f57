package wattle.emit.media.table;

import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import wattle.derivation.Derivation;
import wattle.finding.Citation;

/** The sources that the figures of sheets rest on. */
public final class SheetSources {
  private final SortedSet<Citation> sources = new TreeSet<>(Comparator.comparing(Citation::toString));
  private final Set<Derivation> seen = Collections.newSetFromMap(new IdentityHashMap<>());

  private SheetSources() {}

  /** Each once, in the order of the alphabet. */
  public static List<Citation> of(Collection<Sheet> sheets) {
    SheetSources found = new SheetSources();
    sheets.forEach(sheet -> sheet.rows().forEach(row -> row.cells().forEach(found::add)));
    return List.copyOf(found.sources);
  }

  private void add(Cell cell) {
    if (cell instanceof Cell.Figure figure) {
      figure.derivation().ifPresent(this::add);
    }
  }

  private void add(Derivation derivation) {
    if (seen.add(derivation)) {
      sources.addAll(derivation.sources());
      derivation.inputs().forEach(this::add);
    }
  }
}
