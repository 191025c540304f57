package wattle.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Warmup;

/** Whole processes, from the launcher to the exit; run from the project's folder after the jar was packaged. */
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3)
@Measurement(iterations = 20)
public class StartBench {

  /** What the Java machine itself takes to say one line. */
  @Benchmark
  public int bareJava() throws Exception {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    return run(java, "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-cp", "target/test-classes", Hello.class.getName());
  }

  @Benchmark
  public int version() throws Exception {
    return run("bin/wattle", "--version");
  }

  @Benchmark
  public int check() throws Exception {
    return run("bin/wattle", "check", "examples/alder-court/house.wattle");
  }

  /** The report as a page: compile, lay out, draw, tables, worksheets, trials. */
  @Benchmark
  public int report() throws Exception {
    return run("bin/wattle", "report", "examples/alder-court/house.wattle", "--force", "--out", "target/bench-report");
  }

  /** The page and the same for paper. */
  @Benchmark
  public int reportAndPaper() throws Exception {
    return run("bin/wattle", "report", "examples/alder-court/house.wattle", "--pdf", "--force", "--out", "target/bench-report");
  }

  private static int run(String... command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
    int code = process.waitFor();
    if (code != 0) {
      throw new IOException(String.join(" ", command) + " ended with code " + code);
    }
    return code;
  }
}
