package wattle.fuzz;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

/**
 * Mutants without end and without a measuring of coverage, which costs more than what is measured: arguments are the first seed, how many
 * seconds, a folder for finds, and of how many plans some twenty are tried with more than judging (64 where it is not given). It goes on
 * behind a find, and ends with how many plans it ran from which seed. A plan of one seed is always the same; what a command compares it
 * with is the plan of the seed before.
 */
final class PlanMill {
  private static final Duration HANG = Duration.ofSeconds(5);
  /** On a busy machine a plan takes longer than it works: a hang that waits is told after so long. */
  private static final Duration WAIT = Duration.ofSeconds(60);
  private static final long ROUND = 5_000;
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

  private final PlanMutator mutator;
  private final PlanTarget target;
  private final Path finds;
  private final PrintStream log;
  private final int rarity;
  private final Set<String> kinds = new HashSet<>();
  private volatile long seed;
  private volatile long begun;
  private volatile long worked;
  private volatile int hangs;

  private PlanMill(Path finds, PrintStream log, int rarity) throws IOException {
    mutator = PlanMutator.of(List.of(Path.of("examples"), Path.of("src/test/resources/plans"), Path.of("src/fuzz/corpus")));
    target = new PlanTarget(Files.createTempDirectory("wattle-mill"));
    this.finds = Files.createDirectories(finds);
    this.log = log;
    this.rarity = rarity;
  }

  public static void main(String[] arguments) throws IOException {
    PrintStream log = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    int rarity = arguments.length > 3 ? Integer.parseInt(arguments[3]) : 64;
    new PlanMill(Path.of(arguments[2]), log, rarity).run(Long.parseLong(arguments[0]), Duration.ofSeconds(Long.parseLong(arguments[1])));
  }

  private void run(long first, Duration length) throws IOException {
    long start = System.nanoTime();
    long worker = Thread.currentThread().getId();
    Thread watch = new Thread(() -> watch(worker), "hang");
    watch.setDaemon(true);
    watch.start();
    seed = first;
    while (System.nanoTime() - start < length.toNanos()) {
      begun = System.nanoTime();
      worked = THREADS.getCurrentThreadCpuTime();
      one(seed);
      seed++;
      if ((seed - first) % ROUND == 0) {
        tell(first, start);
      }
    }
    tell(first, start);
  }

  private void one(long at) throws IOException {
    Random random = new Random(at);
    String text = mutator.small(random);
    String why;
    try {
      target.takeQuickly(text, random, rarity);
      return;
    } catch (RuntimeException | AssertionError | StackOverflowError e) {
      why = e + "\n" + Optional.of(e.getStackTrace()).filter(t -> t.length > 0).map(t -> t[0].toString()).orElse("");
    }
    Files.writeString(finds.resolve(at + ".wattle"), text);
    Files.writeString(finds.resolve(at + ".before.wattle"), mutator.small(new Random(at - 1)));
    Files.writeString(finds.resolve(at + ".txt"), why);
    if (kinds.add(why.replaceAll("[0-9]+", "0").substring(0, Math.min(60, why.length())))) {
      log.println("seed " + at + ": " + why);
    }
  }

  /** Tells of a plan that takes longer than it may, while it does. */
  private void watch(long worker) {
    long told = -1;
    while (true) {
      long asleep = System.nanoTime();
      try {
        Thread.sleep(HANG.toMillis() / 5);
      } catch (InterruptedException e) {
        return;
      }
      if (System.nanoTime() - asleep > HANG.toNanos()) {
        begun = System.nanoTime(); // the whole process was held, and not the plan
      }
      long at = seed;
      long cost = THREADS.getThreadCpuTime(worker) - worked;
      if (told != at && (cost > HANG.toNanos() || System.nanoTime() - begun > WAIT.toNanos()) && seed == at) {
        told = at;
        hangs++;
        log.println("seed " + at + " takes longer than " + HANG.toSeconds() + " s of a processor, or " + WAIT.toSeconds() + " s in all");
      }
    }
  }

  private void tell(long first, long start) {
    double seconds = (System.nanoTime() - start) / 1e9;
    log.println(
        String.format(Locale.ROOT, "%d plans from seed %d in %.0f s, %.0f a second, %d kinds of finds, %d hangs", seed - first, first,
            seconds, (seed - first) / seconds, kinds.size(), hangs));
  }
}
