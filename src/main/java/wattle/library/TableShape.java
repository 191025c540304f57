package wattle.library;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import wattle.finding.Finding;
import wattle.finding.NearNames;
import wattle.quantity.Dimension;
import wattle.quantity.Unit;
import wattle.quantity.Units;
import wattle.syntax.Tree;

/**
 * What the tables that computations ask for must hold. A local pack may replace any of them; one that lacked a column
 * would switch a check off without a word. Tables of other names are free.
 */
final class TableShape {
  private static final List<String> TRIP = List.of("rating A", "hold", "hold-time s", "overload", "overload-time s", "high", "high-least s",
      "high-time s");
  private static final List<String> INSTANTANEOUS = List.of("type", "least", "usual", "most", "time s");

  /** Columns as a table names them; any unit of the same dimension will do. */
  private static final Map<String, List<String>> SHAPES = Map.ofEntries(
      Map.entry("conductor-resistance", List.of("size AWG", "construction", "copper ohm/km", "aluminum ohm/km")),
      Map.entry("conductor-resistance-metric", List.of("size mm2", "copper ohm/km", "aluminum ohm/km")),
      Map.entry("temperature-coefficient", List.of("metal", "per-kelvin")),
      Map.entry(
          "conductor-impedance",
          List.of(
              "size AWG", "reactance-plastic ohm/km", "reactance-steel ohm/km", "copper-plastic ohm/km",
              "copper-steel ohm/km", "aluminum-plastic ohm/km", "aluminum-steel ohm/km")),
      Map.entry("raceway-material", List.of("kind", "material")),
      Map.entry("short-circuit", List.of("metal", "constant", "beta degC")),
      Map.entry("insulation-end", List.of("insulation", "end degC")),
      Map.entry("breaker-trip", TRIP),
      Map.entry("breaker-trip-iec", TRIP),
      Map.entry("instantaneous-trip", INSTANTANEOUS),
      Map.entry("instantaneous-trip-iec", INSTANTANEOUS),
      Map.entry("melting", List.of("metal", "preece", "melts degC")),
      Map.entry(
          "ampacity",
          List.of(
              "size AWG", "copper-60 A", "copper-75 A", "copper-90 A", "aluminum-60 A", "aluminum-75 A",
              "aluminum-90 A")),
      Map.entry("service-conductor", List.of("rating A", "copper AWG", "aluminum AWG")),
      Map.entry("ambient-correction", List.of("ambient degC", "rated-60", "rated-75", "rated-90")),
      Map.entry("bundling", List.of("conductors", "factor")),
      Map.entry("terminal-temperature", List.of("current A", "celsius degC")),
      Map.entry("breaker-ratings", List.of("rating A")),
      Map.entry("small-conductor", List.of("size AWG", "copper A", "aluminum A")),
      Map.entry("equipment-ground", List.of("rating A", "copper AWG", "aluminum AWG")),
      Map.entry(
          "electrode-conductor",
          List.of("service-copper AWG", "service-aluminum AWG", "copper AWG", "aluminum AWG")),
      Map.entry("electrode-limit", List.of("electrode", "copper AWG", "aluminum AWG")),
      Map.entry("box-volume", List.of("shape", "height in", "width in", "depth in", "volume in3")),
      Map.entry("box-allowance", List.of("size AWG", "volume in3")),
      Map.entry("box-count", List.of("thing", "allowances")));

  private TableShape() {}

  static void check(Table table, Tree.Table written, Consumer<Finding> findings) {
    for (String shape : SHAPES.getOrDefault(table.name(), List.of())) {
      String[] parts = shape.split(" ");
      String unit = parts.length > 1 ? parts[1] : "";
      int index = names(table).indexOf(parts[0]);
      if (index < 0) {
        findings.accept(missing(table, written, parts[0]));
      } else if (!fits(table.columns().get(index), unit)) {
        findings.accept(wrong(table, written, index, unit));
      }
    }
  }

  /**
   * Whether a table has every column of the one that it replaces, each of the same kind.
   *
   * @param findings gets what it lacks, but for what {@link #check} reports
   */
  static boolean hasColumnsOf(Table replaced, Table table, Tree.Table written, Consumer<Finding> findings) {
    Set<String> checked = SHAPES.getOrDefault(table.name(), List.of()).stream().map(s -> s.split(" ")[0]).collect(Collectors.toSet());
    boolean all = true;
    for (Table.Column column : replaced.columns()) {
      int index = names(table).indexOf(column.name());
      boolean fits = index >= 0 && table.columns().get(index).sizes() == column.sizes()
          && dimension(table.columns().get(index)).equals(dimension(column));
      if (!fits && !checked.contains(column.name())) {
        String unit = column.sizes() ? "AWG" : column.unit().map(Unit::symbol).orElse("");
        findings.accept(index < 0 ? missing(table, written, column.name()) : wrong(table, written, index, unit));
      }
      all &= fits;
    }
    return all;
  }

  private static List<String> names(Table table) {
    return table.columns().stream().map(Table.Column::name).toList();
  }

  private static Dimension dimension(Table.Column column) {
    return column.unit().orElse(Units.ONE).dimension();
  }

  private static Finding wrong(Table table, Tree.Table written, int index, String unit) {
    return Finding
        .error("column-unit", "column '" + table.columns().get(index).name() + "' of table '" + table.name() + "' has the wrong unit")
        .at(written.columns().get(index).span(), (unit.isEmpty() ? "no unit" : unit) + " is expected here")
        .build();
  }

  private static Finding missing(Table table, Tree.Table written, String column) {
    Finding.Builder finding = Finding.error("column-missing", "table '" + table.name() + "' has no column '" + column + "'")
        .at(written.name().span(), "this table needs it")
        .because("What looks this table up needs the column. Where a pack has the table, that of the pack is used.");
    NearNames.of(column, names(table)).forEach(n -> finding.fix("rename column " + n + " to " + column));
    return finding.build();
  }

  private static boolean fits(Table.Column column, String unit) {
    if (column.sizes() || unit.equals("AWG")) {
      return column.sizes() && unit.equals("AWG");
    }
    Optional<Unit> expected = unit.isEmpty() ? Optional.of(Units.ONE) : Units.find(unit);
    Dimension dimension = expected.orElseThrow(() -> new AssertionError(unit)).dimension();
    return dimension(column).equals(dimension);
  }
}
