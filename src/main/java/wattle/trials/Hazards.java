package wattle.trials;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.derivation.Derivation;
import wattle.library.Library;
import wattle.model.House;
import wattle.model.Trial;
import wattle.network.Joined;

/**
 * What can hurt somebody in a house, so that two states of it can be held against each other: which metal has a way back to its source
 * for the current of a fault, and the dangers of the house as stated and of each of its trials.
 */
public final class Hazards {
  /** Dangers that the trials tell of, though they are what protects, or what the trial itself brought about. */
  private static final Set<Danger.Kind> NO_HAZARD = Set.of(Danger.Kind.PROTECTION, Danger.Kind.FAULT, Danger.Kind.NOT_SERVED);

  /** Currents of hots above what carries or guards them. */
  private static final Set<Danger.Kind> OVERLOADS = Set.of(Danger.Kind.CONDUCTOR_OVER, Danger.Kind.OVERCURRENT);

  /** Figures come out of a solver; a change of less than this part is none. */
  private static final double SAME = 0.01;

  private static final String AS_STATED = "as stated";

  /** A danger and how grave it is, in units of its own. */
  private record Weighed(Danger danger, double weight) {}

  private final Set<String> withPath;
  private final Set<String> metals;
  private final Set<String> trials;
  private final Map<String, Weighed> dangers;

  private Hazards(Set<String> withPath, Set<String> metals, Set<String> trials, Map<String, Weighed> dangers) {
    this.withPath = Set.copyOf(withPath);
    this.metals = Set.copyOf(metals);
    this.trials = Set.copyOf(trials);
    this.dangers = Map.copyOf(dangers);
  }

  public static Hazards of(House house, Library library) {
    Trials engine = new Trials(house, library);
    Map<String, TrialResult> results = new HashMap<>();
    results.put(AS_STATED, engine.stated());
    for (Trial trial : house.trials().values()) {
      results.put("in " + trial.name(), engine.run(trial).value());
    }
    Map<String, Weighed> dangers = new HashMap<>();
    results.forEach((trial, result) -> {
      for (Danger danger : result.dangers()) {
        if (!NO_HAZARD.contains(danger.kind())) {
          dangers.merge(trial + " " + danger.kind() + " " + danger.at(), new Weighed(danger, weight(danger)),
              (a, b) -> a.weight >= b.weight ? a : b);
        }
      }
    });
    Set<String> metals = new HashSet<>();
    Set<String> withPath = new HashSet<>();
    paths(results.get(AS_STATED).network(), metals, withPath);
    return new Hazards(withPath, metals, results.keySet(), dangers);
  }

  /** A fault finds its way where metal joins the part to the star point of a source. */
  private static void paths(HouseNetwork network, Set<String> metals, Set<String> withPath) {
    Joined joined = Joined.of(network.network());
    for (HouseNetwork.Metal metal : network.metals()) {
      metals.add(metal.name());
      boolean path = network.windings().entrySet().stream()
          .anyMatch(w -> joined.areJoined(metal.box(), metal.terminal(), w.getKey(), w.getValue().star()));
      if (path) {
        withPath.add(metal.name());
      }
    }
  }

  /** The lower a voltage that is too low, the graver. */
  private static double weight(Danger danger) {
    double figure = danger.figure().flatMap(Derivation::quantity).map(q -> q.si()).orElse(0.0);
    return danger.kind() == Danger.Kind.UNDERVOLTAGE ? -figure : figure;
  }

  /** Whether metal of a house has no way back to its source, by the name of what it belongs to. */
  public boolean hasPath(String metal) {
    return withPath.contains(metal);
  }

  /**
   * Whether the circuit of an overloaded conductor was overloaded by as much in the same trial. Less voltage lost on the way may bring the
   * current of a motor just below what opens its breaker, which makes another danger of a current that has fallen.
   */
  private boolean overloads(String key, Weighed now) {
    return OVERLOADS.contains(now.danger.kind())
        && dangers.entrySet().stream().anyMatch(was -> OVERLOADS.contains(was.getValue().danger.kind())
            && was.getValue().danger.branch().equals(now.danger.branch()) && trialOf(was.getKey()).equals(trialOf(key))
            && now.weight <= was.getValue().weight * (1 + SAME));
  }

  private String trialOf(String key) {
    return trials.stream().filter(t -> key.startsWith(t + " ")).max(Comparator.comparingInt(String::length)).orElse("");
  }

  /**
   * What is worse here than in another state of the house, each in a sentence without its full stop.
   *
   * @param paths whether only the ways of faults are held against each other, since the other state lacked what could not be read
   */
  public List<String> worseThan(Hazards before, boolean paths) {
    List<String> worse = new ArrayList<>();
    before.withPath.stream().filter(m -> metals.contains(m) && !withPath.contains(m)).sorted()
        .forEach(m -> worse.add("the metal of " + m + " would lose its fault-current path"));
    if (paths) {
      return worse;
    }
    dangers.entrySet().stream().sorted(Map.Entry.comparingByKey()).forEach(each -> {
      Optional<Weighed> was = Optional.ofNullable(before.dangers.get(each.getKey()));
      boolean known = before.trials.stream().anyMatch(t -> each.getKey().startsWith(t + " "));
      double weight = each.getValue().weight;
      if (known && was.filter(w -> weight <= w.weight + SAME * Math.abs(w.weight)).isEmpty()
          && !before.overloads(each.getKey(), each.getValue())) {
        worse.add(each.getValue().danger.words());
      }
    });
    return worse;
  }
}
