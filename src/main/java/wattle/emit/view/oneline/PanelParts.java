package wattle.emit.view.oneline;

/**
 * Which rows of a panel stand in which of its parts. Parts are of about one length, which reads better than a last one with a row or two;
 * the first may have less room, because something stands over it.
 *
 * @param rows of the panel
 * @param first how many rows the first part holds at most
 * @param most how many each other part holds at most
 */
record PanelParts(int rows, int first, int most) {
  int count() {
    return rows <= first ? 1 : 1 + (rows - first + most - 1) / most;
  }

  private int rowsOfFirst() {
    return Math.min(first, (rows + count() - 1) / count());
  }

  /** The first row of a part. */
  int from(int part) {
    if (part == 0) {
      return 0;
    }
    int others = Math.max(1, count() - 1);
    int each = (rows - rowsOfFirst() + others - 1) / others;
    return Math.min(rows, rowsOfFirst() + (part - 1) * each);
  }

  /** The row after the last of a part. */
  int to(int part) {
    return part == count() - 1 ? rows : from(part + 1);
  }

  /** The part in which a row stands. */
  int of(int row) {
    int part = 0;
    while (row >= to(part)) {
      part++;
    }
    return part;
  }
}
