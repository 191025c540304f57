package wattle.server;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.PriorityBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.Judgments;
import wattle.finding.Finding;
import wattle.read.Reading;
import wattle.read.SourceReader;
import wattle.rules.Pace;

/**
 * The one thread that compiles and answers, and what it has compiled last. Everything asked of it is answered in the order
 * asked, each for the texts as they stood at that moment. What the later phases judge is worked out on a second thread, since
 * nobody who types should wait for it.
 */
final class Analyses implements AutoCloseable {
  /** Longer than this nobody's judgments are held back. */
  private static final Duration LONGEST_PAUSE = Duration.ofMillis(400);

  /** What is kept of a plan takes some 75 bytes for each character of its text, and as much again while it is made. */
  private static final int BYTES_OF_A_CHARACTER = 150;

  private final long room = Runtime.getRuntime().maxMemory() / BYTES_OF_A_CHARACTER;
  private final ExecutorService thread = thread("plans");
  private final ExecutorService judges = new ThreadPoolExecutor(
      1, 1, 0, TimeUnit.SECONDS, new PriorityBlockingQueue<>(), task -> made(task, "judgments"));
  private final Map<Path, Long> attention = new ConcurrentHashMap<>();
  private final AtomicLong attended = new AtomicLong();
  private final Plans plans = new Plans();
  private final Map<Path, Known> latest = new HashMap<>();
  private final Map<Path, Reading> readings = new HashMap<>();
  private final Map<Path, Duration> lastJudging = new ConcurrentHashMap<>();

  /**
   * What is known of a plan.
   *
   * @param judgments of the phases that judge, not placed: of this text where it has been judged, else of one before it; of
   *     rules that are not asked while the plan has an error in it, of the last text without one
   * @param judged the analysis with all of them, begun when it is first asked for; canceled where another text comes first
   * @param since when this text was first looked at
   */
  private record Known(Analysis analysis, Compilation structure, List<Finding> judgments, Optional<CompletableFuture<Analysis>> judged,
      Instant since) {}

  /** A plan to be judged: that of the file which was attended to last comes first. */
  private record Judging(long attended, Runnable task) implements Runnable, Comparable<Judging> {
    @Override
    public void run() {
      task.run();
    }

    @Override
    public int compareTo(Judging other) {
      return Long.compare(other.attended, attended);
    }
  }

  private static ExecutorService thread(String name) {
    return Executors.newSingleThreadExecutor(task -> made(task, name));
  }

  private static Thread made(Runnable task, String name) {
    // The stack is as deep as the main thread's often is not: an expression may nest.
    Thread made = new Thread(null, task, "wattle " + name, 16L << 20);
    made.setDaemon(true);
    return made;
  }

  /** Notes that somebody works on a file; of many that are open it is looked at first. For any thread. */
  void attend(Path file) {
    attention.put(file, attended.incrementAndGet());
  }

  /** Files, the one that was attended to last first. */
  List<Path> byAttention(Collection<Path> files) {
    return files.stream().sorted(Comparator.comparingLong((Path f) -> attention.getOrDefault(f, 0L)).reversed()).toList();
  }

  /**
   * Of open files those that there is memory for at once, the one that was attended to last first and at least that one: the others are
   * looked at when somebody works on them.
   */
  List<Path> fitting(Buffers buffers) {
    List<Path> fitting = new ArrayList<>();
    long used = 0;
    for (Path file : byAttention(buffers.open().keySet())) {
      used += buffers.at(file).map(b -> (long) b.text().length()).orElse(0L);
      if (used > room && !fitting.isEmpty()) {
        break;
      }
      fitting.add(file);
    }
    return fitting;
  }

  /** Forgets plans until there is room for another, those first that nobody has attended to for longest. */
  private void makeRoomFor(Path plan, Buffers buffers) {
    long used = buffers.at(plan).map(b -> (long) b.text().length()).orElse(0L)
        + latest.values().stream().mapToLong(known -> known.analysis.size()).sum();
    List<Path> others = latest.keySet().stream().filter(p -> !p.equals(plan))
        .sorted(Comparator.comparingLong((Path p) -> attendedTo(latest.get(p)))).toList();
    for (Path other : others) {
      if (used <= room) {
        return;
      }
      used -= latest.get(other).analysis.size();
      forget(other);
      readings.remove(other);
    }
  }

