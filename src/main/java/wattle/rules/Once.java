package wattle.rules;

import java.util.function.Supplier;

/** A value that is made when it is first asked for, and once for all threads. */
final class Once<T> {
  private final Supplier<T> make;
  private volatile T made;

  Once(Supplier<T> make) {
    this.make = make;
  }

  T get() {
    T known = made;
    return known == null ? first() : known;
  }

  private synchronized T first() {
    if (made == null) {
      made = make.get();
    }
    return made;
  }
}
