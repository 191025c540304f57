package wattle.bench;

import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.model.House;
import wattle.read.SourceReader;

/** A tower whose text is some forty lines, whatever its height: placed, bound and judged, and what of it stays in memory. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = "-Xmx3g")
@Warmup(iterations = 3, time = 5)
@Measurement(iterations = 5, time = 5)
public class PatternBench {
  /** Towers beyond what patterns usually may place. */
  private static final SourceReader ANY_NUMBER = new SourceReader(Map.of(), SourceReader.USUAL_MOST_BYTES, 1_000_000);

  private final Path path = Path.of("tower.wattle");

  @Param({"1000", "2000", "4000", "8000"})
  private int flats;

  private Source text;

  @Setup
  public void tower() {
    text = new Source("tower.wattle", PlacedFlats.plan(flats));
    Compilation bound = bind();
    if (bound.findings().stream().anyMatch(f -> f.severity() == Severity.ERROR)) {
      throw new IllegalStateException(bound.findings().get(0).toString());
    }
    House house = bound.house();
    long things = house.panels().size() + house.branches().size() + house.rooms().size() + house.boxes().size() + house.devices().size()
        + house.dwellings().size();
    System.out.println(text.lineCount() + " lines written, " + things + " things bound, " + heldBytes() / things + " bytes held for each");
  }

  /** What a bound tower keeps reachable, by the collector's own account. */
  private long heldBytes() {
    long before = used();
    Compilation bound = bind();
    long after = used();
    if (bound.house().panels().isEmpty()) {
      throw new IllegalStateException("nothing was bound");
    }
    return after - before;
  }

  private static long used() {
    for (int i = 0; i < 4; i++) {
      System.gc();
    }
    Runtime runtime = Runtime.getRuntime();
    return runtime.totalMemory() - runtime.freeMemory();
  }

  /** Text to house, with the findings of structure. */
  @Benchmark
  public Compilation bind() {
    return new Compiler(ANY_NUMBER).structure(text, path);
  }

  /** Text to all findings. */
  @Benchmark
  public Compilation compile() {
    return new Compiler(ANY_NUMBER).compile(text, path);
  }
}
