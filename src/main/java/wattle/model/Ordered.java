package wattle.model;

import java.util.AbstractMap;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;

/**
 * An unchangeable map by name, in the order written; copied when it is made and not again when it is handed on. Map.copyOf
 * would lose the order.
 */
final class Ordered<T> extends AbstractMap<String, T> {
  private final Map<String, T> map;

  private Ordered(Map<String, T> map) {
    this.map = Collections.unmodifiableMap(map);
  }

  static <T> Map<String, T> copyOf(Map<String, T> map) {
    return map instanceof Ordered ? map : new Ordered<>(new LinkedHashMap<>(map));
  }

  /** @param map which nobody else may hold */
  static <T> Map<String, T> taking(LinkedHashMap<String, T> map) {
    return new Ordered<>(map);
  }

  @Override
  public T get(Object name) {
    return map.get(name);
  }

  @Override
  public boolean containsKey(Object name) {
    return map.containsKey(name);
  }

  @Override
  public int size() {
    return map.size();
  }

  @Override
  public Set<String> keySet() {
    return map.keySet();
  }

  @Override
  public Collection<T> values() {
    return map.values();
  }

  @Override
  public Set<Map.Entry<String, T>> entrySet() {
    return map.entrySet();
  }

  @Override
  public void forEach(BiConsumer<? super String, ? super T> action) {
    map.forEach(action);
  }
}
