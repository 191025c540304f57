package wattle.server;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import wattle.read.SourceReader;

/** The texts that are open at one moment, by their path. */
record Buffers(Map<Path, Buffer> open) {
  static final Buffers NONE = new Buffers(Map.of());

  Buffers {
    open = Map.copyOf(open);
  }

  Optional<Buffer> at(Path path) {
    return Optional.ofNullable(open.get(path));
  }

  Buffers with(Path path, Buffer buffer) {
    Map<Path, Buffer> more = new HashMap<>(open);
    more.put(path, buffer);
    return new Buffers(more);
  }

  Buffers without(Path path) {
    Map<Path, Buffer> fewer = new HashMap<>(open);
    fewer.remove(path);
    return new Buffers(fewer);
  }

  /** Reads what is open from here and the rest from disk. */
  SourceReader reader() {
    Map<Path, String> unsaved = new HashMap<>();
    open.forEach((path, buffer) -> unsaved.put(path, buffer.text()));
    return new SourceReader(unsaved, SourceReader.USUAL_MOST_BYTES);
  }

  /** How the editor calls a file: by its own name for it where it is open. */
  String uri(Path path) {
    return at(path).map(Buffer::uri).orElseGet(() -> path.toUri().toString());
  }
}
