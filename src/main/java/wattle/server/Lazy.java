package wattle.server;

import java.util.function.Supplier;

/** Something that is computed when it is first asked for; for one thread. */
final class Lazy<T> {
  private final Supplier<T> source;
  private T value;

  Lazy(Supplier<T> source) {
    this.source = source;
  }

  T get() {
    if (value == null) {
      value = source.get();
    }
    return value;
  }
}
