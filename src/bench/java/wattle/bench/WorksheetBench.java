package wattle.bench;

import java.nio.file.Path;
import java.util.List;
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
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.read.SourceReader;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.Outcome;
import wattle.worksheet.ServiceLoad;

/** Load worksheets of a tower of flats, and how they grow with the number of dwellings. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 5, time = 3)
public class WorksheetBench {
  @Param({"100", "1000"})
  private int dwellings;

  private Compilation plan;

  @Setup
  public void plan() {
    Compilation bound = new Compiler(SourceReader.FROM_DISK).structure(new Source("flats.wattle", Flats.plan(dwellings)),
        Path.of("flats.wattle"));
    if (bound.findings().stream().anyMatch(f -> f.severity() == Severity.ERROR)) {
      throw new IllegalStateException(bound.findings().get(0).toString());
    }
    plan = bound;
  }

  /** Every method of the code for the service, which serves them all. */
  @Benchmark
  public List<List<Outcome>> service() {
    HouseWorksheets worksheets = new HouseWorksheets(plan.house(), plan.library());
    return worksheets.services().stream().map(worksheets::compare).toList();
  }

  /** The service and every feeder, held against what they are rated. */
  @Benchmark
  public List<Finding> serviceAndEveryFeeder() {
    return ServiceLoad.check(plan.house(), new HouseWorksheets(plan.house(), plan.library()));
  }
}