  private long attendedTo(Known known) {
    return known.analysis.files().keySet().stream().mapToLong(f -> attention.getOrDefault(f, 0L)).max().orElse(0);
  }

  /** Forgets all that is kept, since memory has run out. For tasks on this thread. */
  void letGo() {
    forget();
    readings.clear();
  }

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
    latest.keySet().stream().toList().forEach(this::forget);
  }

  /** Forgets a plan; whoever waits for its judgments learns that they will not come. */
  private Optional<Known> forget(Path plan) {
    Optional<Known> known = Optional.ofNullable(latest.remove(plan));
    known.flatMap(Known::judged).ifPresent(judged -> judged.cancel(false));
    return known;
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
    List<Finding> judgments = forget(plan).map(Known::judgments).orElse(List.of());
    makeRoomFor(plan, buffers);
    try {
      Compilation structure = compiler(plan, buffers).structure(plan);
      Analysis made = new Analysis(plan, buffers, structure.with(Standing.shown(judgments, structure)));
      latest.put(plan, new Known(made, structure, judgments, Optional.empty(), Instant.now()));
      plans.learn(made);
      return Optional.of(made);
    } catch (SourceReader.Unreadable e) {
      return Optional.empty();
    }
  }

  /**
   * The plan that a file is part of, with all that every phase finds; absent where it cannot be read. For tasks on this
   * thread, on which the answer comes too. Canceled where the plan changes before it is judged. Once the answer is there,
   * {@link #of} gives the same.
   */
  Optional<CompletableFuture<Analysis>> judged(Path file, Buffers buffers) {
    return of(file, buffers).map(a -> latest.get(a.plan())).map(known -> known.judged.orElseGet(() -> judge(known, file, buffers)));
  }

  private CompletableFuture<Analysis> judge(Known known, Path file, Buffers buffers) {
    Path plan = known.analysis.plan();
    CompletableFuture<Analysis> judged = new CompletableFuture<>();
    latest.put(plan, new Known(known.analysis, known.structure, known.judgments, Optional.of(judged), known.since));
    Compiler compiler = compiler(plan, buffers);
    Executor whenQuiet = task -> judges.execute(new Judging(attention.getOrDefault(file, 0L), task));
    CompletableFuture.delayedExecutor(pause(known).toNanos(), TimeUnit.NANOSECONDS, whenQuiet).execute(
        () -> {
          if (judged.isDone()) {
            return; // another text has come before this one was looked at
          }
          Instant begun = Instant.now();
          try {
            Judgments judgments = compiler.judgments(known.structure, Pace.beside(() -> !judged.isDone()));
            lastJudging.put(plan, Duration.between(begun, Instant.now()));
            run(() -> settle(known, judgments, judged));
          } catch (CancellationException e) {
            return; // whoever waited for it has learned that it will not come
          } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            run(() -> judged.completeExceptionally(e));
          }
        });
    return judged;
  }

  /**
   * How long the text must still stand before it is worth judging: as long as judging took the last time. A small plan is judged at each
   * key stroke, a large one when the typist pauses, since it would be thrown away and take a processor from the next stroke.
   */
  private Duration pause(Known known) {
    Duration took = lastJudging.getOrDefault(known.analysis.plan(), Duration.ZERO);
    Duration stood = Duration.between(known.since, Instant.now());
    Duration left = (took.compareTo(LONGEST_PAUSE) < 0 ? took : LONGEST_PAUSE).minus(stood);
    return left.isNegative() ? Duration.ZERO : left;
  }

  private void settle(Known known, Judgments judgments, CompletableFuture<Analysis> judged) {
    if (!judged.isDone()) {
      List<Finding> kept = Standing.kept(known.judgments, judgments, known.structure);
      Analysis made = known.analysis.judged(known.structure.with(Standing.shown(kept, known.structure)));
      latest.put(made.plan(), new Known(made, known.structure, kept, Optional.of(judged), known.since));
      judged.complete(made);
    }
  }

  private Compiler compiler(Path plan, Buffers buffers) {
    return new Compiler(buffers.reader(), readings.computeIfAbsent(plan, p -> new Reading.Remembering()));
  }

  @Override
  public void close() {
    thread.shutdownNow();
    judges.shutdownNow();
  }
}
