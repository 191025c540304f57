package wattle.bench;

import guru.nidi.graphviz.engine.Engine;
import guru.nidi.graphviz.engine.Format;
import java.util.List;
import java.util.Optional;
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
import wattle.emit.media.picture.PdfPicture;
import wattle.emit.media.picture.PngPicture;
import wattle.emit.media.picture.UnreadablePictureException;

/** The same six rooms from SVG to pixels and to print. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 5, time = 3)
public class PictureBench {
  private final String svg = DotEngine.builtIn().render(Graphs.rooms(6, 10), Engine.DOT, Format.SVG).text();

  @Benchmark
  public byte[] png() throws UnreadablePictureException {
    return PngPicture.of(svg, 96);
  }

  @Benchmark
  public byte[] pdf() throws UnreadablePictureException {
    return PdfPicture.of(List.of(svg), "Rooms", Optional.empty());
  }
}
