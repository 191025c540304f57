package wattle.server;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Range;
import wattle.compiler.Compilation;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.model.House;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/** A plan as it stood at one moment, with all files that it uses. */
final class Analysis {
  private final Path plan;
  private final Buffers buffers;
  private final Compilation compilation;
  private final Map<Path, PlanTree> files = new LinkedHashMap<>();
  private final Map<Path, LineIndex> lines = new LinkedHashMap<>();
  private final Map<Path, FileStamp> stamps = new LinkedHashMap<>();
  /** Paths by the names of sources, since thousands of findings have few. */
  private final Map<String, Path> paths = new ConcurrentHashMap<>();
  private final Derived derived;

  /**
   * @param plan the file it starts at
   * @param buffers what was open
   * @param compilation of the plan under its full path, so that the name of a source is where it lies
   */
  Analysis(Path plan, Buffers buffers, Compilation compilation) {
    this.plan = plan;
    this.buffers = buffers;
    this.compilation = compilation;
    for (PlanTree tree : compilation.files()) {
      Path path = pathOf(tree.source());
      files.put(path, tree);
      lines.put(path, buffers.at(path).map(Buffer::lines).orElseGet(() -> new LineIndex(tree.source().text())));
      stamp(path);
      UsedFiles.of(tree, path).forEach(this::stamp);
    }
    this.derived = new Derived(this);
  }

  /**
   * The same texts with what the later phases found. Their files are taken to stand as they stood when they were read: one
   * that has changed since must be seen to have changed.
   */
  Analysis judged(Compilation whole) {
    Analysis judged = new Analysis(plan, buffers, whole);
    judged.stamps.clear();
    judged.stamps.putAll(stamps);
    return judged;
  }

  /** Of a file that was read from disk, or was looked for and not found. */
  private void stamp(Path path) {
    if (buffers.at(path).isEmpty()) {
      stamps.put(path, FileStamp.of(path));
    }
  }

  Path plan() {
    return plan;
  }

  Buffers buffers() {
    return buffers;
  }

  Compilation compilation() {
    return compilation;
  }

  House house() {
    return compilation.house();
  }

  /** Trees by path, the plan first. */
  Map<Path, PlanTree> files() {
    return files;
  }

  /** Characters of all its files. */
  long size() {
    return files.values().stream().mapToLong(t -> t.source().text().length()).sum();
  }

  /** Positions in a file of the plan. */
  LineIndex lines(Path file) {
    return lines.get(file);
  }

  /** A span of a tree or of the house, in the whole text of its file. */
  Span placed(Span span) {
    return compilation.placement().whole(span);
  }

  /** A span of one of its files, as the editor counts. */
  Range range(Path file, Span span) {
    return lines.get(file).range(placed(span));
  }

  Derived derived() {
    return derived;
  }

  /** What a thing is called in the house: that of a pattern, in the first of its placements; absent where there is none. */
  Optional<String> inHouse(Named thing) {
    String pattern = thing.kind() == Named.Kind.PATTERN ? thing.name() : thing.pattern();
    if (pattern.isEmpty()) {
      return Optional.of(thing.name());
    }
    Optional<String> first = house().placements().entrySet().stream().filter(p -> p.getValue().equals(pattern))
        .map(java.util.Map.Entry::getKey).findFirst();
    boolean own = thing.name().equals(pattern) || thing.name().startsWith(pattern + ".");
    return first.map(placement -> own ? placement + thing.name().substring(pattern.length()) : placement + "." + thing.name());
  }

  private Path pathOf(Source source) {
    return paths.computeIfAbsent(source.name(), name -> Path.of(name).toAbsolutePath().normalize());
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
    Path path = pathOf(placed(span).source());
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

  /** The items of a pattern; those of the plan itself for an empty name. */
  List<Tree.Item> items(String pattern) {
    return pattern.isEmpty()
        ? items()
        : items().stream()
            .filter(i -> i instanceof Tree.Pattern p && p.name().text().equals(pattern))
            .flatMap(i -> ((Tree.Pattern) i).items().stream())
            .toList();
  }

  /** Where a span of the plan's own files lies, as the editor names the file; absent for one in the standard library. */
  Optional<Location> location(Span span) {
    return fileOf(span).map(path -> new Location(buffers.uri(path), range(path, span)));
  }
}
