package wattle.emit.oneline;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wattle.compare.Thing;
import wattle.emit.drawing.Shape.Anchor;
import wattle.emit.drawing.Shape.Fill;
import wattle.emit.drawing.Shape.Stroke;
import wattle.emit.drawing.Sketch;
import wattle.model.Panel;

/**
 * A panel of two revisions: the lines of both, each on a ground and with a sign that say whether it came, went or changed,
 * and beneath a changed one what it was.
 */
final class DifferencePanel {
  private static final double SMALL = 9;
  private static final double ROW = 21;
  private static final double WAS = 13;
  private static final double HEADING = 430;

  /** Where the signs stand, left of the panel. */
  private static final double SIGNS = -22;

  private final List<DifferenceRow> rows;
  private final Sketch sketch = new Sketch();
  private final PanelColumns columns;
  private final double width;
  private final double entry;

  private DifferencePanel(Revisions revisions, String key) {
    Panel panel = revisions.panel(key);
    rows = revisions.rows(key);
    columns = new PanelColumns(panel, rows.stream().map(DifferenceRow::row).toList(), 0);
    width = Math.max(columns.loadEnd() + 6, HEADING);
    Difference difference = revisions.ofPanel(key);
    String was = revisions.was(Thing.Kind.PANEL, key);
    double tall = was.isEmpty() ? 37 : 51;
    difference.ground(SIGNS - 4, -6, width - SIGNS + 4, tall).forEach(sketch::add);
    difference.sign(sketch, SIGNS, 8);
    sketch.fitted(0, 12, columns.title(), 13, true, Anchor.START, HEADING - 20);
    sketch.fitted(0, 26, columns.facts(), SMALL, false, Anchor.START, HEADING - 20);
    if (!was.isEmpty()) {
      sketch.fitted(0, 40, was, SMALL, false, Anchor.START, width - 8);
    }
    entry = tall + 28;
  }

  /** @param y of each panel that this one feeds, by its key */
  record Drawn(Sketch sketch, double width, double height, double entry, Map<String, Double> exits, Map<String, Difference> feeders) {}

  static Drawn of(Revisions revisions, String key) {
    return new DifferencePanel(revisions, key).draw();
  }

  private Drawn draw() {
    Map<String, Double> exits = new HashMap<>();
    Map<String, Difference> feeders = new LinkedHashMap<>();
    double y = entry + 30;
    double last = entry;
    Sketch lines = new Sketch();
    for (DifferenceRow row : rows) {
      double tall = ROW - 2 + (row.was().isEmpty() ? 0 : WAS);
      row.difference().ground(SIGNS - 4, y - ROW / 2 + 1, width - SIGNS + 4, tall).forEach(sketch::add);
      row.difference().sign(lines, SIGNS, y);
      line(lines, row, y);
      if (!row.was().isEmpty()) {
        lines.fitted(columns.wall() + 8, y + 3.2 + WAS, row.was(), SMALL, false, Anchor.START, width - columns.wall() - 14);
      }
      if (!row.panel().isEmpty() && (row.difference() != Difference.REMOVED || !exits.containsKey(row.panel()))) {
        exits.put(row.panel(), y);
        feeders.put(row.panel(), row.difference());
      }
      last = y;
      y += tall + 2;
    }
    columns.bars(sketch, entry, last);
    columns.entry(sketch, entry);
    sketch.add(lines, 0, 0);
    return new Drawn(sketch, width, y, entry, exits, feeders);
  }

  private void line(Sketch to, DifferenceRow difference, double y) {
    Stroke stroke = difference.difference().line();
    // What is gone is tapped no longer: a ring, not a dot.
    Fill tap = difference.difference() == Difference.REMOVED ? Fill.PAPER : Fill.INK;
    boolean feeds = difference.row().leaves() && !difference.panel().isEmpty();
    double nameEnd = columns.row(to, difference.row(), y, stroke, tap, feeds);
    if (feeds) {
      to.line(nameEnd, y, width, y, stroke);
    }
  }
}
