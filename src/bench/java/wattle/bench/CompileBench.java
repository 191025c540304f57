package wattle.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.CommonTokenStream;
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
import wattle.finding.Checked;
import wattle.finding.Source;
import wattle.read.SourceReader;
import wattle.syntax.PlanParser;
import wattle.syntax.PlanTree;
import wattle.syntax.grammar.WattleLexer;
import wattle.syntax.grammar.WattleParser;

/**
 * Text to findings: one house when all is warm, and a plan of a hundred thousand lines, beside what ANTLR takes for the
 * same lines when nothing is made of what it reads.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = "-Xmx3g")
@Warmup(iterations = 3, time = 10)
@Measurement(iterations = 5, time = 10)
public class CompileBench {
  /** 447 houses of 224 lines: a hundred thousand lines and a few. */
  private static final int HOUSES = 447;

  private static final Path COURT = Path.of("examples/alder-court/house.wattle");

  private final Source court = read();
  private final Path tower = Path.of("tower.wattle");
  private final Source lines = new Source("tower.wattle", Tower.plan(HOUSES));

  private static Source read() {
    try {
      return new Source(COURT.toString(), Files.readString(COURT));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException("run from the project's folder", e);
    }
  }

  @Benchmark
  public Compilation alderCourt() {
    return new Compiler(SourceReader.FROM_DISK).compile(court, COURT);
  }

  /** The floor: the parser that ANTLR made, its tree thrown away. */
  @Benchmark
  public Object linesThroughAntlrAlone() {
    WattleParser parser = new WattleParser(new CommonTokenStream(new WattleLexer(CharStreams.fromString(lines.text()))));
    return parser.plan();
  }

  /** With repair of tokens, and our own tree. */
  @Benchmark
  public Checked<PlanTree> linesToTree() {
    return PlanParser.parse(lines);
  }

  /** With the house, its legs, roles, loads and structure findings. */
  @Benchmark
  public Compilation linesToHouse() {
    return new Compiler(SourceReader.FROM_DISK).structure(lines, tower);
  }

  @Benchmark
  public Compilation linesToFindings() {
    return new Compiler(SourceReader.FROM_DISK).compile(lines, tower);
  }
}
