package wattle.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.ChainedOptionsBuilder;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * The ratios that the project holds itself to, in one table and about five minutes: whole processes in turn with a bare Java machine, a
 * long plan beside ANTLR's bare parser, key strokes, documents beside a check, and many plans in one call. Each is of one sitting, so that
 * another machine gives about the same.
 */
final class Ratios {
  private static final int ROUNDS = 9;
  private static final int FEW_PLANS = 200;
  private static final int MANY_PLANS = 2000;
  private static final String PLAN = "examples/alder-court/house.wattle";

  private final List<String> rows = new ArrayList<>();

  private Ratios() {}

  /** Measures, and prints the table. */
  static void print() throws IOException, InterruptedException, RunnerException {
    Ratios ratios = new Ratios();
    Path folder = Files.createTempDirectory("wattle-ratios");
    try {
      ratios.processes(folder);
      ratios.plans(folder);
    } finally {
      delete(folder);
    }
    ratios.longPlan();
    ratios.keyStrokes();
    System.out.println();
    System.out.println("| what | time | ratio | aim |");
    System.out.println("| --- | --- | --- | --- |");
    ratios.rows.forEach(System.out::println);
  }

  private void row(String what, double milliseconds, String against, double ratio, String aim) {
    rows.add(String.format("| %s | %.1f ms | %.2f × %s | %s |", what, milliseconds, ratio, against, aim));
  }

  // ---- Whole processes

  private void processes(Path folder) throws IOException, InterruptedException {
    Path repository = repository(folder.resolve("repository"));
    String wattle = Path.of("bin", "wattle").toAbsolutePath().toString();
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Map<String, List<String>> commands = new LinkedHashMap<>();
    commands.put("hello",
        List.of(java, "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-cp", "target/test-classes", Hello.class.getName()));
    commands.put("version", List.of(wattle, "--version"));
    commands.put("check", List.of(wattle, "check", PLAN));
    commands.put("cottage", List.of(wattle, "check", "examples/cottage/house.wattle"));
    commands.put("picture", List.of(wattle, "draw", "--view", "one-line", "--force", "--out", folder.resolve("o.svg").toString(), PLAN));
    commands.put("git", List.of("git", "-C", repository.toString(), "-c", "diff.wattle.command=" + wattle + " compare --as-driver", "diff",
        "--ext-diff"));
    commands.put("report", List.of(wattle, "report", PLAN, "--pdf", "--force", "--out", folder.resolve("report").toString()));
    Map<String, List<Double>> times = new LinkedHashMap<>();
    for (int round = -1; round < ROUNDS; round++) {
      for (Map.Entry<String, List<String>> command : commands.entrySet()) {
        double took = run(command.getValue());
        if (round >= 0) {
          times.computeIfAbsent(command.getKey(), k -> new ArrayList<>()).add(took);
        }
      }
    }
    double hello = median(times.get("hello"));
    double check = median(times.get("check"));
    row("`wattle --version`", median(times.get("version")), "a bare Java machine", median(times.get("version")) / hello, "");
    row("`wattle check` of Alder Court, cold", check, "a bare Java machine", check / hello, "4");
    row("`wattle check` of the cottage, cold", median(times.get("cottage")), "a bare Java machine", median(times.get("cottage")) / hello,
        "4");
    row("`wattle draw --view one-line`, cold", median(times.get("picture")), "check", median(times.get("picture")) / check, "1.5");
    row("`git diff` of one file", median(times.get("git")), "check", median(times.get("git")) / check, "2");
    row("`wattle report --pdf`, cold", median(times.get("report")), "check", median(times.get("report")) / check, "");
  }

  /** A repository in which one line of the example house has changed since its one commit. */
  private static Path repository(Path at) throws IOException, InterruptedException {
    Files.createDirectories(at);
    for (String file : List.of("house.wattle", "rooms.wattle", "garage.wattle")) {
      Files.copy(Path.of(PLAN).resolveSibling(file), at.resolve(file));
    }
    Files.writeString(at.resolve(".gitattributes"), "*.wattle diff=wattle\n");
    List<String> git = List.of("git", "-C", at.toString(), "-c", "user.name=bench", "-c", "user.email=bench@localhost");
    for (List<String> step : List.of(List.of("init", "-q"), List.of("add", "."), List.of("commit", "-q", "-m", "first"))) {
      run(Stream.concat(git.stream(), step.stream()).toList());
    }
    String house = Files.readString(at.resolve("house.wattle"));
    Files.writeString(at.resolve("house.wattle"), house.replaceFirst("9 m", "12 m"));
    return at;
  }

