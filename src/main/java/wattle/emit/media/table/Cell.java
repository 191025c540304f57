package wattle.emit.media.table;

import java.util.Optional;
import wattle.derivation.Derivation;

/** One cell of a sheet. */
public sealed interface Cell {
  Cell BLANK = new Blank();

  /** Words, as the plan or the model has them; not escaped for any format. */
  record Words(String text) implements Cell {}

  /**
   * A figure in the unit of its column.
   *
   * @param derivation how it was come by; absent where it is a plain count or sum of the plan
   */
  record Figure(double value, Optional<Derivation> derivation) implements Cell {
    public Figure {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("a table shows no " + value);
      }
    }
  }

  /** Nothing to say. */
  record Blank() implements Cell {}

  /** Words; blank where there are none. */
  static Cell of(String text) {
    return text.isEmpty() ? BLANK : new Words(text);
  }

  static Cell of(double value) {
    return new Figure(value, Optional.empty());
  }

  /** @param value the figure in the unit of the column */
  static Cell of(double value, Derivation derivation) {
    return new Figure(value, Optional.of(derivation));
  }
}
