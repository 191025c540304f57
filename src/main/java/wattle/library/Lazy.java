package wattle.library;

import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * An unchangeable map whose values are made when they are first asked for. A plan needs a few of the standard library's
 * hundreds of things; to make the others would take longer than to check the plan.
 */
final class Lazy<V> extends AbstractMap<String, V> {
  /** In the order of the map; never changed once the map is made. */
  private final Map<String, Supplier<V>> makers;

  private final Map<String, V> made = new ConcurrentHashMap<>();

  Lazy(Map<String, Supplier<V>> makers) {
    this.makers = new LinkedHashMap<>(makers);
  }

  /** These with others laid over them: of two values with one name the other's stands. */
  static <V> Lazy<V> over(Map<String, V> base, Map<String, V> above) {
    Map<String, Supplier<V>> joined = new LinkedHashMap<>();
    add(joined, base);
    add(joined, above);
    return new Lazy<>(joined);
  }

  private static <V> void add(Map<String, Supplier<V>> makers, Map<String, V> map) {
    if (map instanceof Lazy<V> lazy) {
      lazy.makers.keySet().forEach(name -> makers.put(name, new Entry<>(lazy, name)));
    } else {
      map.forEach((name, value) -> makers.put(name, () -> value));
    }
  }

  @Override
  public V get(Object name) {
    Supplier<V> maker = name == null ? null : makers.get(name);
    return maker == null ? null : made.computeIfAbsent((String) name, n -> maker.get());
  }

  @Override
  public boolean containsKey(Object name) {
    return makers.containsKey(name);
  }

  @Override
  public Set<String> keySet() {
    return java.util.Collections.unmodifiableSet(makers.keySet());
  }

  @Override
  public Set<Map.Entry<String, V>> entrySet() {
    return new AbstractSet<>() {
      @Override
      public Iterator<Map.Entry<String, V>> iterator() {
        return makers.keySet().stream().map(n -> Map.entry(n, get(n))).iterator();
      }

      @Override
      public int size() {
        return makers.size();
      }
    };
  }

  /** A value of another lazy map, so that what two maps share is made once. */
  private record Entry<V>(Lazy<V> map, String name) implements Supplier<V> {
    @Override
    public V get() {
      return map.get(name);
    }
  }
}
