package wattle.emit.sheet.balance;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import wattle.balance.Fixed;
import wattle.balance.Move;
import wattle.balance.PanelBalance;
import wattle.balance.Proof;
import wattle.balance.Step;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.loads.LegLoads;
import wattle.model.Leg;
import wattle.model.SupplySystem;
import wattle.words.Caution;

/** Legs before and after, the moves, and what fewer moves would reach. */
public final class BalanceSheets {
  private BalanceSheets() {}

  /** Three sheets: {@code balance-legs}, {@code balance-moves} and {@code balance-steps}. */
  public static List<Sheet> of(List<PanelBalance> panels) {
    return List.of(legs(panels), moves(panels), steps(panels));
  }

  private static Sheet legs(List<PanelBalance> panels) {
    Set<Leg> legs = EnumSet.noneOf(Leg.class);
    panels.forEach(p -> legs.addAll(p.panel().legs()));
    List<Column> columns = new ArrayList<>();
    columns.add(Column.words("panel", "panel"));
    columns.add(Column.words("state", "state"));
    for (Leg leg : legs) {
      String key = leg.name().toLowerCase(Locale.ROOT);
      columns.add(Column.figures("load-" + key + "-va", "leg " + leg, "VA", 0));
      columns.add(Column.figures("current-" + key + "-a", "leg " + leg, "A", 1));
    }
    columns.add(Column.figures("difference-va", "difference", "VA", 0));
    columns.add(Column.figures("difference-a", "difference", "A", 1));
    columns.add(Column.figures("neutral-a", "neutral", "A", 1));
    List<Row> rows = new ArrayList<>();
    for (PanelBalance panel : panels) {
      rows.add(legs(panel, "as it is", panel.before(), legs));
      if (!panel.moves().isEmpty()) {
        rows.add(legs(panel, "proposed", panel.after(), legs));
      } else if (!panel.after().equals(panel.before())) {
        rows.add(legs(panel, "with the moves in panels that it feeds", panel.after(), legs));
      }
    }
    List<String> notes = new ArrayList<>();
    notes.add(
        "Everything connected on at once, at nominal voltage, without demand factors. A load between two legs counts half of its VA"
            + " on each;"
            + " amperes of legs and neutral are added as phasors.");
    if (panels.stream().anyMatch(p -> p.before().unplaced() > 0)) {
      notes.add("Some loads are on no leg, because the plan does not say what feeds them; wattle check shows them.");
    }
    return new Sheet("balance-legs", "Load of each leg", columns, rows, notes);
  }

  private static Row legs(PanelBalance panel, String state, LegLoads load, Set<Leg> legs) {
    SupplySystem system = panel.panel().system();
    List<Cell> cells = new ArrayList<>(List.of(Cell.of(panel.panel().name()), Cell.of(state)));
    for (Leg leg : legs) {
      boolean there = panel.panel().legs().contains(leg);
      cells.add(there ? Cell.of(load.on(leg)) : Cell.BLANK);
      cells.add(there ? Cell.of(load.amperes(leg, system)) : Cell.BLANK);
    }
    cells.add(Cell.of(panel.difference(load)));
    cells.add(Cell.of(load.differenceAmperes(system)));
    cells.add(Cell.of(load.neutralAmperes(system)));
    return Row.of(cells.toArray(Cell[]::new));
  }

  private static Sheet moves(List<PanelBalance> panels) {
    List<Row> rows = new ArrayList<>();
    for (PanelBalance panel : panels) {
      for (Move move : panel.moves()) {
        rows.add(
            Row.of(
                Cell.of(panel.panel().name()), Cell.of(move.subject()), Cell.of(move.fromText()), Cell.of(move.toText()),
                Cell.of(move.fromLegs()), Cell.of(move.toLegs()),
                Cell.of(move.onlyWires() ? "stays; its wires are swapped" : "moves")));
      }
    }
    List<String> notes = new ArrayList<>();
    panels.forEach(p -> notes.add(proof(p)));
    panels.stream().filter(p -> !p.fixed().isEmpty()).forEach(p -> notes.add(fixed(p)));
    notes.add("Not checked: whether the wires are long enough, and which slots take half-size breakers; see the panel label.");
    notes.add(
        Caution.SHORT + " The supply side of the panel stays live while a breaker is moved.");
    return new Sheet(
        "balance-moves", rows.isEmpty() ? "Moves: none" : "Moves",
        List.of(
            Column.words("panel", "panel"), Column.words("feeds", "feeds"), Column.words("from", "from"),
            Column.words("to", "to"), Column.words("from-leg", "from leg"), Column.words("to-leg", "to leg"),
            Column.words("how", "how")),
        rows, notes);
  }

  private static String proof(PanelBalance panel) {
    Proof proof = panel.proof();
    String name = "Panel " + panel.panel().name() + ": ";
    String among = panel.movable() + " of " + (panel.movable() + panel.fixed().size()) + " breakers or half-size pairs may move";
    if (panel.panel().legs().size() < 2) {
      return name + "one leg, nothing to balance.";
    }
    if (panel.movable() == 0) {
      return name + "no breaker may move.";
    }
    String moves = proof.mostMoves() >= panel.movable() ? "any number of moves" : moves(proof.mostMoves());
    String counted = String.format(Locale.ROOT, "%,d partial arrangements examined", proof.examined());
    if (proof.complete()) {
      return name + "proven that no arrangement with " + moves + " has a difference smaller by "
          + figure(proof.resolution()) + " VA or more, nor one as good with fewer moves (" + among + "; " + counted
          + ", the rest excluded by bounds).";
    }
    return name + "stopped early (" + counted + "; " + among + "); with " + moves + " the least difference lies between "
        + figure(proof.bound()) + " VA and " + figure(panel.difference(panel.after())) + " VA.";
  }

  private static String moves(int moves) {
    return moves == 1 ? "at most 1 move" : "at most " + moves + " moves";
  }

  private static String figure(double value) {
    return String.format(Locale.ROOT, value == Math.rint(value) ? "%.0f" : "%.1f", value);
  }

  private static String fixed(PanelBalance panel) {
    Map<String, List<String>> byReason = new LinkedHashMap<>();
    for (Fixed fixed : panel.fixed()) {
      byReason.computeIfAbsent(fixed.why(), why -> new ArrayList<>()).add(fixed.breaker().id().slotText());
    }
    List<String> parts = byReason.entrySet().stream().map(e -> e.getKey() + ": " + String.join(", ", e.getValue())).toList();
    return "Panel " + panel.panel().name() + ", slots that stay: " + String.join("; ", parts) + ".";
  }

  private static Sheet steps(List<PanelBalance> panels) {
    List<Row> rows = new ArrayList<>();
    for (PanelBalance panel : panels) {
      for (Step step : panel.steps()) {
        rows.add(
            Row.of(
                Cell.of(panel.panel().name()), Cell.of(step.moves()), Cell.of(step.difference()), Cell.of(step.bound())));
      }
    }
    return new Sheet(
        "balance-steps", "Result with fewer moves",
        List.of(
            Column.words("panel", "panel"), Column.figures("moves", "moves at most", "", 0),
            Column.figures("difference-va", "difference", "VA", 0),
            Column.figures("bound-va", "never below", "VA", 0)),
        rows, List.of("--moves N proposes the line of N moves."));
  }
}
