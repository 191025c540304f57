package wattle.syntax;

import java.util.List;
import java.util.Set;
import wattle.finding.Source;

/**
 * One file as a tree.
 *
 * @param items what could be read, in the order written
 * @param damagedWords every word on lines that could not be read in full; what is missing elsewhere may stand there, so
 *     no phase complains of the absence of a thing that one of these words names
 */
public record PlanTree(Source source, List<Tree.Item> items, Set<String> damagedWords) {
  public PlanTree {
    items = List.copyOf(items);
    damagedWords = Set.copyOf(damagedWords);
  }

  /** Whether some line could not be read in full. */
  public boolean isDamaged() {
    return !damagedWords.isEmpty();
  }
}
