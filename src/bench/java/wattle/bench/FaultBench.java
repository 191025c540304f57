package wattle.bench;

import java.nio.file.Path;
import java.util.List;
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
import wattle.conductors.Conductors;
import wattle.faults.FaultChecks;
import wattle.faults.Faults;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** Fault currents of a branch that forks at every box, and their checks: ten times the boxes should take ten times as long. */
@State(Scope.Benchmark)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class FaultBench {
  @Param({"1000", "10000", "100000"})
  private int boxes;

  private Compilation plan;
  private Conductors conductors;

  @Setup
  public void house() {
    StringBuilder runs = new StringBuilder();
    StringBuilder devices = new StringBuilder();
    for (int i = 0; i < boxes; i++) {
      runs.append(i == 0 ? "P" : "r.d" + (i - 1) / 2).append(" --0.1 m-- r.d").append(i).append('\n');
      devices.append('d').append(i).append(": receptacle\n");
    }
    String text = """
        plan "Many boxes" use code us-2023
        service main 120/240 V 200 A { source transformer 50 kVA 1.8 %% run 20 m of 4/0 Al triplex }
        panel P from main { bus 200 A slots 40 bonded main breaker 200 A 22 kA
          1 15 A b }
        branch b by 14/2 NM-B {
        %s}
        room r {
        %s}
        """
        .formatted(runs, devices);
    SourceReader reader = new SourceReader(Map.of(), SourceReader.USUAL_MOST_BYTES);
    plan = new Compiler(reader).compile(new Source("many.wattle", text), Path.of("many.wattle"));
    conductors = Conductors.of(plan.house(), plan.library());
  }

  @Benchmark
  @BenchmarkMode(Mode.AverageTime)
  @Fork(1)
  @Warmup(iterations = 3, time = 2)
  @Measurement(iterations = 3, time = 2)
  public List<Finding> currentsAndChecks() {
    return FaultChecks.of(plan.house(), plan.library(), Faults.of(plan.house(), plan.library(), conductors));
  }
}
