package wattle.server;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/** The files that a file names in its {@code use} lines. */
final class UsedFiles {
  private UsedFiles() {}

  static List<Path> of(PlanTree tree, Path path) {
    List<Path> used = new ArrayList<>();
    for (Tree.Item item : tree.items()) {
      if (item instanceof Tree.Use use && use.quoted()) {
        try {
          used.add(path.resolveSibling(use.target().text()).normalize());
        } catch (InvalidPathException e) {
          continue; // no path at all; the compiler has a finding for it
        }
      }
    }
    return used;
  }
}
