package wattle.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.figures.HouseFigures;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;
import wattle.rules.Pace;
import wattle.rules.RuleBook;
import wattle.syntax.PlanParser;
import wattle.syntax.PlanTree;

/**
 * All rules of a code over one house and over plans of ten and a hundred thousand lines, beside what the reading of the
 * longer one takes. The rules are loaded anew each time, as a command does.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = "-Xmx3g")
@Warmup(iterations = 3, time = 10)
@Measurement(iterations = 5, time = 10)
public class RuleBench {
  private static final int HOUSES = 447;

  private final Compilation court = house(Path.of("examples/alder-court/house.wattle"));
  private final Source longText = new Source("tower.wattle", Tower.plan(HOUSES));
  private final Compilation longPlan = bind(longText);
  private final Compilation tenthOfIt = bind(new Source("tower.wattle", Tower.plan(HOUSES / 10)));

  private static Compilation house(Path plan) {
    try {
      return new Compiler(SourceReader.FROM_DISK).structure(new Source(plan.toString(), Files.readString(plan)), plan);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException("run from the project's folder", e);
    }
  }

  private static Compilation bind(Source source) {
    return new Compiler(SourceReader.FROM_DISK).structure(source, Path.of(source.name()));
  }

  private static List<Finding> judge(Compilation bound) {
    return RuleBook.of(bound.library()).judge(new HouseFigures(bound.house(), bound.library()), Pace.WHOLE).findings();
  }

  @Benchmark
  public List<Finding> alderCourt() {
    return judge(court);
  }

  @Benchmark
  public List<Finding> tenThousandLines() {
    return judge(tenthOfIt);
  }

  @Benchmark
  public List<Finding> hundredThousandLines() {
    return judge(longPlan);
  }

  /** For the ratio. */
  @Benchmark
  public Checked<PlanTree> readingHundredThousandLines() {
    return PlanParser.parse(longText);
  }
}
