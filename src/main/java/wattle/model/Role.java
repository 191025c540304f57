package wattle.model;

import java.util.Optional;

/** What a conductor does on one run. */
public sealed interface Role {
  /** A hot of the branch, by its place among the branch's hots from 0. */
  record Hot(int hot) implements Role {}

  record Neutral() implements Role {}

  record Ground() implements Role {}

  /** The wire from a switch to what it controls, on one hot of the branch. */
  record SwitchLeg(String fromSwitch, int hot) implements Role {}

  /** One of the wires between two switches that control the same lights. */
  record Traveler(String betweenSwitch, String andSwitch, int number, int hot) implements Role {}

  /** The signal wire by which alarms sound together: it joins their leads and carries no current of the branch. */
  record Interconnect() implements Role {}

  /** Connected to nothing. */
  record Spare() implements Role {}

  /** Whether it takes no part in the circuit: of a signal, or connected to nothing. */
  static boolean isApart(Role role) {
    return role instanceof Spare || role instanceof Interconnect;
  }

  /** Which hot of its branch a conductor carries, from 0, be it switched or not; absent where it carries none. */
  static Optional<Integer> hotOf(Role role) {
    if (role instanceof Hot h) {
      return Optional.of(h.hot);
    }
    if (role instanceof SwitchLeg s) {
      return Optional.of(s.hot);
    }
    if (role instanceof Traveler t) {
      return Optional.of(t.hot);
    }
    if (isApart(role) || role instanceof Neutral || role instanceof Ground) {
      return Optional.empty();
    }
    throw new AssertionError(role);
  }

  /**
   * In the trade's words: {@code hot A}, {@code neutral}, {@code switch leg of hall.sw}; one of another hot than the first says
   * which: {@code switch leg B of well.sw}.
   */
  static String text(Role role, java.util.List<BranchHot> hots) {
    if (role instanceof Hot hot) {
      Optional<Leg> leg = hot.hot < hots.size() ? hots.get(hot.hot).leg() : Optional.empty();
      return leg.map(l -> "hot " + l).orElse("hot");
    }
    if (role instanceof Neutral) {
      return "neutral";
    }
    if (role instanceof Ground) {
      return "ground";
    }
    if (role instanceof SwitchLeg leg) {
      Optional<Leg> on = leg.hot > 0 && leg.hot < hots.size() ? hots.get(leg.hot).leg() : Optional.empty();
      return "switch leg " + on.map(l -> l + " ").orElse("") + "of " + leg.fromSwitch;
    }
    if (role instanceof Traveler t) {
      return "traveler " + t.number + " between " + t.betweenSwitch + " and " + t.andSwitch;
    }
    if (role instanceof Interconnect) {
      return "interconnect of alarms";
    }
    if (role instanceof Spare) {
      return "spare";
    }
    throw new AssertionError(role);
  }
}
