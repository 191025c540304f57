package wattle.server;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Source;
import wattle.read.Repository;
import wattle.read.SourceReader;
import wattle.syntax.PlanParser;

/**
 * Which plan a file is part of. A file that another one uses says little by itself: it is checked as part of the plan
 * that uses it, which by the rule on {@code use} lies in the same folder or above it. Used by one thread.
 */
final class Plans {
  /** Most files of a folder that are looked at; a folder of more is no folder of plans. */
  private static final int MOST_FILES = 500;

  private final Map<Path, List<Path>> uses = new HashMap<>();
  private final Map<Path, Object> explored = new HashMap<>();
  private List<Path> folders = List.of();

  /** The folders that the editor works in; nothing above them is looked at. */
  void setFolders(List<Path> folders) {
    this.folders = List.copyOf(folders);
  }

  List<Path> folders() {
    return folders;
  }

  /** Notes what the files of an analysis use. */
  void learn(Analysis analysis) {
    analysis.files().forEach((path, tree) -> uses.put(path, UsedFiles.of(tree, path)));
  }

  /**
   * Looks through the folders from that of the file up to the editor's own, and up to that of the repository: a file of parts
   * that is opened alone is part of the plan above it.
   */
  void explore(Path file, Buffers buffers) {
    Optional<Path> repository = Repository.of(file);
    for (Path folder = file.getParent(); folder != null; folder = folder.getParent()) {
      plansIn(folder).forEach(plan -> read(plan, buffers));
      Path at = folder;
      boolean below = folders.stream().anyMatch(f -> at.startsWith(f) && !at.equals(f))
          || repository.filter(r -> at.startsWith(r) && !at.equals(r)).isPresent();
      if (!below) {
        break;
      }
    }
  }

  /** The plans that lie in a folder, by name. */
  static List<Path> plansIn(Path folder) {
    List<Path> plans = new ArrayList<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*.wattle")) {
      for (Path file : files) {
        if (plans.size() < MOST_FILES) {
          plans.add(file.toAbsolutePath().normalize());
        }
      }
    } catch (IOException | DirectoryIteratorException e) {
      return List.of(); // a folder that cannot be listed has no plan to offer
    }
    plans.sort(Comparator.naturalOrder());
    return plans;
  }

  private void read(Path plan, Buffers buffers) {
    // With hundreds of files in a folder, reading each at every opening is what an editor would wait for.
    Object standing = buffers.at(plan).<Object>map(Buffer::text).orElseGet(() -> FileStamp.of(plan));
    if (standing.equals(explored.put(plan, standing)) && uses.containsKey(plan)) {
      return;
    }
    try {
      Source source = buffers.reader().read(plan, plan.toString());
      uses.put(plan, UsedFiles.of(PlanParser.parse(source).value(), plan));
    } catch (SourceReader.Unreadable e) {
      uses.remove(plan);
    }
  }

  /** The plan that the file is part of: itself where no other uses it. Open plans go before others. */
  Path planOf(Path file, Buffers buffers) {
    Set<Path> below = reachable(file);
    return uses.keySet().stream()
        .filter(plan -> !plan.equals(file) && !below.contains(plan) && reachable(plan).contains(file))
        .filter(plan -> uses.keySet().stream().noneMatch(other -> isAbove(other, plan)))
        .min(Comparator.comparing((Path plan) -> buffers.at(plan).isEmpty()).thenComparing(Comparator.naturalOrder()))
        .orElse(file);
  }

  /** Whether one file uses another and is not used by it in turn. */
  private boolean isAbove(Path one, Path other) {
    return !one.equals(other) && reachable(one).contains(other) && !reachable(other).contains(one);
  }

  private Set<Path> reachable(Path from) {
    Set<Path> seen = new LinkedHashSet<>();
    Deque<Path> open = new ArrayDeque<>(List.of(from));
    while (!open.isEmpty()) {
      for (Path used : uses.getOrDefault(open.pop(), List.of())) {
        if (seen.add(used)) {
          open.push(used);
        }
      }
    }
    return seen;
  }
}
