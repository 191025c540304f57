package wattle.read;

import java.util.List;
import wattle.finding.Checked;
import wattle.library.Library;
import wattle.library.LibraryLoader;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/**
 * The library of a plan: the packs that it names, with what its own files add. What was made the last time is kept while
 * packs and files say the same; for one thread.
 */
public final class PlanLibrary {
  private Library packs = Library.EMPTY;
  private List<Tree.Item> ownItems = List.of();
  private Checked<Library> own = new Checked<>(Library.EMPTY, List.of());
  private Library whole = Library.EMPTY;

  /**
   * The whole library, and what is wrong in the part of it that the plan's own files add.
   *
   * @param standard the packs of the standard library that the plan names
   * @param files the files of the plan
   */
  public Checked<Library> of(Library standard, List<PlanTree> files) {
    List<Tree.Item> items = files.stream().flatMap(f -> f.items().stream()).filter(LibraryLoader::isOfLibrary).toList();
    if (standard != packs || !isSame(items)) {
      own = LibraryLoader.load(files, standard);
      ownItems = items;
      packs = standard;
      whole = items.isEmpty() ? standard : standard.with(own.value());
    }
    return new Checked<>(whole, own.findings());
  }

  // Objects, not values: trees that are equal may stand in different places.
  private boolean isSame(List<Tree.Item> items) {
    if (items.size() != ownItems.size()) {
      return false;
    }
    for (int i = 0; i < items.size(); i++) {
      if (items.get(i) != ownItems.get(i)) {
        return false;
      }
    }
    return true;
  }
}
