package wattle.library;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import wattle.evaluate.Evaluator;
import wattle.finding.Citation;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;
import wattle.quantity.WireSize;
import wattle.syntax.Tree;

/** Reads tables and limits. What it cannot read it reports once and leaves out, row by row. */
final class TableReader {
  private static final Pattern FIGURE = Pattern.compile("[0-9]{1,300}(\\.[0-9]{1,300})?");

  private final Library replaced;
  private final Consumer<Finding> findings;

  /** @param replaced what has tables and limits in whose place those that are read may stand */
  TableReader(Library replaced, Consumer<Finding> findings) {
    this.replaced = replaced;
    this.findings = findings;
  }

  /** Empty where it lacks what the one that it replaces has. */
  Optional<Table> table(Tree.Table table) {
    List<Table.Column> columns = columns(table);
    List<Table.Row> rows = new ArrayList<>();
    for (Tree.Row row : table.rows()) {
      if (row.cells().size() != columns.size()) {
        findings.accept(
            Finding.error("row-length", "a row of table '" + table.name() + "' has " + count(row.cells().size(), "cell"))
                .at(row.span(), "the columns are " + names(columns))
                .fix(
                    row.cells().size() < columns.size()
                        ? "write - in a cell that has no figure"
                        : "take out a cell, or name a column for it")
                .build());
        continue;
      }
      cells(row, columns).ifPresent(cells -> rows.add(new Table.Row(cells, row.fromMemory())));
    }
    Table read = new Table(
        table.name().text(), table.label().map(Tree.Text::value).orElse(table.name().text()), columns, rows,
        citations(table.citations(), table.name()));
    TableShape.check(read, table, findings);
    return replaced.table(read.name()).map(r -> TableShape.hasColumnsOf(r, read, table, findings)).orElse(true)
        ? Optional.of(read)
        : Optional.empty();
  }

  Optional<Limit> limit(Tree.Limit limit) {
    Optional<Quantity> value = new Evaluator(Map.of(), findings).valueOf(limit.value())
        .filter(v -> isLimit(v, limit));
    List<Citation> citations = citations(limit.citations(), limit.name());
    return value
        .map(v -> new Limit(limit.name().text(), limit.label().map(Tree.Text::value).orElse(limit.name().text()), v, citations))
        .filter(l -> LimitBounds.check(l, limit, findings) && measuresTheSame(l, limit));
  }

  private boolean measuresTheSame(Limit limit, Tree.Limit written) {
    Optional<Limit> other = replaced.limit(limit.name()).filter(r -> !r.value().dimension().equals(limit.value().dimension()));
    other.ifPresent(
        r -> findings.accept(
            Finding.error(Mistake.DIMENSION_MISMATCH, "limit '" + limit.name() + "' cannot be " + limit.value())
                .at(written.value().span(), r.value().dimension().trade() + " is expected here").because("That of the pack is used.")
                .build()));
    return other.isEmpty();
  }

  /** A quantity of 0 limits nothing, and figures are divided by it; a plain number may be 0, as a number of outlets or a share. */
  private boolean isLimit(Quantity value, Tree.Limit limit) {
    boolean fits = value.dimension().equals(Dimension.NONE) ? value.si() >= 0 : value.si() > 0;
    if (!fits) {
      findings.accept(
          Finding.error(Mistake.FIGURE_NOT_POSITIVE, "the limit '" + limit.name().text() + "' cannot be " + value)
              .at(limit.value().span(), "more than 0 is expected here")
              .build());
    }
    return fits;
  }

  private List<Table.Column> columns(Tree.Table table) {
    List<Table.Column> columns = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (Tree.Column column : table.columns()) {
      if (!names.add(column.name().text())) {
        findings.accept(
            Finding.error("column-twice", "table '" + table.name() + "' has two columns '" + column.name() + "'")
                .at(column.name().span(), "named before")
                .build());
      }
      boolean sizes = column.unit().filter(u -> u.text().equals("AWG")).isPresent();
      Optional<Unit> unit = sizes ? Optional.empty() : column.unit().flatMap(this::unit);
      columns.add(new Table.Column(column.name().text(), unit, sizes));
    }
    if (columns.isEmpty()) {
      findings.accept(
          Finding.error("columns-missing", "table '" + table.name() + "' names no columns")
              .at(table.name().span(), "a line such as columns size AWG copper ohm/km is expected below")
              .build());
    }
    return columns;
  }

