package wattle.emit.media.graphviz;

import guru.nidi.graphviz.engine.Engine;
import guru.nidi.graphviz.engine.Format;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;

/**
 * Graphviz's WebAssembly build as JVM classes.
 *
 * <p>An instance of the module has one heap and serves one call at a time. Idle instances are kept; a call takes one or
 * starts another, and puts it back only if the call went well: after a failure nothing is known about its heap.
 */
final class WasmEngine extends DotEngine {
  private static final int MOST_IDLE = Runtime.getRuntime().availableProcessors();

  private final ConcurrentLinkedDeque<GraphvizInstance> idle = new ConcurrentLinkedDeque<>();
  private final AtomicBoolean started = new AtomicBoolean();
  private final AtomicReference<Future<GraphvizInstance>> starting = new AtomicReference<>();

  @Override
  protected void doInit() {
    warmUp();
  }

  @Override
  public void warmUp() {
    if (started.compareAndSet(false, true)) {
      starting.set(DeepStack.start("graphviz-start", GraphvizInstance::start));
    }
  }

  @Override
  public Rendering render(String dot, Engine layout, Format format) {
    String layoutName = nameOf(layout);
    String formatName = nameOf(format);
    GraphvizInstance instance = take();
    Rendering done = DeepStack.result(DeepStack.start("graphviz", () -> instance.render(dot, layoutName, formatName)));
    if (idle.size() < MOST_IDLE) {
      idle.push(instance);
    }
    return done;
  }

  private GraphvizInstance take() {
    started.set(true);
    GraphvizInstance ready = idle.poll();
    if (ready != null) {
      return ready;
    }
    Future<GraphvizInstance> warm = starting.getAndSet(null);
    return warm == null ? GraphvizInstance.start() : DeepStack.result(warm);
  }

  /** Lets go of the idle instances and their heaps; the next call starts a new one. */
  @Override
  public void close() {
    idle.clear();
  }
}
