package wattle.cli;

import java.util.ArrayDeque;
import java.util.Iterator;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import java.util.function.Predicate;

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
  static <T> void each(List<String> names, Function<String, T> work, Predicate<T> then) {
    int processors = Runtime.getRuntime().availableProcessors();
    ExecutorService workers = Executors.newFixedThreadPool(Math.max(1, Math.min(processors, names.size())), InOrder::worker);
    try {
      Queue<Future<T>> begun = new ArrayDeque<>();
      Iterator<String> next = names.iterator();
      while (next.hasNext() || !begun.isEmpty()) {
        while (next.hasNext() && begun.size() < processors * AHEAD) {
          String name = next.next();
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
