package distribution;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Files of a package by their path in it, in the order of the paths, whatever order a disk lists them in. */
final class Tree {
  /**
   * A file or a link.
   *
   * @param link what a link leads to; empty for a file
   */
  record Entry(byte[] bytes, boolean executable, String link) {}

  private final Map<String, Entry> entries = new TreeMap<>();

  Map<String, Entry> entries() {
    return entries;
  }

  Tree add(String path, byte[] bytes, boolean executable) {
    entries.put(path, new Entry(bytes, executable, ""));
    return this;
  }

  Tree text(String path, String text) {
    return add(path, text.getBytes(StandardCharsets.UTF_8), false);
  }

  Tree link(String path, String to) {
    entries.put(path, new Entry(new byte[0], false, to));
    return this;
  }

  /** A file, or all that is in a folder. */
  Tree addAll(String path, Path from) throws IOException {
    if (!Files.isDirectory(from)) {
      return add(path, Files.readAllBytes(from), Files.isExecutable(from));
    }
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.filter(f -> !Files.isDirectory(f, LinkOption.NOFOLLOW_LINKS)).toList()) {
        String name = path + "/" + from.relativize(file).toString().replace('\\', '/');
        if (Files.isSymbolicLink(file)) {
          link(name, Files.readSymbolicLink(file).toString());
        } else {
          add(name, Files.readAllBytes(file), Files.isExecutable(file));
        }
      }
    }
    return this;
  }

  /** All of another, below a folder. */
  Tree addAll(String path, Tree other) {
    other.entries.forEach((name, entry) -> entries.put(path + "/" + name, entry));
    return this;
  }

  /** Every folder that has something in it, the outer before the inner. */
  List<String> folders() {
    TreeMap<String, Boolean> folders = new TreeMap<>();
    for (String path : entries.keySet()) {
      for (int slash = path.indexOf('/'); slash > 0; slash = path.indexOf('/', slash + 1)) {
        folders.put(path.substring(0, slash), true);
      }
    }
    return List.copyOf(folders.keySet());
  }
}
