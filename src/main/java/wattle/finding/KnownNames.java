package wattle.finding;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * All names of one kind in a plan, which may be many, for as many misspelled ones: each is answered as by {@link NearNames}, but compared
 * with a few of them only. Any number of threads may ask.
 */
public final class KnownNames {
  /** So many are compared one by one before they can be put in order; however many there are, that pays from the second question on. */
  private static final int FEW = 64;

  private final Collection<String> names;
  private final Map<String, List<String>> asked = new ConcurrentHashMap<>();
  private final AtomicBoolean before = new AtomicBoolean();
  private NameIndex fromStart;
  private NameIndex fromEnd;

  /** @param names none of which comes or goes once somebody has asked */
  public KnownNames(Collection<String> names) {
    this.names = names;
  }

  public Collection<String> names() {
    return names;
  }

  /** What {@link NearNames#of} says. */
  public List<String> near(String word) {
    return asked.computeIfAbsent(word, w -> sought(w, ""));
  }

  /** What {@link NearNames#of} says of all names but one. */
  public List<String> near(String word, String except) {
    List<String> near = near(word);
    return near.contains(except) ? sought(word, except) : near;
  }

  private List<String> sought(String word, String except) {
    if (isShort()) {
      return NearNames.of(word, names.stream().filter(n -> !n.equals(except)).toList());
    }
    order();
    List<String> near = List.of();
    Set<String> candidates = new LinkedHashSet<>();
    for (int edits = 1; edits <= NearNames.mostEdits(word) && near.size() < NearNames.MOST; edits++) {
      fromStart.search(word, edits, candidates::add);
      fromEnd.search(word, edits, candidates::add);
      candidates.remove(except);
      near = NearNames.of(word, candidates);
    }
    return near;
  }

  /** Whether {@link NearNames#of} says a name of any of these. */
  public boolean mayMean(String name) {
    List<String> only = List.of(name);
    if (isShort()) {
      return names.stream().anyMatch(n -> !NearNames.of(n, only).isEmpty());
    }
    order();
    Set<String> candidates = new LinkedHashSet<>();
    boolean found = false;
    for (int edits = 1; edits <= NearNames.MOST_EDITS && !found; edits++) {
      fromStart.search(name, edits, candidates::add);
      fromEnd.search(name, edits, candidates::add);
      found = candidates.stream().anyMatch(n -> !NearNames.of(n, only).isEmpty());
    }
    return found;
  }

  private boolean isShort() {
    return !before.getAndSet(true) || names.size() <= FEW;
  }

  private synchronized void order() {
    if (fromStart == null) {
      fromStart = new NameIndex(names, false);
      fromEnd = new NameIndex(names, true);
    }
  }
}
