package wattle.emit.media.graphviz;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.function.Supplier;

/**
 * Runs a task on a thread with a stack of its own size. Graphviz walks a graph by recursion, as deep as its longest
 * chain of nodes, and a usual Java stack of 1 MB ends after a few thousand of them. The memory is only reserved: what is
 * not used costs nothing.
 */
final class DeepStack {
  private static final long BYTES = 256L << 20;

  /** Starts the task; the process does not wait for it when it ends. */
  static <T> Future<T> start(String name, Supplier<T> task) {
    return CompletableFuture.supplyAsync(task, run -> {
      Thread thread = new Thread(null, run, name, BYTES);
      thread.setDaemon(true);
      thread.start();
    });
  }

  /** Waits for a task, and throws what it threw. */
  static <T> T result(Future<T> task) {
    boolean interrupted = false;
    try {
      while (true) {
        try {
          return task.get();
        } catch (InterruptedException e) {
          interrupted = true; // wasm code cannot be stopped half-way; the caller learns of it when it is done
        } catch (ExecutionException e) {
          if (e.getCause() instanceof RuntimeException cause) {
            throw cause;
          }
          if (e.getCause() instanceof Error cause) {
            throw cause;
          }
          throw new CompletionException(e.getCause());
        }
      }
    } finally {
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private DeepStack() {}
}
