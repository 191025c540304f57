package wattle.trials;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * What feeds the house in a scenario.
 *
 * @param lost services behind which the supplier's network gives nothing
 * @param openMains panels that are cut from their supply, by their main or by a transfer
 * @param neutralAway those of them whose neutral went over with the hots
 * @param running sources that are on, by device, in the order of the plan
 */
record Supplies(Set<String> lost, Set<String> openMains, Set<String> neutralAway, Map<String, Running> running) {
  Supplies {
    lost = Set.copyOf(lost);
    openMains = Set.copyOf(openMains);
    neutralAway = Set.copyOf(neutralAway);
    running = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(running));
  }

  /** What a source does. */
  enum Part {
    /** Holds the voltage. */
    HOLDS,
    /** Gives its power at the voltage that it finds. */
    FOLLOWS,
    /** Is on and finds no voltage to follow. */
    STOPPED
  }

  /**
   * A source that is on.
   *
   * @param watts that it gives where it follows
   */
  record Running(String device, Part part, double watts) {}

  /** The supplier's network alone. */
  static Supplies usual() {
    return new Supplies(Set.of(), Set.of(), Set.of(), Map.of());
  }

  /** Whether anything but the supplier's network is on, or that is not. */
  boolean isUsual() {
    return lost.isEmpty() && openMains.isEmpty() && running.isEmpty();
  }

  boolean has(Part part) {
    return running.values().stream().anyMatch(r -> r.part() == part);
  }

  /** The same with these sources stopped. */
  Supplies stopping(Set<String> devices) {
    Map<String, Running> now = new LinkedHashMap<>();
    running.forEach((d, r) -> now.put(d, devices.contains(d) ? new Running(d, Part.STOPPED, r.watts()) : r));
    return new Supplies(lost, openMains, neutralAway, now);
  }

  Set<String> followers() {
    return running.values().stream().filter(r -> r.part() == Part.FOLLOWS).map(Running::device)
        .collect(java.util.stream.Collectors.toSet());
  }
}
