package wattle.derivation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.finding.Citation;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/**
 * A figure and how it was come by. Its inputs are derivations themselves, so that a reader unfolds as far as they like:
 * down to what the plan states, what a table says and what was assumed.
 *
 * <pre>{@code
 * Derivation base = table.find("ampacity at 90 °C", "I_t", "copper-90", Key.size("size", size)).orElseThrow();
 * Derivation heat = Derivation.stated("ambient factor", "k_a", Quantity.of(0.82, Units.ONE));
 * Derivation.computed("corrected ampacity", "I_c", "I_t × k_a", 24.6, Units.AMPERE, base, heat).worked();
 * // 30 A × 0.82
 * }</pre>
 *
 * @param name what the figure is, in the trade's words, such as {@code ambient factor}
 * @param symbol its short name in the formulas of what is derived from it, such as {@code k_a}; empty for none
 * @param value the result
 * @param basis what kind of figure it is
 * @param formula for a computed figure, over the symbols of the inputs; for a looked-up one, where in the table it
 *     stands; else empty
 * @param inputs in the order of the formula
 * @param sources published or common practice, of this step alone
 * @param remark one sentence that a reader needs to judge the step; may be empty
 */
public record Derivation(
    String name,
    String symbol,
    Value value,
    Basis basis,
    String formula,
    List<Derivation> inputs,
    List<Citation> sources,
    String remark) {
  /** What a figure rests on. */
  public enum Basis {
    /** The plan or the reader says so. */
    STATED,
    /** So many of it are in the plan. */
    COUNTED,
    /** The plan does not say; the usual value was taken. */
    ASSUMED,
    /** A table or a limit of the library says so. */
    LOOKED_UP, COMPUTED
  }

  public Derivation {
    inputs = List.copyOf(inputs);
    sources = List.copyOf(sources);
  }

  public static Derivation stated(String name, String symbol, Quantity value) {
    return leaf(name, symbol, new Value.Amount(value), Basis.STATED);
  }

  public static Derivation stated(String name, String symbol, WireSize value) {
    return leaf(name, symbol, new Value.Size(value), Basis.STATED);
  }

  public static Derivation stated(String name, String symbol, String value) {
    return leaf(name, symbol, new Value.Words(value), Basis.STATED);
  }

  /** How many there are of something in the plan. */
  public static Derivation counted(String name, String symbol, double number) {
    return leaf(name, symbol, new Value.Amount(Quantity.of(number, Units.ONE)), Basis.COUNTED);
  }

  /** The usual value of what the plan leaves open. */
  public static Derivation assumed(String name, String symbol, Quantity value) {
    return leaf(name, symbol, new Value.Amount(value), Basis.ASSUMED);
  }

  private static Derivation leaf(String name, String symbol, Value value, Basis basis) {
    return new Derivation(name, symbol, value, basis, "", List.of(), List.of(), "");
  }

  /**
   * A figure from a table or limit.
   *
   * @param where table, row and column, in words
   * @param keys what it was looked up by
   */
  public static Derivation lookedUp(
      String name, String symbol, Value value, String where, List<Derivation> keys, List<Citation> sources) {
    return new Derivation(name, symbol, value, Basis.LOOKED_UP, where, keys, sources, "");
  }

  /** A figure that follows from others by a formula over their symbols. */
  public static Derivation computed(String name, String symbol, String formula, Value value, List<Derivation> inputs) {
    return new Derivation(name, symbol, value, Basis.COMPUTED, formula, inputs, List.of(), "");
  }

  /** As above, for one figure in a unit. */
  public static Derivation computed(
      String name, String symbol, String formula, double value, Unit unit, Derivation... inputs) {
    return computed(name, symbol, formula, new Value.Amount(Quantity.of(value, unit)), List.of(inputs));
  }

  /** The same, resting on one more source. */
  public Derivation citing(Citation source) {
    List<Citation> more = new ArrayList<>(sources);
    more.add(source);
    return new Derivation(name, symbol, value, basis, formula, inputs, more, remark);
  }

  /** The same with a remark. */
  public Derivation remarking(String sentence) {
    return new Derivation(name, symbol, value, basis, formula, inputs, sources, sentence);
  }

  /** The same figure by another name, where it plays another part. */
  public Derivation named(String otherName, String otherSymbol) {
    return new Derivation(otherName, otherSymbol, value, basis, formula, inputs, sources, remark);
  }

  /** The figure, where it is one; of one in two units that for the reader. */
  public Optional<Quantity> quantity() {
    return value instanceof Value.Amount amount
        ? Optional.of(amount.quantity())
        : value instanceof Value.Converted converted ? Optional.of(converted.read()) : Optional.empty();
  }

  /**
   * The figure in SI units.
   *
   * @throws IllegalStateException where the value is no single figure
   */
  public double si() {
    return quantity().orElseThrow(() -> new IllegalStateException(name + " is not a figure: " + value.text())).si();
  }

  /** The formula with the values of the inputs in it, such as {@code 30 A × 0.82}; empty for what has no formula. */
  public String worked() {
    return basis == Basis.COMPUTED ? Substitution.of(formula, inputs) : "";
  }

  /** Whether this or anything it rests on is from memory and to be verified. */
  public boolean toBeVerified() {
    return sources.stream().anyMatch(Citation::verify) || inputs.stream().anyMatch(Derivation::toBeVerified);
  }

  /** One line: name, formula, sum and result. */
  @Override
  public String toString() {
    StringBuilder line = new StringBuilder(name);
    String last = "";
    for (String part : List.of(basis == Basis.COMPUTED ? formula : "", worked(), value.text())) {
      if (!part.isEmpty() && !part.equals(last)) {
        line.append(" = ").append(part);
        last = part;
      }
    }
    return line.toString();
  }
}
