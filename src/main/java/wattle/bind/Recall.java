package wattle.bind;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/**
 * What was made of each tree the last time, so that it need not be made again while the tree is the same object and what
 * else it was made from is the same too. Only that is kept in the making of which nothing was reported: a fault is looked at
 * anew each time, with all that is known then.
 */
final class Recall<K, V> {
  private record Made<V>(V value, List<String> assumed) {
    Made<V> as(V same) {
      return same == value ? this : new Made<>(same, assumed);
    }
  }

  /** Things that one thread makes in one go. */
  private static final int STRETCH = 256;

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
   * @param still the value as it still stands; absent where it rests on something that has changed, the tree apart
   */
  V of(K tree, Scope scope, Function<V, Optional<V>> still, Supplier<V> make) {
    Made<V> known = before.get(tree);
    Optional<V> same = known == null ? Optional.empty() : still.apply(known.value);
    if (same.isPresent()) {
      known.assumed.forEach(scope::assume);
      now.put(tree, known.as(same.get()));
      return same.get();
    }
    Scope.Moment then = scope.now();
    V value = make.get();
    scope.quietSince(then).ifPresent(assumed -> now.put(tree, new Made<>(value, assumed)));
    return value;
  }

  /**
   * As above, of many things and on several processors. A stretch of them is made aside; where something was reported in the
   * making it is made once more, in its turn and where all can hear, so that what comes of it does not rest on threads.
   *
   * @param tree that a thing is made of
   * @param still the value as it still stands; absent where it rests on something that has changed, the tree apart
   * @param maker makes things in a scope, and changes nothing that the making of another looks at
   */
  <T> List<V> all(List<T> things, Function<T, K> tree, Scope scope, BiFunction<T, V, Optional<V>> still,
      Function<Scope, Function<T, V>> maker) {
    List<V> values = new ArrayList<>(things.size());
    // Where most is known, calling another processor takes longer than looking up.
    if (things.size() > STRETCH && before.size() < things.size() / 2) {
      int stretches = (things.size() + STRETCH - 1) / STRETCH;
      List<Optional<List<Made<V>>>> aside = IntStream.range(0, stretches).parallel()
          .mapToObj(i -> aside(stretch(things, i), tree, scope.aside(), still, maker))
          .toList();
      for (int i = 0; i < stretches; i++) {
        List<T> stretch = stretch(things, i);
        if (aside.get(i).isPresent()) {
          keep(stretch, tree, aside.get(i).get(), scope, values);
        } else {
          inTurn(stretch, tree, scope, still, maker, values);
        }
      }
    } else {
      inTurn(things, tree, scope, still, maker, values);
    }
    return values;
  }

  private static <T> List<T> stretch(List<T> things, int i) {
    return things.subList(i * STRETCH, Math.min(things.size(), (i + 1) * STRETCH));
  }

  private <T> void inTurn(
      List<T> things, Function<T, K> tree, Scope scope, BiFunction<T, V, Optional<V>> still, Function<Scope, Function<T, V>> maker,
      List<V> values) {
    Function<T, V> make = maker.apply(scope);
    things.forEach(t -> values.add(of(tree.apply(t), scope, known -> still.apply(t, known), () -> make.apply(t))));
  }

  /** Absent where something was reported. */
  private <T> Optional<List<Made<V>>> aside(
      List<T> things, Function<T, K> tree, Scope scope, BiFunction<T, V, Optional<V>> still, Function<Scope, Function<T, V>> maker) {
    Function<T, V> make = maker.apply(scope);
    List<Made<V>> all = new ArrayList<>(things.size());
    for (T thing : things) {
      Made<V> known = before.get(tree.apply(thing));
      Optional<V> same = known == null ? Optional.empty() : still.apply(thing, known.value);
      if (same.isPresent()) {
        all.add(known.as(same.get()));
        continue;
      }
      Scope.Moment then = scope.now();
      V value = make.apply(thing);
      Optional<List<String>> assumed = scope.quietSince(then);
      if (assumed.isEmpty()) {
        return Optional.empty();
      }
      all.add(new Made<>(value, assumed.get()));
    }
    return Optional.of(all);
  }

  private <T> void keep(List<T> things, Function<T, K> tree, List<Made<V>> made, Scope scope, List<V> values) {
    for (int i = 0; i < made.size(); i++) {
      made.get(i).assumed.forEach(scope::assume);
      now.put(tree.apply(things.get(i)), made.get(i));
      values.add(made.get(i).value);
    }
  }
}
