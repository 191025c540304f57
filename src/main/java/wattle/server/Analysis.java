package wattle.server;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.compiler.Compilation;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/**
 * A plan as it stood at one moment, with all files that it uses.
 *
 * @param plan the file it starts at
 * @param buffers what was open
 * @param stamps of the files that were read from disk, or were looked for and not found
 * @param files trees by path, the plan first
 * @param lines positions in each of them
 */
record Analysis(
    Path plan,
    Buffers buffers,
    Compilation compilation,
    Map<Path, PlanTree> files,
    Map<Path, LineIndex> lines,
    Map<Path, FileStamp> stamps) {

  static Analysis of(Path plan, Buffers buffers, Compilation compilation) {
    Map<Path, PlanTree> files = new LinkedHashMap<>();
    Map<Path, LineIndex> lines = new LinkedHashMap<>();
    Map<Path, FileStamp> stamps = new LinkedHashMap<>();
    for (PlanTree tree : compilation.files()) {
      Path path = pathOf(tree.source());
      files.put(path, tree);
      lines.put(path, new LineIndex(tree.source().text()));
      stamp(path, buffers, stamps);
      UsedFiles.of(tree, path).forEach(used -> stamp(used, buffers, stamps));
    }
    return new Analysis(plan, buffers, compilation, files, lines, stamps);
  }

  private static void stamp(Path path, Buffers buffers, Map<Path, FileStamp> stamps) {
    if (buffers.at(path).isEmpty()) {
      stamps.put(path, FileStamp.of(path));
    }
  }

  /** Plans are compiled under their full path here, so that the name of a source is where it lies. */
  private static Path pathOf(Source source) {
    return Path.of(source.name()).toAbsolutePath().normalize();
  }

  /** Whether nothing that it rests on has changed. */
  boolean holds(Buffers now) {
    for (Path path : files.keySet()) {
      if (buffers.at(path).map(Buffer::text).orElse(null) != now.at(path).map(Buffer::text).orElse(null)) {
        return false;
      }
    }
    return stamps.entrySet().stream()
        .allMatch(s -> now.at(s.getKey()).isEmpty() && s.getValue().equals(FileStamp.of(s.getKey())));
  }

  Optional<PlanTree> tree(Path path) {
    return Optional.ofNullable(files.get(path));
  }

  /** The file that a span lies in; absent for one in the standard library. */
  Optional<Path> fileOf(Span span) {
    Path path = pathOf(span.source());
    return files.containsKey(path) ? Optional.of(path) : Optional.empty();
  }

  /** Findings of one file, in the order of the compilation. */
  List<Finding> findingsIn(Path path) {
    return compilation.findings().stream()
        .filter(f -> f.place().flatMap(m -> fileOf(m.span())).filter(path::equals).isPresent())
        .toList();
  }

  /** Every item of every file. */
  List<Tree.Item> items() {
    return files.values().stream().flatMap(t -> t.items().stream()).toList();
  }
}
