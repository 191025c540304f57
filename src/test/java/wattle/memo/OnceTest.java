package wattle.memo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class OnceTest {
  @Test
  void itIsMadeWhenItIsAskedForAndNotBefore() {
    AtomicInteger made = new AtomicInteger();
    Once<Integer> once = new Once<>(made::incrementAndGet);
    assertThat(made).hasValue(0);
    assertThat(once.get()).isEqualTo(1);
    assertThat(once.get()).isEqualTo(1);
    assertThat(made).hasValue(1);
  }

  @Test
  void manyThreadsGetOneValue() throws Exception {
    AtomicInteger made = new AtomicInteger();
    Once<Object> once = new Once<>(() -> {
      made.incrementAndGet();
      return new Object();
    });
    OnceEach<String, Object> each = new OnceEach<>(key -> {
      made.incrementAndGet();
      return new Object();
    });
    ExecutorService threads = Executors.newFixedThreadPool(8);
    try {
      List<Callable<List<Object>>> asking = IntStream.range(0, 64)
          .mapToObj(i -> (Callable<List<Object>>) () -> List.of(once.get(), each.get("a"), each.get("b"))).toList();
      List<Object> first = List.of(once.get(), each.get("a"), each.get("b"));
      for (Future<List<Object>> got : threads.invokeAll(asking)) {
        assertThat(got.get()).usingElementComparator((a, b) -> a == b ? 0 : 1).containsExactlyElementsOf(first);
      }
    } finally {
      threads.shutdownNow();
    }
    assertThat(made).hasValue(3);
  }

  @Test
  void aMakerThatFailsIsAskedAgain() {
    AtomicInteger asked = new AtomicInteger();
    Once<String> once = new Once<>(() -> {
      if (asked.incrementAndGet() == 1) {
        throw new IllegalStateException("not yet");
      }
      return "made";
    });
    assertThatThrownBy(once::get).hasMessage("not yet");
    assertThat(once.get()).isEqualTo("made");
  }

  @Test
  @SuppressWarnings({"unchecked", "rawtypes"})
  void makingOneOfSeveralKeepsNobodyFromAnother() {
    OnceEach<Integer, Integer>[] each = new OnceEach[1];
    each[0] = new OnceEach<>(n -> n == 0 ? 1 : each[0].get(n - 1) + 1);
    assertThat(each[0].get(40)).isEqualTo(41);
  }
}
