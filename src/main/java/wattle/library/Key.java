package wattle.library;

import wattle.derivation.Derivation;
import wattle.derivation.Value;

/**
 * How a row of a table is chosen by one of its columns.
 *
 * @param column name of the column
 * @param sought what it is looked up by
 * @param match how a cell must stand to that
 */
public record Key(String column, Derivation sought, Match match) {
  /** How a cell must stand to what is sought. */
  public enum Match {
    /** The cell is the very word, size or figure. */
    EXACT,
    /**
     * The cell is a figure, size or end of a range not below it; of several the least. What falls between two ranges so
     * belongs to the upper one.
     */
    NOT_BELOW,
    /** The cell is a figure or size not above it; of several the greatest. */
    NOT_ABOVE
  }

  public static Key is(String column, Derivation sought) {
    return new Key(column, sought, Match.EXACT);
  }

  public static Key notBelow(String column, Derivation sought) {
    return new Key(column, sought, Match.NOT_BELOW);
  }

  public static Key notAbove(String column, Derivation sought) {
    return new Key(column, sought, Match.NOT_ABOVE);
  }

  /** How far a cell is from what is sought: 0 for the very thing, NaN for a cell that does not fit. */
  double distance(Cell cell) {
    if (sought.value() instanceof Value.Words words) {
      return cell.text().equals(words.text()) && cell instanceof Cell.Words ? 0 : Double.NaN;
    }
    double measure = measure(sought.value());
    double found = measure(cell);
    // Figures come through units, so that equal ones may differ in their last digit.
    boolean same = Math.abs(found - measure) <= 1e-9 * Math.abs(measure);
    return switch (match) {
      case EXACT -> same ? 0 : Double.NaN;
      case NOT_ABOVE -> found <= measure || same ? Math.abs(measure - found) : Double.NaN;
      // A range without an end fits what no other row does.
      case NOT_BELOW -> found >= measure || same ? Math.min(Math.abs(found - measure), Double.MAX_VALUE) : Double.NaN;
    };
  }

  private static double measure(Value value) {
    if (value instanceof Value.Amount amount) {
      return amount.quantity().si();
    }
    if (value instanceof Value.Size size) {
      return size.size().areaSquareMeters();
    }
    return Double.NaN;
  }

  private static double measure(Cell cell) {
    if (cell instanceof Cell.Figure figure) {
      return figure.quantity().si();
    }
    if (cell instanceof Cell.Size size) {
      return size.size().areaSquareMeters();
    }
    return cell instanceof Cell.Range range ? range.most().si() : Double.NaN;
  }
}
