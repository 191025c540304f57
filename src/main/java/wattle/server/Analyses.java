package wattle.server;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import wattle.bind.Reading;
import wattle.bind.SourceReader;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;

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
  private final Map<Path, Known> latest = new HashMap<>();
  private final Map<Path, Reading> readings = new HashMap<>();

  /**
   * What is known of a plan.
   *
   * @param judgements of the phases that judge, not placed: of this text where it has been judged, else of one before it
   */
  private record Known(Analysis analysis, Compilation structure, List<Finding> judgements, boolean judged) {}

  /** Runs a task among the questions; only such tasks may touch what this object gives out. */
  void run(Runnable task) {
    try {
      thread.execute(task);
    } catch (RejectedExecutionException e) {
      return; // the session has ended, and nobody waits for the task
    }
  }

  /** Forgets what was compiled: files have changed beside the editor. For tasks on this thread. */
  void forget() {
    latest.clear();
  }

  /** Which plan each file is part of; for tasks on this thread. */
  Plans plans() {
    return plans;
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

  /**
   * What was read and bound; of what the later phases judge, so much as they said the last time of parts of the text that
   * have not changed since. {@link #judge} brings the rest, for which nobody who types should wait.
   */
  private Optional<Analysis> compiled(Path plan, Buffers buffers) {
    Known known = latest.get(plan);
    if (known != null && known.analysis.holds(buffers)) {
      return Optional.of(known.analysis);
    }
    try {
      Compilation structure = compiler(plan, buffers).structure(plan);
      List<Finding> judgements = known == null ? List.of() : known.judgements;
      List<Finding> standing = judgements.stream().filter(structure.placement()::holds).toList();
      Analysis made = new Analysis(plan, buffers, structure.with(standing));
      latest.put(plan, new Known(made, structure, judgements, false));
      plans.learn(made);
      return Optional.of(made);
    } catch (SourceReader.Unreadable e) {
      latest.remove(plan);
      return Optional.empty();
    }
  }

  /** The plan that a file is part of, with all that every phase finds; for tasks on this thread. */
  Optional<Analysis> judge(Path file, Buffers buffers) {
    Optional<Analysis> analysis = of(file, buffers);
    if (analysis.isEmpty() || latest.get(analysis.get().plan()).judged) {
      return analysis;
    }
    Path plan = analysis.get().plan();
    Known known = latest.get(plan);
    List<Finding> judgements = compiler(plan, buffers).judgements(known.structure);
    Analysis made = known.analysis.judged(known.structure.with(judgements));
    latest.put(plan, new Known(made, known.structure, judgements, true));
    return Optional.of(made);
  }

  private Compiler compiler(Path plan, Buffers buffers) {
    return new Compiler(buffers.reader(), readings.computeIfAbsent(plan, p -> new Reading.Remembering()));
  }

  @Override
  public void close() {
    thread.shutdownNow();
  }
}
