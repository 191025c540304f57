package wattle.read;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import wattle.syntax.PlanParser;
import wattle.syntax.Tree;

/**
 * A folder with plans: its files whose names end in {@code .wattle}, those of the folders in it as well. Links are followed, a file that
 * two of them lead to counts once, and folders whose names begin with a dot are left out.
 *
 * @param files names of all such files, in the order of their names
 * @param problems what could not be looked into, one line each that names it
 */
public record PlanFolder(List<String> files, List<String> problems) {
  private static final String ENDING = ".wattle";

  /** A file without such a text has no use line, so that it need not be parsed to know. */
  private static final Pattern MAY_USE = Pattern.compile("\\buse\\s[^\"\n]*\"");

  public PlanFolder {
    files = List.copyOf(files);
    problems = List.copyOf(problems);
  }

  /** What is in a folder; its name stands before those of its files. */
  public static PlanFolder of(Path folder) {
    Walk walk = new Walk(folder);
    try {
      Files.walkFileTree(folder, EnumSet.of(FileVisitOption.FOLLOW_LINKS), Integer.MAX_VALUE, walk);
    } catch (IOException e) {
      walk.problems.add(folder + ": cannot be read: " + e.getMessage());
    }
    Comparator<Path> byPart = Comparator.naturalOrder();
    List<Path> ordered = walk.files.values().stream().map(Path::normalize).sorted(byPart).toList();
    return new PlanFolder(ordered.stream().map(Path::toString).toList(), walk.problems.stream().sorted().toList());
  }

  /**
   * Those of the files that are plans: all but those that another of them uses. Of files that use each other in a circle, the first is
   * one, so that the circle is found.
   */
  public List<String> plans(SourceReader reader) {
    Map<Path, String> names = new LinkedHashMap<>();
    files.forEach(f -> names.put(real(Path.of(f)), f));
    List<Path> paths = List.copyOf(names.keySet());
    // What a link leads to finds what it uses beside the link, as when it is compiled.
    List<Set<Path>> each = paths.parallelStream().map(p -> used(p, Path.of(names.get(p)).toAbsolutePath(), reader)).toList();
    Map<Path, Set<Path>> uses = new LinkedHashMap<>();
    Set<Path> used = new HashSet<>();
    for (int i = 0; i < paths.size(); i++) {
      uses.put(paths.get(i), each.get(i));
      used.addAll(each.get(i));
    }
    Set<Path> reached = new HashSet<>();
    Set<Path> plans = new HashSet<>();
    paths.stream().filter(p -> !used.contains(p)).forEach(p -> begin(p, uses, plans, reached));
    paths.stream().filter(p -> !reached.contains(p)).forEach(p -> {
      if (!reached.contains(p)) {
        begin(p, uses, plans, reached);
      }
    });
    return paths.stream().filter(plans::contains).map(names::get).toList();
  }

  private static void begin(Path plan, Map<Path, Set<Path>> uses, Set<Path> plans, Set<Path> reached) {
    plans.add(plan);
    Deque<Path> next = new ArrayDeque<>(List.of(plan));
    while (!next.isEmpty()) {
      Path file = next.pop();
      if (reached.add(file)) {
        next.addAll(uses.getOrDefault(file, Set.of()));
      }
    }
  }

  /** What a file uses; a file that cannot be read uses nothing, and says so when it is checked. */
  private static Set<Path> used(Path itself, Path file, SourceReader reader) {
    Set<Path> used = new HashSet<>();
    try {
      var source = reader.read(file, file.toString());
      if (MAY_USE.matcher(source.text()).find()) {
        for (Tree.Item item : PlanParser.parse(source).value().items()) {
          if (item instanceof Tree.Use use && use.quoted()) {
            add(used, file, use.target().text());
          }
        }
      }
    } catch (SourceReader.Unreadable e) {
      return Set.of();
    }
    used.remove(itself);
    return used;
  }

  private static void add(Set<Path> used, Path from, String target) {
    try {
      used.add(real(from.resolveSibling(target)));
    } catch (InvalidPathException e) {
      return; // a path that no file can have is a finding of the file that names it
    }
  }

  private static Path real(Path file) {
    try {
      return file.toRealPath();
    } catch (IOException e) {
      return file.toAbsolutePath().normalize(); // not there: whoever reads it says so
    }
  }

  private static final class Walk extends SimpleFileVisitor<Path> {
    private final Path root;
    private final Map<Path, Path> files = new LinkedHashMap<>();
    private final List<String> problems = new ArrayList<>();

    Walk(Path root) {
      this.root = root;
    }

    @Override
    public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
      boolean hidden = !folder.equals(root) && folder.getFileName().toString().startsWith(".");
      return hidden ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
      if (file.getFileName().toString().endsWith(ENDING)) {
        // Of several ways to one file the first by name is shown, whichever is met first.
        files.merge(real(file), file, (a, b) -> a.compareTo(b) <= 0 ? a : b);
      }
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path file, IOException problem) {
      problems.add(file + ": " + why(problem));
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult postVisitDirectory(Path folder, IOException problem) {
      if (problem != null) {
        problems.add(folder + ": " + why(problem));
      }
      return FileVisitResult.CONTINUE;
    }

    private static String why(IOException problem) {
      if (problem instanceof FileSystemLoopException) {
        return "a link that leads back to a folder that contains it; remove the link";
      }
      if (problem instanceof AccessDeniedException) {
        return "the folder cannot be read; check its permissions";
      }
      return "cannot be looked into: " + problem.getMessage();
    }
  }
}
