package wattle.derivation;

import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.WireSize;

/** What a derivation yields. */
public sealed interface Value {
  /** One figure. */
  record Amount(Quantity quantity) implements Value {
    @Override
    public String text() {
      return quantity.toString();
    }
  }

  /**
   * One figure in two units: the one that a table has or a formula counts in, and the one that a reader thinks in.
   *
   * @param own as it was looked up or computed
   * @param read the same for the reader
   */
  record Converted(Quantity own, Quantity read) implements Value {
    @Override
    public String text() {
      return own + " = " + read;
    }

    /** Formulas with temperatures have constants in °C in them, and other figures stand beside them in the reader's units. */
    @Override
    public String inFormula() {
      return (read.isLike(Dimension.TEMPERATURE) ? own : read).toString();
    }
  }

  /** A figure that is known only to lie between two others, both included. */
  record Between(Quantity least, Quantity most) implements Value {
    @Override
    public String text() {
      return least + " to " + most;
    }
  }

  record Size(WireSize size) implements Value {
    @Override
    public String text() {
      return size.toString();
    }
  }

  /** A choice among words, such as {@code copper} or {@code yes}. */
  record Words(String text) implements Value {}

  /** As output shows it, with its unit. */
  String text();

  /** As it stands in a formula for its symbol. */
  default String inFormula() {
    return text();
  }
}
