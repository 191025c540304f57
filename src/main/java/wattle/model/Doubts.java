package wattle.model;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import wattle.finding.Span;

/**
 * What the mistakes in a plan put in doubt: what was left out of its house, or could not be made as it was meant. Whoever judges
 * the house takes it as not known. A fault that leaves nothing out, such as two hots of one leg on one neutral, puts nothing in
 * doubt.
 *
 * @param names for each doubt the things it is about, by name; breakers by panel and slots, as in {@code P/2+4}. Those of the
 *     whole house name what is known to be left out, and stand there with an empty set where nothing is
 */
public record Doubts(Map<Doubt, Set<String>> names) {
  /** Of a house whose plan was understood. */
  public static final Doubts NONE = new Doubts(Map.of());

  /** Doubts about loads: any of them may make a sum of loads come out too small, or too large. */
  private static final Set<Doubt> OF_LOADS = EnumSet.of(Doubt.SERVICE, Doubt.SUPPLY, Doubt.SLOTS, Doubt.TARGET, Doubt.FED, Doubt.WAY,
      Doubt.CONTENTS, Doubt.KIT, Doubt.FIGURES, Doubt.STATUS, Doubt.SERVICES, Doubt.PANELS, Doubt.BRANCHES, Doubt.ROOMS,
      Doubt.DEVICES);

  /** Doubts that leave every voltage and current as it is. */
  private static final Set<Doubt> OF_NO_CURRENT = EnumSet.of(Doubt.ROOM, Doubt.USE, Doubt.BOX, Doubt.DWELLING, Doubt.TRIAL);

  public Doubts {
    Map<Doubt, Set<String>> copy = new EnumMap<>(Doubt.class);
    names.forEach((doubt, of) -> copy.put(doubt, Set.copyOf(of)));
    names = java.util.Collections.unmodifiableMap(copy);
  }

  /** What stands for a statement without a name, alike wherever it stands in its text and however that was read. */
  public static String nameOf(Span statement) {
    return statement.source().placed().map(p -> p.name() + ": ").orElse("") + statement.text();
  }

  public boolean isEmpty() {
    return names.isEmpty();
  }

  /** Whether a doubt is about the thing with a name. */
  public boolean has(Doubt doubt, String name) {
    Set<String> of = names.get(doubt);
    return of != null && of.contains(name);
  }

  /** Whether there is a doubt, about whatever. */
  public boolean has(Doubt doubt) {
    return names.containsKey(doubt);
  }

  /** Whether some load may be missing from the house, or hang elsewhere in it. */
  public boolean ofLoads() {
    return OF_LOADS.stream().anyMatch(this::has);
  }

  /** Whether voltages and currents may be others than the house gives. */
  public boolean ofCurrents() {
    return !OF_NO_CURRENT.containsAll(names.keySet());
  }

  /** Gathers doubts. */
  public static final class Builder {
    private final Map<Doubt, Set<String>> names = new EnumMap<>(Doubt.class);

    /** Adds a doubt about a thing. */
    public Builder add(Doubt doubt, String name) {
      names.computeIfAbsent(doubt, d -> new TreeSet<>()).add(name);
      return this;
    }

    /** Adds doubts about the whole house. */
    public Builder add(Doubt... doubts) {
      for (Doubt doubt : doubts) {
        names.computeIfAbsent(doubt, d -> new TreeSet<>());
      }
      return this;
    }

    public Doubts build() {
      return names.isEmpty() ? NONE : new Doubts(names);
    }
  }
}
