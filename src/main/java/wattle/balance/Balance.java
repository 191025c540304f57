package wattle.balance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.loads.ConnectedLoads;
import wattle.loads.LegLoads;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Panel;

/**
 * Proposes slots that bring the legs of a panel nearer to each other.
 *
 * <p>The load of a leg is what is connected to it in all, in volt-amperes and without demand factors, a load between two legs half on
 * each. Amperes of the legs and of the neutral, which follow from it, are added up as phasors. A panel is balanced by itself; of
 * several, those furthest from the service come first, so that a panel reckons with what its sub-panels will be. Breakers
 * that are pinned, back-fed or interlocked stay, and so do those whose leg the plan states. Two half-size breakers in one
 * slot stay together, and a breaker of several poles stays where it is: only its wires change places, so it goes on
 * spanning its legs, and the hots of a shared neutral stay on different legs under one handle. Why that loses nothing is
 * told at {@link Search}; one arrangement is left out: a half-size breaker moving into the free half of a slot.
 */
public final class Balance {
  /** Differences closer than this, in volt-amperes, count as equal: a tenth of an ampere at 120 V is worth no move. */
  public static final double RESOLUTION = 12;

  /** Steps after which a search stops and says how far off it may be; less than a second on most machines. */
  public static final long USUAL_MOST_STEPS = 1_000_000;

  /** Slots a panel is taken to have for the legs of its rows where the plan does not say. */
  private static final int UNSTATED_SLOTS = 400;

  private final House house;
  private final ConnectedLoads connected;
  private final int mostMoves;
  private final long mostSteps;
  private final Map<String, LegLoads> changes = new HashMap<>();

  private Balance(House house, ConnectedLoads connected, int mostMoves, long mostSteps) {
    this.house = house;
    this.connected = connected;
    this.mostMoves = mostMoves;
    this.mostSteps = mostSteps;
  }

  /**
   * Balances some panels of a house.
   *
   * @param panels names of panels of the house
   * @param mostMoves most moves in each panel; 0 shows the panels as they are
   * @param mostSteps most steps of the search in each panel
   * @return in the order of the names
   */
  public static List<PanelBalance> of(
      House house, ConnectedLoads connected, List<String> panels, int mostMoves, long mostSteps) {
    Balance balance = new Balance(house, connected, mostMoves, mostSteps);
    Map<String, PanelBalance> done = new LinkedHashMap<>();
    panels.stream()
        .sorted(Comparator.comparingInt(balance::depth).reversed())
        .forEach(name -> done.put(name, balance.panel(house.panels().get(name))));
    return panels.stream().map(done::get).toList();
  }

  /** How many panels are above one; feeders that run in a circle are a finding of the binder. */
  private int depth(String name) {
    Set<String> above = new HashSet<>();
    Optional<String> at = Optional.of(name);
    while (at.isPresent() && above.add(at.get())) {
      at = feederOf(at.get());
    }
    return above.size();
  }

  private Optional<String> feederOf(String name) {
    return house.panels().get(name).supply() instanceof wattle.model.PanelSupply.FromBreaker from
        && house.panels().containsKey(from.breaker().panel())
            ? Optional.of(from.breaker().panel())
            : Optional.empty();
  }

  private PanelBalance panel(Panel panel) {
    LegLoads before = connected.panel(panel.name());
    LegLoads beneath = before.plus(changesBeneath(panel.name()));
    Units units = new Units(house, panel, b -> connected.behind(house, b));
    List<Leg> legs = panel.legs();
    double[] start = legs.stream().mapToDouble(beneath::on).toArray();
    Map<Leg, List<Integer>> free = freeSlots(panel);
    int[] count = legs.stream().mapToInt(l -> free.get(l).size()).toArray();
    Search.Found found = new Search(units.movable(), start, count, RESOLUTION, mostSteps).run(mostMoves);
    LegLoads change = LegLoads.NONE;
    for (Search.Choice choice : found.choices()) {
      for (Breaker breaker : choice.unit().breakers()) {
        LegLoads carried = connected.behind(house, breaker);
        change = change.minus(carried).plus(carried.moved(leg -> moved(breaker, choice.option(), leg, legs)));
      }
    }
    changes.put(panel.name(), change);
    return new PanelBalance(
        panel, before, beneath.plus(change), Placing.of(panel, found.choices(), free), units.movable().size(),
        units.fixed(), found.steps(), found.proof());
  }

  private LegLoads changesBeneath(String name) {
    LegLoads sum = LegLoads.NONE;
    for (Map.Entry<String, LegLoads> change : changes.entrySet()) {
      Set<String> above = new HashSet<>();
      Optional<String> at = feederOf(change.getKey());
      while (at.isPresent() && above.add(at.get())) {
        if (at.get().equals(name)) {
          sum = sum.plus(change.getValue());
        }
        at = feederOf(at.get());
      }
    }
    return sum;
  }

  /** Where a leg of a breaker is after a move. */
  private static Leg moved(Breaker breaker, Unit.Option option, Leg leg, List<Leg> legs) {
    for (int pole = 0; pole < breaker.poles().size(); pole++) {
      if (breaker.poles().get(pole).leg().equals(Optional.of(leg))) {
        return legs.get(option.legs()[pole]);
      }
    }
    return leg;
  }

  /** Whole slots that nothing is in, by leg, from the top. Where the plan states no count, none below the last breaker. */
  private static Map<Leg, List<Integer>> freeSlots(Panel panel) {
    Set<Integer> taken = new HashSet<>();
    panel.breakers().forEach(b -> b.poles().forEach(p -> taken.add(p.slot().number())));
    int last = panel.slotCount().orElse(taken.stream().mapToInt(Integer::intValue).max().orElse(0));
    Map<Leg, List<Integer>> free = new EnumMap<>(Leg.class);
    panel.legs().forEach(l -> free.put(l, new ArrayList<>()));
    for (int slot = 1; slot <= last; slot++) {
      if (!taken.contains(slot)) {
        free.get(panel.order().legOf(slot, panel.slotCount().orElse(UNSTATED_SLOTS), panel.legs())).add(slot);
      }
    }
    return free;
  }
}