  private void plans(Path folder) throws IOException, InterruptedException {
    String wattle = Path.of("bin", "wattle").toAbsolutePath().toString();
    String plan = Files.readString(Path.of("examples/cottage/house.wattle"));
    double few = run(List.of(wattle, "check", copies(folder.resolve("few"), plan, FEW_PLANS).toString()));
    double many = run(List.of(wattle, "check", copies(folder.resolve("many"), plan, MANY_PLANS).toString()));
    double each = (many - few) / (MANY_PLANS - FEW_PLANS);
    row("one more plan of " + MANY_PLANS + " in one call, " + Math.round(1000 / each) + " plans a second", each, "one of the first "
        + FEW_PLANS, each / (few / FEW_PLANS), "1");
  }

  private static Path copies(Path folder, String plan, int count) throws IOException {
    Files.createDirectories(folder);
    for (int i = 0; i < count; i++) {
      Files.writeString(folder.resolve("house" + i + ".wattle"), plan);
    }
    return folder;
  }

  /** Milliseconds from the start to the end of a process. */
  private static double run(List<String> command) throws IOException, InterruptedException {
    long begun = System.nanoTime();
    int code = new ProcessBuilder(command)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start()
        .waitFor();
    if (code > 1) {
      throw new IOException(String.join(" ", command) + " ended with code " + code);
    }
    return (System.nanoTime() - begun) / 1e6;
  }

  private static double median(List<Double> times) {
    return times.stream().sorted().skip(times.size() / 2).findFirst().orElseThrow();
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }

  // ---- In one process, warm

  private void longPlan() throws RunnerException {
    Collection<RunResult> results = measure(CompileBench.class, 3, "linesThroughAntlrAlone", "linesToHouse", "linesToFindings");
    double alone = score(results, "linesThroughAntlrAlone");
    row("100,000 lines to the house", score(results, "linesToHouse"), "ANTLR alone", score(results, "linesToHouse") / alone, "");
    row("100,000 lines to all findings", score(results, "linesToFindings"), "ANTLR alone", score(results, "linesToFindings") / alone, "2");
  }

  private void keyStrokes() throws RunnerException {
    Collection<RunResult> results = new Runner(options(KeyStrokeBench.class, 4, "stroke").param("faulty", "true").jvmArgsAppend("-Xmx512m")
        .build()).run();
    for (RunResult result : results) {
      double typical = result.getPrimaryResult().getStatistics().getPercentile(50);
      double slow = result.getPrimaryResult().getStatistics().getPercentile(95);
      row("key stroke in 10,000 lines with 900 errors, at a " + result.getParams().getParam("at").toLowerCase(java.util.Locale.ROOT)
          + ", 95th percentile", slow, "its median", slow / typical, "16 ms");
    }
  }

  private static Collection<RunResult> measure(Class<?> bench, int seconds, String... methods) throws RunnerException {
    return new Runner(options(bench, seconds, methods).build()).run();
  }

  private static ChainedOptionsBuilder options(Class<?> bench, int seconds, String... methods) {
    OptionsBuilder options = new OptionsBuilder();
    Arrays.stream(methods).forEach(m -> options.include(bench.getName().replace(".", "\\.") + "\\." + m + "$"));
    return options.forks(1).warmupIterations(3).warmupTime(TimeValue.seconds(seconds)).measurementIterations(3)
        .measurementTime(TimeValue.seconds(seconds)).shouldFailOnError(true).verbosity(VerboseMode.SILENT);
  }

  private static double score(Collection<RunResult> results, String method) {
    Predicate<RunResult> mine = r -> r.getParams().getBenchmark().endsWith("." + method);
    return results.stream().filter(mine).findFirst().orElseThrow().getPrimaryResult().getScore();
  }
}
