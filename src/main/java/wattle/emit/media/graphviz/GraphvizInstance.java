package wattle.emit.media.graphviz;

import com.dylibso.chicory.runtime.ByteArrayMemory;
import com.dylibso.chicory.runtime.ExportFunction;
import com.dylibso.chicory.runtime.Instance;
import com.dylibso.chicory.runtime.Memory;
import com.dylibso.chicory.wasm.ChicoryException;
import com.dylibso.chicory.wasm.Parser;
import com.dylibso.chicory.wasm.WasmModule;
import guru.nidi.graphviz.engine.GraphvizException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * One running copy of the module, with a heap of its own. For one thread at a time, and of no use after an exception.
 *
 * <p>A call copies the graph into the heap, has it read, laid out in a new context and rendered, copies the result out,
 * and frees all of it, in the order of the package's own JavaScript wrapper.
 */
final class GraphvizInstance {
  /** Size of the stack that emscripten gives C code inside the heap, and the part of it that must stay unused. */
  private static final int STACK_BYTES = 64 << 10;
  private static final int SPARE_BYTES = 4 << 10;

  private final Sandbox sandbox = new Sandbox();
  private final Memory memory;
  private final int stackEnd;
  private final ExportFunction malloc;
  private final ExportFunction free;
  private final ExportFunction readGraph;
  private final ExportFunction createContext;
  private final ExportFunction resetErrors;
  private final ExportFunction layout;
  private final ExportFunction render;
  private final ExportFunction freeLayout;
  private final ExportFunction freeGraph;
  private final ExportFunction freeContext;
  private final ExportFunction version;

  private GraphvizInstance() {
    WasmModule module = module();
    ModuleNames names = ModuleNames.load();
    Instance instance = Instance.builder(module)
        .withImportValues(sandbox.imports(module, names))
        .withMachineFactory(GraphvizModule::create)
        .withMemoryFactory(ByteArrayMemory::new)
        .withStart(false)
        .build();
    instance.export(names.export("constructors")).apply();
    memory = instance.memory();
    stackEnd = call(instance.export(names.export("emscripten_stack_get_current"))) - STACK_BYTES;
    malloc = instance.export(names.export("malloc"));
    free = instance.export(names.export("free"));
    readGraph = instance.export(names.export("viz_read_one_graph"));
    createContext = instance.export(names.export("viz_create_context"));
    resetErrors = instance.export(names.export("viz_reset_errors"));
    layout = instance.export(names.export("viz_layout"));
    render = instance.export(names.export("viz_render"));
    freeLayout = instance.export(names.export("viz_free_layout"));
    freeGraph = instance.export(names.export("viz_free_graph"));
    freeContext = instance.export(names.export("viz_free_context"));
    version = instance.export(names.export("viz_get_graphviz_version"));
  }

  /**
   * Reads what is left of the module beside its compiled code. The build has validated it when it compiled it; doing so
   * again, as {@link GraphvizModule#load} does, takes a quarter of a second in a new process.
   */
  private static WasmModule module() {
    return Parser.builder().withValidation(false).build()
        .parse(() -> GraphvizInstance.class.getResourceAsStream("GraphvizModule.meta"));
  }

  static GraphvizInstance start() {
    return new GraphvizInstance();
  }

  String version() {
    return textAt(call(version));
  }

  /**
   * Lays out and renders one graph.
   *
   * @throws GraphvizException if that failed; the instance must then be dropped
   */
  Rendering render(String dot, String layoutName, String formatName) {
    if (dot.indexOf('\0') >= 0) {
      throw new GraphvizException("a graph cannot hold the character U+0000");
    }
    try {
      int graph = callWith(dot, source -> call(readGraph, source));
      check(graph != 0, "cannot read the graph");
      int context = call(createContext);
      call(resetErrors);
      check(callWith(layoutName, name -> call(layout, context, graph, name)) == 0, "cannot lay out the graph");
      int result = callWith(formatName, name -> call(render, context, graph, name));
      check(result != 0, "cannot draw the graph as " + formatName);
      final String text = textAt(result);
      call(free, result);
      call(freeLayout, context, graph);
      call(freeGraph, graph);
      call(freeContext, context);
      checkStack();
      return new Rendering(text, sandbox.takeMessages());
    } catch (Sandbox.Halt | ChicoryException e) {
      throw new GraphvizException(said("Graphviz stopped: " + e.getMessage()), e);
    } catch (StackOverflowError e) {
      throw new GraphvizException(said("the graph is too deep for the stack of this thread"), e);
    }
  }

  /** Nothing stops C code at the end of its stack: it would go on and spoil what lies below, without a word. */
  private void checkStack() {
    for (byte b : memory.readBytes(stackEnd, SPARE_BYTES)) {
      check(b == 0, "the graph is nested too deeply to be drawn reliably");
    }
  }

  private void check(boolean ok, String failure) {
    if (!ok) {
      throw new GraphvizException(said(failure));
    }
  }

  private String said(String failure) {
    List<String> lines = sandbox.takeMessages();
    return lines.isEmpty() ? failure : failure + ": " + String.join("; ", lines);
  }

  private interface WithText {
    int call(int address);
  }

  /** Calls with the address of a copy of the text in the heap, which is freed after. */
  private int callWith(String text, WithText call) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    int address = call(malloc, bytes.length + 1);
    check(address != 0, "out of memory for a text of " + bytes.length + " bytes");
    memory.write(address, bytes);
    memory.writeByte(address + bytes.length, (byte) 0);
    int result = call.call(address);
    call(free, address);
    return result;
  }

  private static int call(ExportFunction function, long... args) {
    long[] results = function.apply(args);
    return results == null || results.length == 0 ? 0 : (int) results[0];
  }

  private String textAt(int address) {
    return memory.readCString(address, StandardCharsets.UTF_8);
  }
}
