package wattle.emit.sheet.trial;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.model.Event;
import wattle.model.Trial;

/** The trials of a plan by name. */
public final class TrialList {
  private TrialList() {}

  /** A row for each trial, with what happens in it as the plan says it. */
  public static Sheet of(Collection<Trial> trials) {
    List<Row> rows = new ArrayList<>();
    for (Trial trial : trials) {
      List<String> events = trial.events().stream().map(Event::span).map(s -> s.text().strip().replaceAll("\\s+", " ")).toList();
      rows.add(Row.of(Cell.of(trial.name()), Cell.of(trial.label().orElse("")), Cell.of(String.join("; ", events))));
    }
    return new Sheet("trials", "Trials of the plan",
        List.of(Column.words("trial", "trial"), Column.words("title", "title"), Column.words("events", "what happens")), rows, List.of());
  }
}
