package wattle.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import wattle.read.PlanFolder;
import wattle.read.SourceReader;

/**
 * Plans that were named one by one, or by the folders they are in, each once.
 *
 * @param names of the plans, in the order in which they were named, those of a folder in the order of their names
 * @param problems folders that could not be looked into or have no plan, one line each
 */
record NamedPlans(List<String> names, List<String> problems) {
  NamedPlans {
    names = List.copyOf(names);
    problems = List.copyOf(problems);
  }

  /** Whether something that was named is a folder. */
  static boolean anyFolder(List<String> named) {
    return named.stream().anyMatch(NamedPlans::isFolder);
  }

  static boolean isFolder(String named) {
    return !named.equals("-") && Files.isDirectory(ResultOutput.path(named));
  }

  /** Plans to compile: of a folder those that no other file of it uses. */
  static NamedPlans toCompile(List<String> named, SourceReader reader) {
    return of(named, folder -> folder.plans(reader));
  }

  /** All files, those that others use as well. */
  static NamedPlans everyFile(List<String> named) {
    return of(named, PlanFolder::files);
  }

  private interface Choice {
    List<String> of(PlanFolder folder);
  }

  private static NamedPlans of(List<String> named, Choice choice) {
    List<String> names = new ArrayList<>();
    List<String> problems = new ArrayList<>();
    Set<Path> seen = new HashSet<>();
    for (String each : named) {
      if (!isFolder(each)) {
        add(names, seen, each);
        continue;
      }
      PlanFolder folder = PlanFolder.of(Path.of(each));
      problems.addAll(folder.problems());
      if (folder.files().isEmpty() && folder.problems().isEmpty()) {
        problems.add(each + ": no plan is in this folder; the name of a plan ends in .wattle");
      }
      choice.of(folder).forEach(f -> add(names, seen, f));
    }
    return new NamedPlans(names, problems);
  }

  private static void add(List<String> names, Set<Path> seen, String name) {
    if (name.equals("-") || seen.add(real(name))) {
      names.add(name);
    }
  }

  private static Path real(String name) {
    Path path = ResultOutput.path(name);
    try {
      return path.toRealPath();
    } catch (IOException e) {
      return path.toAbsolutePath().normalize(); // not there: whoever reads it says so
    }
  }

  /** Tells the problems; the exit code that they alone lead to comes back. */
  int tellProblems(PrintWriter err) {
    problems.forEach(p -> err.println("wattle: " + p));
    return problems.isEmpty() ? ExitCode.FINE : ExitCode.USAGE;
  }
}
