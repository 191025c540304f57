package wattle.emit.view.oneline;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.compare.Thing;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.Symbols;
import wattle.model.Panel;

/**
 * A panel of two revisions: the lines of both, each on a ground and with a sign that say whether it came, went or changed,
 * and beneath a changed one what it was.
 */
final class DifferencePanel {
  private static final double SMALL = 10;
  private static final double LEAST_ROW = 21;
  private static final double WAS = 13;

  /** Between where the supply comes in and the first row. */
  private static final double ABOVE = 30;

  /** Beneath the last row, with the line that names the next sheet. */
  private static final double BELOW = 30;

  private static final double HEADING = 430;

  /** Where the signs stand, left of the panel. */
  private static final double SIGNS = -22;

  private final List<DifferenceRow> rows;
  private final Difference difference;
  private final String was;

  /** Height of the heading. */
  private final double tall;

  private final PanelColumns columns;
  private final double width;
  private final double entry;

  /** @param leastLoad width that the column of loads has at least */
  private DifferencePanel(Revisions revisions, String key, double leastLoad) {
    Panel panel = revisions.panel(key);
    difference = revisions.ofPanel(key);
    rows = revisions.rows(key);
    columns = new PanelColumns(panel, rows.stream().map(DifferenceRow::row).toList(), leastLoad);
    width = Math.max(columns.loadEnd() + 6, HEADING);
    was = revisions.was(Thing.Kind.PANEL, key);
    tall = was.isEmpty() ? 37 : 51;
    entry = tall + 28;
  }

  /** @param y of each panel that this one feeds, by its key */
  record Drawn(Sketch sketch, double width, double height, double entry, Map<String, Double> exits, Map<String, Difference> feeders) {}

  static Drawn of(Revisions revisions, String key) {
    DifferencePanel panel = new DifferencePanel(revisions, key, 0);
    return panel.draw(panel.rows, Optional.empty());
  }

  /** The same for sheets, where the rows that feed a panel name a sheet. */
  static DifferencePanel onSheets(Revisions revisions, String key) {
    return new DifferencePanel(revisions, key, Fit.width(Shape.Continuation.WIDEST, PanelColumns.SIZE, false));
  }

  double width() {
    return width;
  }

  /**
   * Its rows in parts that are no higher than that, where a single row is not; one part for a panel without rows.
   *
   * @param first height of the first part
   * @param height of each other part
   */
  List<List<DifferenceRow>> parts(double first, double height) {
    List<List<DifferenceRow>> parts = new ArrayList<>();
    List<DifferenceRow> part = new ArrayList<>();
    double room = height - firstRow() - BELOW;
    double left = first - firstRow() - BELOW;
    for (DifferenceRow row : rows) {
      if (!part.isEmpty() && tall(row) > left) {
        parts.add(part);
        part = new ArrayList<>();
        left = room;
      }
      part.add(row);
      left -= tall(row);
    }
    parts.add(part);
    return parts;
  }

  private double firstRow() {
    return entry + ABOVE + columns.more() / 2;
  }

  private double rowHeight() {
    return LEAST_ROW + columns.more();
  }

  private double tall(DifferenceRow row) {
    return rowHeight() + WAS * was(row).size();
  }

  /** What a row was, in as many lines as it takes. */
  private List<String> was(DifferenceRow row) {
    return row.was().isEmpty() ? List.of() : Fit.lines(row.was(), SMALL, width - columns.wall() - 14);
  }

  /** @param links what a part on a sheet says of other sheets; absent for the whole, whose feeders the diagram draws */
  Drawn draw(List<DifferenceRow> part, Optional<PanelBlock.Links> links) {
    Sketch sketch = new Sketch();
    boolean begins = links.isEmpty() || links.get().before().isEmpty();
    Optional<String> after = links.flatMap(PanelBlock.Links::after);
    difference.ground(SIGNS - 4, -6, width - SIGNS + 4, tall).forEach(sketch::add);
    difference.sign(sketch, SIGNS, 8);
    sketch.fitted(0, 12, columns.title() + (begins ? "" : " (continued)"), 13, true, Anchor.START, width - 8);
    sketch.fitted(0, 26, columns.facts(), SMALL, false, Anchor.START, width - 8);
    if (!was.isEmpty()) {
      sketch.fitted(0, 40, was, SMALL, false, Anchor.START, width - 8);
    }
    Map<String, Double> exits = new HashMap<>();
    Map<String, Difference> feeders = new LinkedHashMap<>();
    double y = firstRow();
    double last = entry;
    Sketch lines = new Sketch();
    for (DifferenceRow row : part) {
      row.difference().ground(SIGNS - 4, y - rowHeight() / 2 + 1, width - SIGNS + 4, tall(row) - 2).forEach(sketch::add);
      row.difference().sign(lines, SIGNS, y);
      line(lines, row, y, links);
      double below = y + 3.2 + columns.more() / 2;
      for (String words : was(row)) {
        below += WAS;
        lines.fitted(columns.wall() + 8, below, words, SMALL, false, Anchor.START, width - columns.wall() - 14);
      }
      if (!row.panel().isEmpty() && (row.difference() != Difference.REMOVED || !exits.containsKey(row.panel()))) {
        exits.put(row.panel(), y);
        feeders.put(row.panel(), row.difference());
      }
      last = y;
      y += tall(row);
    }
    columns.bars(sketch, entry, after.isPresent() ? y : last);
    if (begins) {
      columns.entry(sketch, entry);
    } else {
      PanelBlock.sheet(sketch, columns.wall() + 6, entry, "continued from ", links.get().before().get(), Anchor.START);
    }
    double end = y;
    after.ifPresent(next -> PanelBlock.sheet(sketch, columns.wall() + 6, end, "continues on ", next, Anchor.START));
    sketch.add(lines, 0, 0);
    return new Drawn(sketch, width, y, entry, exits, feeders);
  }

  private void line(Sketch to, DifferenceRow difference, double y, Optional<PanelBlock.Links> links) {
    Stroke stroke = difference.difference().line();
    // What is gone is tapped no longer: a ring, not a dot.
    Fill tap = difference.difference() == Difference.REMOVED ? Fill.PAPER : Fill.INK;
    boolean feeds = difference.row().leaves() && !difference.panel().isEmpty();
    double nameEnd = columns.row(to, difference.row(), y, stroke, tap, feeds);
    if (feeds && links.isEmpty()) {
      to.line(nameEnd, y, width, y, stroke);
    } else if (feeds) {
      double end = columns.loadEnd() - Fit.width(Shape.Continuation.WIDEST, PanelColumns.SIZE, false) - 5;
      to.line(nameEnd, y, end - 8, y, stroke);
      Symbols.head(to, end, y);
      PanelBlock.sheet(to, end + 5, y, "", links.get().sheetOf().apply(difference.panel()), Anchor.START);
    }
  }
}
