package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Results in order whichever is ready first, and few of them at once. */
class InOrderTest {
  private static final List<String> NAMES = IntStream.range(0, 5000).mapToObj(String::valueOf).toList();

  @Test
  void resultsComeInTheOrderOfTheNames() {
    List<String> got = new ArrayList<>();
    InOrder.each(NAMES, name -> {
      if (name.endsWith("7")) {
        Thread.yield();
      }
      return name;
    }, got::add);
    assertThat(got).isEqualTo(NAMES);
  }

  @Test
  void howManyAreHeldDoesNotGrowWithTheNames() {
    AtomicInteger held = new AtomicInteger();
    AtomicInteger most = new AtomicInteger();
    InOrder.each(NAMES, name -> {
      most.accumulateAndGet(held.incrementAndGet(), Math::max);
      return name;
    }, name -> held.decrementAndGet() >= 0);
    assertThat(held.get()).isZero();
    assertThat(most.get()).isBetween(1, 2 * Runtime.getRuntime().availableProcessors() + 1);
  }

  @Test
  void whatWorkThrowsIsThrown() {
    assertThatThrownBy(() -> InOrder.each(NAMES, name -> {
      throw new Failure("cannot " + name);
    }, name -> true)).isInstanceOf(Failure.class).hasMessage("cannot 0");
    InOrder.each(List.of(), name -> name, name -> {
      throw new AssertionError("nothing is there");
    });
  }

  @Test
  void nothingIsBegunForAReaderWhoHasGone() {
    AtomicInteger begun = new AtomicInteger();
    InOrder.each(NAMES, name -> begun.incrementAndGet(), each -> false);
    assertThat(begun.get()).isBetween(1, 2 * Runtime.getRuntime().availableProcessors());
  }
}