  private Optional<Unit> unit(Tree.Word written) {
    String plain = written.text().replace(" ", "");
    Optional<Unit> unit = Units.find(plain);
    if (unit.isEmpty()) {
      Finding.Builder finding = Finding.error(Mistake.UNIT_UNKNOWN, "no unit is called '" + plain + "'")
          .at(written.span(), "the unit of a column is expected here");
      NearNames.of(plain, Units.spellings()).forEach(n -> finding.fix(Fix.safe("write " + n, written.span(), n)));
      findings.accept(finding.build());
    }
    return unit;
  }

  private Optional<List<Cell>> cells(Tree.Row row, List<Table.Column> columns) {
    List<Cell> cells = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      Tree.Cell written = row.cells().get(i);
      Table.Column column = columns.get(i);
      Optional<Cell> cell = cell(written, column);
      if (cell.isEmpty()) {
        findings.accept(
            Finding.error("cell-unfit", "'" + written.text() + "' does not fit column '" + column.name() + "'")
                .at(written.span(), expected(written, column) + " is expected here")
                .build());
        return Optional.empty();
      }
      cells.add(cell.get());
    }
    return Optional.of(cells);
  }

  private static String expected(Tree.Cell written, Table.Column column) {
    if (column.sizes()) {
      return "a size such as 14, 2/0 or 250";
    }
    return written.text().contains("..") ? "a range from less to more" : "a figure, or - for none";
  }

  private static String names(List<Table.Column> columns) {
    return columns.stream().map(Table.Column::name).collect(Collectors.joining(", "));
  }

  private static Optional<Cell> cell(Tree.Cell written, Table.Column column) {
    if (written.quoted()) {
      return column.sizes() || column.unit().isPresent()
          ? Optional.empty()
          : Optional.of(new Cell.Words(written.text()));
    }
    if (written.text().equals("-")) {
      return Optional.of(new Cell.None());
    }
    if (column.sizes()) {
      return WireSize.parse(written.text()).map(Cell.Size::new);
    }
    Unit unit = column.unit().orElse(Units.ONE);
    if (written.number().isPresent()) {
      return Optional.of(new Cell.Figure(Quantity.of(written.number().get(), unit)));
    }
    int dots = written.text().indexOf("..");
    if (dots > 0) {
      OptionalDouble least = end(written.text().substring(0, dots), Double.NEGATIVE_INFINITY);
      OptionalDouble most = end(written.text().substring(dots + 2), Double.POSITIVE_INFINITY);
      return least.isPresent() && most.isPresent() && least.getAsDouble() <= most.getAsDouble()
          ? Optional.of(new Cell.Range(Quantity.of(least.getAsDouble(), unit), Quantity.of(most.getAsDouble(), unit)))
          : Optional.empty();
    }
    return column.unit().isPresent() ? Optional.empty() : Optional.of(new Cell.Words(written.text()));
  }

  /** An end of a range; empty where a mistake of writing left something else there. */
  private static OptionalDouble end(String figure, double none) {
    if (figure.equals("-")) {
      return OptionalDouble.of(none);
    }
    return FIGURE.matcher(figure).matches() ? OptionalDouble.of(Double.parseDouble(figure)) : OptionalDouble.empty();
  }

  private List<Citation> citations(List<Tree.Cited> written, Tree.Word name) {
    if (written.isEmpty()) {
      findings.accept(
          Finding.error("source-missing", "'" + name + "' names no source")
              .at(name.span(), "a figure without a source cannot be judged")
              .fix("add a line such as source \"NFPA 70-2023\" \"Table 310.16\", or source \"common practice\"")
              .build());
    }
    return written.stream()
        .map(c -> new Citation(c.work().value(), c.place().map(Tree.Text::value).orElse(""), c.fromMemory()))
        .toList();
  }

  private static String count(int number, String thing) {
    return number + " " + thing + (number == 1 ? "" : "s");
  }
}
