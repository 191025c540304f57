package wattle.emit.sheet.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.materials.Demolition;
import wattle.materials.Material;
import wattle.materials.Materials;
import wattle.materials.PriceList;
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
    List<Row> rows = materials.items().stream().map(i -> new Row(cells(i), false)).toList();
    return new Sheet("materials", "Materials to buy", COLUMNS, rows, notes(materials, units));
  }

  private static List<Cell> cells(Material item) {
    return List.of(
        Cell.of(item.category().word()),
        Cell.of(item.what()),
        item.inMeters() ? Cell.BLANK : Cell.of(item.amount()),
        item.inMeters() ? item.derivation().map(d -> Cell.of(item.amount(), d)).orElse(Cell.of(item.amount())) : Cell.BLANK,
        item.inMeters() ? Cell.of(item.amount() / METERS_PER_FOOT) : Cell.BLANK,
        Cell.of(places(item.places())));
  }

  /** What is to be removed. */
  public static Sheet of(Demolition demolition) {
    List<Row> rows = demolition.items().stream().map(i -> new Row(cells(i), false)).toList();
    return new Sheet("demolition", "To be removed", COLUMNS, rows,
        List.of(
            "What the plan marks to-remove; cable by the length of its runs. Switch off, lock, and prove dead before you cut anything."));
  }

  /** The same with prices and hours of the user's, and their sums; a note names what has no price. */
  public static Sheet of(Materials materials, PriceList prices, UnitSystem units) {
    List<Column> columns = new ArrayList<>(COLUMNS);
    columns.add(Column.figures("price", "price", "", 2));
    columns.add(Column.figures("hours", "hours", "h", 2));
    List<Row> rows = new ArrayList<>();
    List<String> without = new ArrayList<>();
    double sum = 0;
    double hours = 0;
    for (Material item : materials.items()) {
      Optional<PriceList.Price> price = prices.of(item);
      Optional<Double> cost = price.flatMap(PriceList.Price::price).map(p -> cents(p * item.amount()));
      Optional<Double> work = price.flatMap(PriceList.Price::hours).map(h -> cents(h * item.amount()));
      if (cost.isEmpty()) {
        without.add(item.what());
      }
      sum += cost.orElse(0.0);
      hours += work.orElse(0.0);
      List<Cell> cells = new ArrayList<>(cells(item));
      cells.add(cost.<Cell>map(Cell::of).orElse(Cell.BLANK));
      cells.add(work.<Cell>map(Cell::of).orElse(Cell.BLANK));
      rows.add(new Row(cells, false));
    }
    rows.add(
        Row.sum(Cell.of("sum"), Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.of(cents(sum)), Cell.of(cents(hours))));
    List<String> notes = new ArrayList<>(notes(materials, units));
    notes.add("Prices and hours are from your own list.");
    if (!without.isEmpty()) {
      notes.add("No price, so not in the sum: " + String.join("; ", without) + ".");
    }
    return new Sheet("materials", "Materials to buy", columns, rows, notes);
  }

  /** Rounded as it is shown, so that the sum is that of the lines. */
  private static double cents(double amount) {
    return Math.round(amount * 100) / 100.0;
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
            "Lengths to buy: " + d.formula() + "; " + slack(d, units) + " (common practice; a limit in the plan replaces it)."));
    notes.add(
        "Only new work is counted. Wire connectors and cable connectors are counted from the joints and entries that the plan"
            + " implies; fasteners are not counted.");
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
