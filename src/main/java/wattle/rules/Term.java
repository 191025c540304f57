package wattle.rules;

/**
 * A claim, ready to be worked out. The value is as its type says: a {@link wattle.quantity.Quantity} for a figure, a
 * Boolean, a String, a collection of them, a {@link wattle.quantity.WireSize}, or things of the model; null where what
 * it asks for is not known.
 */
@FunctionalInterface
interface Term {
  /** @param named what the rule has named so far, each in its place */
  Object of(Facts facts, Object[] named);
}
