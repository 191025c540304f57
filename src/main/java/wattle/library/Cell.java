package wattle.library;

import wattle.derivation.Value;
import wattle.quantity.Quantity;
import wattle.quantity.WireSize;

/** One cell of a table. */
public sealed interface Cell {
  /** A figure in the unit of its column. */
  record Figure(Quantity quantity) implements Cell {
    @Override
    public String text() {
      return quantity.toString();
    }
  }

  record Size(WireSize size) implements Cell {
    @Override
    public String text() {
      return size.toString();
    }
  }

  record Words(String text) implements Cell {}

  /** From one figure to another, both included; infinite where the table sets no end. */
  record Range(Quantity least, Quantity most) implements Cell {
    @Override
    public String text() {
      if (Double.isInfinite(least.si())) {
        return most + " or less";
      }
      return Double.isInfinite(most.si()) ? least + " or more" : least + " to " + most;
    }
  }

  /** The table says nothing here. */
  record None() implements Cell {
    @Override
    public String text() {
      return "none";
    }
  }

  /** As output shows it, with its unit. */
  String text();

  /** What a derivation that rests on this cell yields. */
  default Value value() {
    if (this instanceof Figure figure) {
      return new Value.Amount(figure.quantity);
    }
    if (this instanceof Size size) {
      return new Value.Size(size.size);
    }
    if (this instanceof Range range) {
      return new Value.Between(range.least, range.most);
    }
    return new Value.Words(text());
  }
}
