package wattle.memo;

import java.lang.ref.SoftReference;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/**
 * Values by key, each made when it is first asked for, once however many threads ask. They may be large, so that one that
 * nobody else holds is let go where memory is short, and is made again if it is asked for after that.
 */
public final class OnceEach<K, T> {
  private final Function<? super K, ? extends T> maker;
  private final Map<K, Held> held = new ConcurrentHashMap<>();

  public OnceEach(Function<? super K, ? extends T> maker) {
    this.maker = maker;
  }

  public T get(K key) {
    return held.computeIfAbsent(key, Held::new).get();
  }

  /** One value; making one keeps nobody from another. */
  private final class Held {
    private final K key;
    private SoftReference<T> made = new SoftReference<>(null);

    private Held(K key) {
      this.key = key;
    }

    private synchronized T get() {
      T known = made.get();
      if (known == null) {
        known = maker.apply(key);
        made = new SoftReference<>(known);
      }
      return known;
    }
  }
}
