package wattle.emit.sheet.schedule;

import java.util.ArrayList;
import java.util.List;
import wattle.derivation.Derivation;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.materials.Material;
import wattle.materials.Materials;
import wattle.quantity.UnitSystem;
import wattle.quantity.Units;

/** What to buy: one row a thing. */
public final class MaterialsSchedule {
  private static final double METERS_PER_FOOT = 0.3048;
  private static final int MOST_PLACES = 8;

  private static final List<Column> COLUMNS = List.of(
      Column.words("category", "category"),
      Column.words("item", "item"),
      Column.figures("count", "count", "", 0),
      Column.figures("length-m", "length", "m", 1),
      Column.figures("length-ft", "length", "ft", 0),
      Column.words("for", "for"));

  private MaterialsSchedule() {}

  /** @param units in which the notes tell lengths */
  public static Sheet of(Materials materials, UnitSystem units) {
    List<Row> rows = new ArrayList<>();
    for (Material item : materials.items()) {
      rows.add(
          Row.of(
              Cell.of(item.category().word()),
              Cell.of(item.what()),
              item.inMeters() ? Cell.BLANK : Cell.of(item.amount()),
              item.inMeters() ? item.derivation().map(d -> Cell.of(item.amount(), d)).orElse(Cell.of(item.amount())) : Cell.BLANK,
              item.inMeters() ? Cell.of(item.amount() / METERS_PER_FOOT) : Cell.BLANK,
              Cell.of(places(item.places()))));
    }
    return new Sheet("materials", "Materials to buy", COLUMNS, rows, notes(materials, units));
  }

  /** Enough to find them; a long list of boxes would hide the column beside it. */
  private static String places(List<String> places) {
    return places.size() <= MOST_PLACES
        ? String.join(", ", places)
        : String.join(", ", places.subList(0, MOST_PLACES)) + " and " + (places.size() - MOST_PLACES) + " more";
  }

  private static List<String> notes(Materials materials, UnitSystem units) {
    List<String> notes = new ArrayList<>();
    materials.items().stream()
        .flatMap(m -> m.derivation().stream())
        .findFirst()
        .ifPresent(d -> notes.add(
            "Lengths to buy: " + d.formula() + "; " + slack(d, units) + " (common practice; a limit of the plan's own stands instead)."));
    notes.add(
        "Only what is new is counted. Wire connectors and cable connectors are counted from the joints and entries that the plan"
            + " implies; fastenings are not counted.");
    materials.open().forEach(o -> notes.add("Open: " + o + "."));
    return notes;
  }

  private static String slack(Derivation length, UnitSystem units) {
    return String.join(
        ", ",
        length.inputs().stream()
            .filter(i -> List.of("s_b", "s_p", "w").contains(i.symbol()))
            .map(
                i -> i.symbol() + " = "
                    + i.quantity().map(q -> q.isLike(wattle.quantity.Dimension.NONE) ? q.shownIn(Units.PERCENT) : units.shown(q))
                        .orElseThrow()
                    + " " + i.name().toLowerCase(java.util.Locale.ROOT))
            .toList());
  }
}
