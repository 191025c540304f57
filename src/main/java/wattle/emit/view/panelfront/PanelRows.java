package wattle.emit.view.panelfront;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import wattle.model.Breaker;
import wattle.model.Panel;
import wattle.model.Slot;
import wattle.model.SlotOrder;

/**
 * Rows of a panel that stand together on a sheet.
 *
 * @param first counted from 1
 * @param last the last of them
 * @param part which part of the panel they are, from 0
 * @param parts how many parts it has
 */
record PanelRows(String panel, int first, int last, int part, int parts) {
  static final double ROW = 32;

  /** What heading, main and enclosure take above and below the rows. */
  private static final double AROUND = 104;

  static int slots(Panel panel) {
    int highest = panel.breakers().stream().flatMap(b -> b.poles().stream()).mapToInt(p -> p.slot().number()).max().orElse(0);
    return Math.max(panel.slotCount().orElse(0), highest);
  }

  private static int rows(Panel panel) {
    int slots = slots(panel);
    return panel.order() != SlotOrder.ONE_COLUMN ? (slots + 1) / 2 : slots;
  }

  static PanelRows all(Panel panel) {
    return new PanelRows(panel.name(), 1, rows(panel), 0, 1);
  }

  /** The rows in parts that fit into a height, torn where no breaker of several poles is, if that can be. */
  static List<PanelRows> within(Panel panel, double height) {
    int rows = rows(panel);
    int most = Math.max(1, (int) Math.floor((height - AROUND) / ROW));
    int each = Math.max(1, (rows + parts(rows, most) - 1) / parts(rows, most));
    TreeSet<Integer> whole = seams(panel, rows);
    List<Integer> lasts = new ArrayList<>();
    for (int first = 1; first <= rows;) {
      int wanted = Math.min(rows, first + each - 1);
      Integer seam = whole.floor(wanted);
      int last = seam != null && seam >= first ? seam : wanted;
      lasts.add(last);
      first = last + 1;
    }
    List<PanelRows> parts = new ArrayList<>();
    for (int i = 0; i < lasts.size(); i++) {
      parts.add(new PanelRows(panel.name(), i == 0 ? 1 : lasts.get(i - 1) + 1, lasts.get(i), i, lasts.size()));
    }
    return parts.isEmpty() ? List.of(all(panel)) : parts;
  }

  private static int parts(int rows, int most) {
    return Math.max(1, (rows + most - 1) / most);
  }

  /** Rows after which no breaker goes on. */
  private static TreeSet<Integer> seams(Panel panel, int rows) {
    TreeSet<Integer> seams = new TreeSet<>();
    for (int row = 1; row <= rows; row++) {
      seams.add(row);
    }
    int slots = slots(panel);
    for (Breaker breaker : panel.breakers()) {
      List<Integer> own = breaker.poles().stream().map(p -> panel.order().rowOf(p.slot().number(), slots)).sorted().toList();
      for (int row = own.isEmpty() ? 1 : own.get(0); !own.isEmpty() && row < own.get(own.size() - 1); row++) {
        seams.remove(row);
      }
    }
    return seams;
  }

  boolean holds(Panel of, Slot slot, int slots) {
    int row = of.order().rowOf(slot.number(), slots);
    return row >= first && row <= last;
  }

  int count() {
    return last - first + 1;
  }

  boolean isFirst() {
    return part == 0;
  }

  boolean isLast() {
    return part == parts - 1;
  }

  String piece() {
    return panel + " " + part;
  }

  String pieceBefore() {
    return panel + " " + (part - 1);
  }

  String pieceAfter() {
    return panel + " " + (part + 1);
  }
}
