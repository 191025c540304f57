package wattle.server;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Function;
import org.eclipse.lsp4j.jsonrpc.CompletableFutures;
import wattle.bind.Reading;
import wattle.bind.SourceReader;
import wattle.compiler.Compiler;

/**
 * The one thread that compiles, and what it has compiled last. Everything asked of it is answered in the order asked, each
 * for the texts as they stood at that moment.
 */
final class Analyses implements AutoCloseable {
  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(
          task -> {
            // The stack is as deep as the main thread's often is not: an expression may nest.
            Thread made = new Thread(null, task, "wattle plans", 16L << 20);
            made.setDaemon(true);
            return made;
          });

  private final Plans plans = new Plans();
  private final Map<Path, Analysis> latest = new HashMap<>();
  private final Map<Path, Reading> readings = new HashMap<>();

  /** Runs a task among the questions; only such tasks may touch what this object gives out. */
  void run(Runnable task) {
    thread.execute(task);
  }

  /** Which plan each file is part of; for tasks on this thread. */
  Plans plans() {
    return plans;
  }

  /** Answers a question about the plan that a file is part of; absent where it can be read no more. */
  <T> CompletableFuture<T> ask(Path file, Buffers buffers, Function<Optional<Analysis>, T> question) {
    return CompletableFutures.computeAsync(
        thread,
        cancel -> {
          cancel.checkCanceled();
          return question.apply(of(file, buffers));
        });
  }

  /** The plan that a file is part of, compiled; for tasks on this thread. */
  Optional<Analysis> of(Path file, Buffers buffers) {
    Path plan = plans.planOf(file, buffers);
    Optional<Analysis> analysis = compiled(plan, buffers);
    if (plan.equals(file) || analysis.flatMap(a -> a.tree(file)).isPresent()) {
      return analysis;
    }
    // The plan that used it has stopped doing so, or is gone.
    analysis.ifPresentOrElse(plans::learn, () -> plans.explore(file, buffers));
    return compiled(plans.planOf(file, buffers), buffers).filter(a -> a.tree(file).isPresent()).or(() -> compiled(file, buffers));
  }

  private Optional<Analysis> compiled(Path plan, Buffers buffers) {
    Analysis known = latest.get(plan);
    if (known != null && known.holds(buffers)) {
      return Optional.of(known);
    }
    try {
      Reading reading = readings.computeIfAbsent(plan, p -> new Reading.Remembering());
      Analysis made = new Analysis(plan, buffers, new Compiler(buffers.reader(), reading).compile(plan));
      latest.put(plan, made);
      plans.learn(made);
      return Optional.of(made);
    } catch (SourceReader.Unreadable e) {
      latest.remove(plan);
      return Optional.empty();
    }
  }

  @Override
  public void close() {
    thread.shutdownNow();
  }
}
