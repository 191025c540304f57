package wattle.derivation;

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
}
