package wattle.bench;

import guru.nidi.graphviz.engine.Engine;
import guru.nidi.graphviz.engine.Format;
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
import wattle.emit.media.graphviz.DotEngine;

/** The diagram engine on six rooms of ten outlets each, its labels tables and its edges labeled. */
@State(Scope.Benchmark)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class DotEngineBench {
  private final String graph = Graphs.rooms(6, 10);

  /** One picture after many others. */
  @Benchmark
  @BenchmarkMode(Mode.AverageTime)
  @Fork(2)
  @Warmup(iterations = 5, time = 3)
  @Measurement(iterations = 5, time = 3)
  public String warm() {
    return DotEngine.builtIn().render(graph, Engine.DOT, Format.SVG).text();
  }

  /** The first picture of a process, without the start of the Java machine itself. */
  @Benchmark
  @BenchmarkMode(Mode.SingleShotTime)
  @Fork(value = 10, jvmArgsAppend = {"-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"})
  @Warmup(iterations = 0)
  @Measurement(iterations = 1)
  public String first() {
    return DotEngine.builtIn().render(graph, Engine.DOT, Format.SVG).text();
  }

  /** The same where the engine was told a little before that it would be needed. */
  @Benchmark
  @BenchmarkMode(Mode.SingleShotTime)
  @Fork(value = 10, jvmArgsAppend = {"-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"})
  @Warmup(iterations = 0)
  @Measurement(iterations = 1)
  public String firstAfterWarmUp(WarmedUp warmedUp) {
    return DotEngine.builtIn().render(graph, Engine.DOT, Format.SVG).text();
  }
}
