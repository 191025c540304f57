package wattle.cli;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;

/**
 * The same work for each of many names, by all processors, with the results in the order of the names. No more results are there at
 * once than a few for each processor, however many names there are.
 */
final class InOrder {
  private static final int AHEAD = 2;

  private InOrder() {}

  /**
   * @param work done by several threads at once
   * @param then gets each result, in the thread of the caller and in order; false where no more are wanted
   */
  static <N, T> void each(List<N> names, Function<N, T> work, Predicate<T> then) {
    int processors = Runtime.getRuntime().availableProcessors();
    ExecutorService workers = Executors.newFixedThreadPool(Math.max(1, Math.min(processors, names.size())), InOrder::worker);
    try {
      Queue<Future<T>> begun = new ArrayDeque<>();
      Iterator<N> next = names.iterator();
      while (next.hasNext() || !begun.isEmpty()) {
        while (next.hasNext() && begun.size() < processors * AHEAD) {
          N name = next.next();
          begun.add(workers.submit(() -> work.apply(name)));
        }
        if (!then.test(result(begun.remove()))) {
          return;
        }
      }
    } finally {
      workers.shutdownNow();
    }
  }

  /** Two results, worked out side by side; what the first throws is thrown where both do. */
  static <T> List<T> both(Supplier<T> first, Supplier<T> second) {
    List<T> results = new ArrayList<>();
    each(List.of(first, second), Supplier::get, results::add);
    return results;
  }

  private static Thread worker(Runnable task) {
    Thread worker = new Thread(task, "plan");
    worker.setDaemon(true);
    return worker;
  }

  private static <T> T result(Future<T> future) {
    try {
      return future.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new Failure("interrupted");
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException problem) {
        throw problem;
      }
      if (e.getCause() instanceof Error problem) {
        throw problem;
      }
      throw new IllegalStateException("work that throws what it does not declare", e.getCause());
    }
  }
}
