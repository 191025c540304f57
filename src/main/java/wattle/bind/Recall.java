package wattle.bind;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.function.Supplier;

/**
 * What was made of each tree the last time, so that it need not be made again while the tree is the same object and what
 * else it was made from is the same too. Only that is kept in the making of which nothing was reported: a fault is looked at
 * anew each time, with all that is known then.
 */
final class Recall<K, V> {
  private record Made<V>(V value, List<String> assumed) {}

  private Map<K, Made<V>> before = new IdentityHashMap<>();
  private Map<K, Made<V>> now = new IdentityHashMap<>();

  /** What is not asked for until the turn after next is forgotten. */
  void turn() {
    before = now;
    now = new IdentityHashMap<>();
  }

  void forget() {
    before = new IdentityHashMap<>();
  }

  /**
   * The value made of a tree the last time, else made now.
   *
   * @param holds whether a value rests on nothing that has changed, the tree apart
   */
  V of(K tree, Scope scope, Predicate<V> holds, Supplier<V> make) {
    Made<V> known = before.get(tree);
    if (known != null && holds.test(known.value)) {
      known.assumed.forEach(scope::assume);
      now.put(tree, known);
      return known.value;
    }
    Scope.Moment then = scope.now();
    V value = make.get();
    scope.quietSince(then).ifPresent(assumed -> now.put(tree, new Made<>(value, assumed)));
    return value;
  }
}
