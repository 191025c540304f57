package wattle.read;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Mistake;
import wattle.library.Library;
import wattle.library.LibraryLoader;
import wattle.library.Limit;
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
  private List<Finding> misfits = List.of();
  private Library whole = Library.EMPTY;

  /**
   * The whole library, and what is wrong in the part of it that the plan's own files add.
   *
   * @param standard the packs of the standard library that the plan names
   * @param files the files of the plan
   */
  public Checked<Library> of(Library standard, List<PlanTree> files) {
    List<Tree.Item> items = files.stream().flatMap(f -> f.items().stream()).filter(LibraryLoader::isOfLibrary).toList();
    boolean sameItems = isSame(items);
    if (!sameItems) {
      own = LibraryLoader.load(files);
      ownItems = items;
    }
    if (!sameItems || standard != packs) {
      packs = standard;
      misfits = misfits(standard, items);
      whole = items.isEmpty() ? standard : standard.with(withoutMisfits(own.value(), standard));
    }
    List<Finding> findings = new ArrayList<>(own.findings());
    findings.addAll(misfits);
    return new Checked<>(whole, findings);
  }

  /** Limits of a plan that are of another kind than those that they replace; those of the packs stay in force. */
  private List<Finding> misfits(Library standard, List<Tree.Item> items) {
    return items.stream().filter(Tree.Limit.class::isInstance).map(Tree.Limit.class::cast)
        .filter(written -> own.value().limit(written.name().text()).filter(limit -> !fits(limit, standard)).isPresent())
        .map(
            written -> Finding
                .error(Mistake.DIMENSION_MISMATCH,
                    "limit '" + written.name() + "' cannot be " + own.value().limits().get(written.name().text()).value())
                .at(written.value().span(), standard.limits().get(written.name().text()).value().dimension().trade() + " is expected here")
                .because("The limit of the pack is used.").build())
        .toList();
  }

  private static boolean fits(Limit limit, Library standard) {
    return standard.limit(limit.name()).map(replaced -> replaced.value().dimension().equals(limit.value().dimension())).orElse(true);
  }

  private static Library withoutMisfits(Library own, Library standard) {
    Map<String, Limit> limits = new LinkedHashMap<>(own.limits());
    limits.values().removeIf(limit -> !fits(limit, standard));
    return limits.size() == own.limits().size()
        ? own
        : new Library(own.packs(), own.parts(), own.cables(), own.tables(), limits, own.rules());
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
