package wattle.trials;

import java.util.function.Supplier;

/** A value that is worked out when it is first asked for, and kept. */
final class Once<T> implements Supplier<T> {
  private Supplier<T> maker;
  private T value;

  Once(Supplier<T> maker) {
    this.maker = maker;
  }

  @Override
  public synchronized T get() {
    if (maker != null) {
      value = maker.get();
      maker = null;
    }
    return value;
  }
}
