package wattle.library;

import java.util.List;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.finding.Citation;
import wattle.quantity.Quantity;

/**
 * A single figure that a code or the trade sets, such as the most outlets of a branch.
 *
 * @param name by which computations and rules ask for it
 * @param label what it is, for readers
 */
public record Limit(String name, String label, Quantity value, List<Citation> citations) {
  public Limit {
    citations = List.copyOf(citations);
  }

  /** The figure as an input of others, under its label. */
  public Derivation derivation(String symbol) {
    return Derivation.lookedUp(label, symbol, new Value.Amount(value), "limit " + name, List.of(), citations);
  }
}
