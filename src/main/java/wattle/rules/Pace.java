package wattle.rules;

import java.util.Collection;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * How much of a machine a judging may take, and how long. Where somebody waits for it, it takes every processor and goes on to the end;
 * behind somebody who types it keeps to its own thread and stops where the text has changed.
 */
public final class Pace {
  /** On every processor, to the end. */
  public static final Pace WHOLE = new Pace(true, () -> true);

  private final boolean shared;
  private final BooleanSupplier wanted;

  private Pace(boolean shared, BooleanSupplier wanted) {
    this.shared = shared;
    this.wanted = wanted;
  }

  /**
   * On the thread that judges alone.
   *
   * @param wanted whether anybody still waits for it; asked often, so that it must be quick
   */
  public static Pace beside(BooleanSupplier wanted) {
    return new Pace(false, wanted);
  }

  /** What is to be done, on as many processors as may be used. */
  public <T> Stream<T> over(Collection<T> things) {
    return shared ? things.parallelStream() : things.stream();
  }

  IntStream over(int count) {
    IntStream all = IntStream.range(0, count);
    return shared ? all.parallel() : all;
  }

  /** @throws CancellationException where nobody waits any longer */
  public void goOn() {
    if (!wanted.getAsBoolean()) {
      throw new CancellationException("the text has changed");
    }
  }
}
