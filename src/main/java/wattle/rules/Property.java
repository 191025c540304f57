package wattle.rules;

import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import wattle.model.Doubt;

/**
 * Something that rules may say of a thing.
 *
 * @param name as rules write it behind the dot
 * @param type of its value
 * @param meaning one line, for the table of properties
 * @param read the value, or null where the plan does not say; a claim about what is not known is neither true nor false
 * @param keptAt where the value is kept once it was worked out, among those of its thing; {@link #NOT_KEPT} for one that
 *     costs too little, or is asked for too seldom, to be worth it
 * @param rests which doubts about its thing, or about what that hangs on, leave it not known
 * @param ofSort whether the value is the same for all things of one sort, as {@link Kind#sortOf} has it
 * @param stated how a plan would state it, for what a plan may leave out; absent for what is derived or never lacking
 */
public record Property(String name, Type type, String meaning, Reader read, int keptAt, boolean ofSort, Optional<Wording> stated,
    Set<Doubt> rests) {
  static final int NOT_KEPT = -1;

  /** Reads a property of a thing of its kind. */
  @FunctionalInterface
  interface Reader {
    Object of(Facts facts, Object thing);
  }

  /** The value for a thing of its kind, or null where the plan does not say. */
  Object of(Facts facts, Object thing) {
    if (facts.doubts() && facts.isInDoubt(this, thing)) {
      return type instanceof Type.Things ? new Incomplete((Collection<?>) read.of(facts, thing)) : null;
    }
    Object value = keptAt != NOT_KEPT ? facts.kept(this, thing) : read.of(facts, thing);
    if (value == null && stated.isPresent()) {
      facts.lacks(this, thing);
    }
    return value;
  }
}
