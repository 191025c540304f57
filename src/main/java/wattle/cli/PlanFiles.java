package wattle.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Set;
import wattle.compiler.Compilation;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/** The files that a plan is made of, and those it asks for and could not be given. */
final class PlanFiles {
  private PlanFiles() {}

  static Set<Path> of(Compilation plan) {
    Set<Path> paths = new LinkedHashSet<>();
    for (PlanTree file : plan.files()) {
      Path path = Path.of(file.source().name());
      paths.add(path);
      for (Tree.Item item : file.items()) {
        if (item instanceof Tree.Use use && use.quoted()) {
          add(paths, path, use.target().text());
        }
      }
    }
    return paths;
  }

  private static void add(Set<Path> paths, Path from, String target) {
    try {
      paths.add(from.resolveSibling(target).normalize());
    } catch (InvalidPathException e) {
      return; // a path that no file can have is a finding already, and no file of that name will appear
    }
  }
}
