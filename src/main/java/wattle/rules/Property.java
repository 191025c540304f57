package wattle.rules;

/**
 * Something that rules may say of a thing.
 *
 * @param name as rules write it behind the dot
 * @param type of its value
 * @param meaning one line, for the table of properties
 * @param read the value, or null where the plan does not say; a claim about what is not known is neither true nor false
 */
public record Property(String name, Type type, String meaning, Reader read) {
  /** Reads a property of a thing of its kind. */
  @FunctionalInterface
  interface Reader {
    Object of(Facts facts, Object thing);
  }
}
