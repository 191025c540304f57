package wattle.memo;

import java.util.function.Supplier;

/** A value that is made when it is first asked for, once however many threads ask, and then kept; it is never null. */
public final class Once<T> implements Supplier<T> {
  private volatile T made;
  /** Let go when the value is there, with all that it holds on to. */
  private Supplier<? extends T> maker;

  public Once(Supplier<? extends T> maker) {
    this.maker = maker;
  }

  @Override
  public T get() {
    T known = made;
    return known == null ? first() : known;
  }

  private synchronized T first() {
    if (made == null) {
      made = maker.get();
      maker = null;
    }
    return made;
  }
}
