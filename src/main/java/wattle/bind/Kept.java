package wattle.bind;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * One thing that is made of the whole plan, kept while all that it was made from are the same objects. It is kept only where
 * nothing was reported in the making: a fault is looked at anew each time.
 */
final class Kept<V> {
  private List<?> from = List.of();
  private Optional<V> value = Optional.empty();
  private List<String> assumed = List.of();
  private boolean asBefore;

  /** The thing as it was made the last time, else made now. */
  V of(List<?> now, Scope scope, Supplier<V> make) {
    asBefore = value.isPresent() && same(now, from);
    if (asBefore) {
      assumed.forEach(scope::assume);
      return value.get();
    }
    value = Optional.empty();
    Scope.Moment then = scope.now();
    V made = make.get();
    Optional<List<String>> quiet = scope.quietSince(then);
    if (quiet.isPresent()) {
      from = now;
      assumed = quiet.get();
      value = Optional.of(made);
    }
    return made;
  }

  /** Whether it was not made anew when it was last asked for. */
  boolean isAsBefore() {
    return asBefore;
  }

  void forget() {
    value = Optional.empty();
  }

  /** Whether two lists hold the same objects. */
  static boolean same(List<?> some, List<?> others) {
    if (some.size() != others.size()) {
      return false;
    }
    for (int i = 0; i < some.size(); i++) {
      if (some.get(i) != others.get(i)) {
        return false;
      }
    }
    return true;
  }
}
