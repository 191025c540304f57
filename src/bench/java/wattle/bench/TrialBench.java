package wattle.bench;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.table.SheetText;
import wattle.emit.sheet.trial.TrialSheets;
import wattle.emit.view.oneline.OneLine;
import wattle.loads.ConnectedLoads;
import wattle.read.SourceReader;
import wattle.trials.TrialResult;
import wattle.trials.Trials;

/** All trials of Alder Court, solved alone and with their tables, beside one redraw of its one-line diagram. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 2)
public class TrialBench {
  private Compilation plan;

  @Setup
  public void compile() throws SourceReader.Unreadable {
    plan = new Compiler(SourceReader.FROM_DISK).compile(Path.of("examples/alder-court/house.wattle"));
  }

  private List<TrialResult> run() {
    Trials trials = new Trials(plan.house(), plan.library());
    return plan.house().trials().values().stream().map(t -> trials.run(t).value()).toList();
  }

  @Benchmark
  public List<TrialResult> solved() {
    return run();
  }

  @Benchmark
  public List<String> withTables() {
    List<String> tables = new ArrayList<>();
    run().forEach(r -> tables.add(SheetText.plain(TrialSheets.of(r, r.name(), Integer.MAX_VALUE))));
    return tables;
  }

  @Benchmark
  public String redraw() {
    return DrawingSvg.document(new OneLine(plan.house(), plan.figures()).drawing());
  }
}
