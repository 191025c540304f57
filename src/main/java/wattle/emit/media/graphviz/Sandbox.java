package wattle.emit.media.graphviz;

import com.dylibso.chicory.runtime.HostFunction;
import com.dylibso.chicory.runtime.ImportValues;
import com.dylibso.chicory.runtime.Instance;
import com.dylibso.chicory.runtime.Memory;
import com.dylibso.chicory.runtime.WasmFunctionHandle;
import com.dylibso.chicory.wasm.WasmModule;
import com.dylibso.chicory.wasm.types.FunctionImport;
import com.dylibso.chicory.wasm.types.FunctionType;
import java.util.ArrayList;
import java.util.List;

/**
 * The world as the C code of one instance sees it: no files, no environment, no clock, a heap with a limit, and a place
 * for messages. So a graph cannot reach anything outside, and its picture depends on nothing else.
 */
final class Sandbox {
  private static final int NO_SUCH_FILE = -44; // ENOENT in emscripten's numbering
  private static final int MOST_PAGES = 16_384; // 1 GiB: beyond it C code is told that memory is out

  private final StringBuilder messages = new StringBuilder();

  /** The C code gave up: an assertion, an abort or an exit. */
  static final class Halt extends RuntimeException {
    private static final long serialVersionUID = 1;

    Halt(String message) {
      super(message, null, false, false);
    }
  }

  /** What was said since the last call, a line each. */
  List<String> takeMessages() {
    List<String> lines = new ArrayList<>();
    messages.toString().lines().map(String::strip).filter(line -> !line.isEmpty()).forEach(lines::add);
    messages.setLength(0);
    return lines;
  }

  ImportValues imports(WasmModule module, ModuleNames names) {
    ImportValues.Builder all = ImportValues.builder();
    module.importSection().stream().forEach(entry -> {
      FunctionImport function = (FunctionImport) entry;
      FunctionType type = module.typeSection().getType(function.typeIndex());
      WasmFunctionHandle body = body(names.importOf(function.name()), !type.returns().isEmpty());
      all.addFunction(new HostFunction(function.module(), function.name(), type, body));
    });
    return all.build();
  }

  private WasmFunctionHandle body(String name, boolean returns) {
    return switch (name) {
      case "assert_fail" -> (in, args) -> {
        throw new Halt("assertion failed: " + in.memory().readCString((int) args[0]));
      };
      case "abort_js", "cxa_throw" -> (in, args) -> {
        throw new Halt("aborted");
      };
      case "exit" -> (in, args) -> {
        throw new Halt("exit " + args[0]);
      };
      case "fd_write" -> this::write;
      case "viz_errorf" -> (in, args) -> {
        say(in.memory().readCString((int) args[0]));
        return new long[]{0};
      };
      case "emscripten_resize_heap" -> Sandbox::grow;
      case "environ_sizes_get" -> (in, args) -> {
        in.memory().writeI32((int) args[0], 0);
        in.memory().writeI32((int) args[1], 0);
        return new long[]{0};
      };
      case "environ_get" -> (in, args) -> new long[]{0};
      case "clock_time_get" -> (in, args) -> {
        in.memory().writeLong((int) args[2], 0);
        return new long[]{0};
      };
      case "emscripten_date_now" -> (in, args) -> new long[]{Double.doubleToRawLongBits(0)};
      default -> returns ? (in, args) -> new long[]{NO_SUCH_FILE} : (in, args) -> null;
    };
  }

  /** A message comes in pieces, the first of which is its level; its last piece may lack the line end. */
  private void say(String piece) {
    boolean starts = piece.equals("Error") || piece.equals("Warning");
    if (starts && messages.length() > 0 && messages.charAt(messages.length() - 1) != '\n') {
      messages.append('\n');
    }
    messages.append(piece);
  }

  /** {@code fd_write(file, vectors, count, written)}: standard output and error are the only files that are open. */
  private long[] write(Instance in, long... args) {
    Memory memory = in.memory();
    int written = 0;
    for (int i = 0; i < (int) args[2]; i++) {
      int start = memory.readInt((int) args[1] + 8 * i);
      int length = memory.readInt((int) args[1] + 8 * i + 4);
      messages.append(memory.readString(start, length));
      written += length;
    }
    memory.writeI32((int) args[3], written);
    return new long[]{0};
  }

  /** Grows by a fifth at least, so that a heap that keeps growing is not grown a page at a time. */
  private static long[] grow(Instance in, long... args) {
    Memory memory = in.memory();
    int now = memory.pages();
    long wanted = (Integer.toUnsignedLong((int) args[0]) + Memory.PAGE_SIZE - 1) / Memory.PAGE_SIZE;
    if (wanted > MOST_PAGES) {
      return new long[]{0};
    }
    long target = Math.max(wanted, Math.min(MOST_PAGES, now * 6L / 5));
    try {
      return new long[]{memory.grow((int) target - now) < 0 ? 0 : 1};
    } catch (OutOfMemoryError e) {
      return new long[]{0}; // for C code that is a plain condition, which it reports
    }
  }
}
