package wattle.emit.media.graphviz;

import guru.nidi.graphviz.engine.AbstractGraphvizEngine;
import guru.nidi.graphviz.engine.Engine;
import guru.nidi.graphviz.engine.EngineResult;
import guru.nidi.graphviz.engine.Format;
import guru.nidi.graphviz.engine.GraphvizException;
import guru.nidi.graphviz.engine.Options;
import guru.nidi.graphviz.engine.Rasterizer;
import guru.nidi.graphviz.model.MutableGraph;
import java.io.FileNotFoundException;
import java.util.Locale;

/**
 * Lays out graphs and draws them. Every engine may be used by several threads at once, and a graph that fails does no
 * harm to the next. Each is also an engine of graphviz-java, but that library keeps its engine in a static field, so
 * calling {@link #render} is the better way.
 */
public abstract sealed class DotEngine extends AbstractGraphvizEngine permits WasmEngine, NativeEngine {

  /** Holds the one engine of the process; it costs a tenth of a second or more to start, so it is never made twice. */
  private static final class BuiltIn {
    static final WasmEngine ENGINE = new WasmEngine();
  }

  DotEngine() {
    super(true);
  }

  /** Graphviz as JVM classes; needs nothing installed, gives the same bytes on every machine. Starts on first use. */
  public static DotEngine builtIn() {
    return BuiltIn.ENGINE;
  }

  /**
   * The {@code dot} program of this machine, for those who have one and very large graphs.
   *
   * @param program a path, or a bare name to be looked for in the folders of PATH
   * @throws FileNotFoundException if there is no such program
   */
  public static DotEngine installed(String program) throws FileNotFoundException {
    return new NativeEngine(NativeEngine.find(program));
  }

  /** Starts the engine in the background, so that the first picture need not wait for it. Does nothing twice. */
  public abstract void warmUp();

  /**
   * Lays out and draws one graph.
   *
   * @param dot the graph in the DOT language; names and labels must have been escaped
   * @param layout how to lay it out, usually {@link Engine#DOT}
   * @param format {@link Format#SVG} or one of the text formats; pixels are made from SVG by wattle.emit.media.picture
   * @throws GraphvizException if the graph cannot be read or drawn, with what Graphviz said about it
   */
  public abstract Rendering render(String dot, Engine layout, Format format);

  /** Lays out a graph in ranks and draws it as SVG. */
  public final Rendering svg(MutableGraph graph) {
    return render(graph.toString(), Engine.DOT, Format.SVG);
  }

  @Override
  public final EngineResult execute(String source, Options options, Rasterizer rasterizer) {
    return EngineResult.fromString(render(source, options.engine, options.format).text());
  }

  static String nameOf(Engine layout) {
    return layout.name().toLowerCase(Locale.ROOT);
  }

  static String nameOf(Format format) {
    return switch (format) {
      case PNG -> throw new GraphvizException("the engine draws no pixels; use SVG and rasterise it");
      case SVG_STANDALONE -> "svg";
      default -> format.name().toLowerCase(Locale.ROOT).replace('_', '-');
    };
  }
}
