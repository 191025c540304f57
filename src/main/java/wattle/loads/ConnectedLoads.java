package wattle.loads;

import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.House;
import wattle.model.Load;
import wattle.model.LoadClass;
import wattle.model.Panel;
import wattle.model.Point;
import wattle.model.Status;

/**
 * What everything that is connected would draw at once, by branch and by panel.
 *
 * <p>A load from a leg to the neutral counts wholly on its leg; one between two legs counts half of its volt-amperes on each, and its
 * whole current in both. A source that feeds back (solar, storage) is no load, and what is to be removed is not counted. A panel carries
 * its branches and the panels that it feeds.
 *
 * @param branches by name, in the order of the plan; a branch without loads has {@link LegLoads#NONE}
 * @param panels likewise
 */
public record ConnectedLoads(Map<String, LegLoads> branches, Map<String, LegLoads> panels) {
  public ConnectedLoads {
    branches = Collections.unmodifiableMap(new LinkedHashMap<>(branches));
    panels = Collections.unmodifiableMap(new LinkedHashMap<>(panels));
  }

  /** Of a whole house. */
  public static ConnectedLoads of(House house) {
    Map<String, LegLoads> branches = new LinkedHashMap<>();
    house.branches().forEach((name, branch) -> branches.put(name, ofBranch(house, branch, device -> true)));
    Map<String, LegLoads> panels = new LinkedHashMap<>();
    for (Panel panel : house.panels().values()) {
      panels.put(panel.name(), ofPanel(house, panel, branches, new HashSet<>()));
    }
    return new ConnectedLoads(branches, panels);
  }

  /** Of one branch; {@link LegLoads#NONE} for a name that the plan has not. */
  public LegLoads branch(String name) {
    return branches.getOrDefault(name, LegLoads.NONE);
  }

  /** Of one panel, with those that it feeds. */
  public LegLoads panel(String name) {
    return panels.getOrDefault(name, LegLoads.NONE);
  }

  /** What a breaker carries: its branch or panel; of a branch with one breaker for each hot, the hot that is its own. */
  public LegLoads behind(House house, Breaker breaker) {
    if (breaker.target() instanceof Breaker.Target.ToPanel to) {
      return panel(to.panel());
    }
    Optional<Branch> fed = house.branchOf(breaker);
    if (fed.isEmpty()) {
      return LegLoads.NONE;
    }
    Branch branch = fed.get();
    LegLoads all = branch(branch.name());
    if (branch.hots().stream().allMatch(h -> h.breaker().equals(breaker.id()))) {
      return all;
    }
    LegLoads own = LegLoads.NONE;
    for (int hot = 0; hot < branch.hots().size(); hot++) {
      if (branch.hots().get(hot).breaker().equals(breaker.id())) {
        own = own.plus(onHot(house, branch, hot, device -> true));
      }
    }
    return own;
  }

  /** What each hot of a branch carries of some of its devices; two hots may come from one leg, each behind a breaker of its own. */
  public static List<LegLoads> ofHots(House house, Branch branch, Predicate<Device> some) {
    return IntStream.range(0, branch.hots().size()).mapToObj(hot -> onHot(house, branch, hot, some)).toList();
  }

  private static LegLoads onHot(House house, Branch branch, int hot, Predicate<Device> some) {
    LegSums alone = new LegSums();
    LegSums across = new LegSums();
    forEachLoad(house, branch, some, load -> {
      if (load.connection() instanceof Load.Connection.HotToNeutral to) {
        if (to.hot() == hot) {
          alone.add(load, branch);
        }
      } else {
        across.add(load, branch);
      }
    });
    return branch.hots().get(hot).leg().map(leg -> alone.loads().plus(across.loads().only(leg))).orElse(alone.loads());
  }

  /** The conductors of the supply between which something of a branch is connected; absent where a leg is not known. */
  public static Optional<Ends> ends(Load.Connection connection, Branch branch) {
    return LegSums.ends(connection, branch);
  }

  /** Of some devices of a branch. */
  public static LegLoads ofBranch(House house, Branch branch, Predicate<Device> some) {
    LegSums sums = new LegSums();
    forEachLoad(house, branch, some, load -> sums.add(load, branch));
    return sums.loads();
  }

  private static void forEachLoad(House house, Branch branch, Predicate<Device> some, Consumer<Load> taker) {
    if (branch.status() == Status.TO_REMOVE) {
      return;
    }
    for (Point point : branch.points()) {
      for (String name : point.devices()) {
        Device device = house.devices().get(name);
        if (device != null && device.status() != Status.TO_REMOVE && some.test(device)) {
          for (Load load : device.loads()) {
            if (load.voltAmperes() != 0 && load.loadClass() != LoadClass.SOURCE) {
              taker.accept(load);
            }
          }
        }
      }
    }
  }

  private static LegLoads ofPanel(House house, Panel panel, Map<String, LegLoads> branches, Set<String> above) {
    LegLoads sum = LegLoads.NONE;
    if (!above.add(panel.name())) {
      return sum; // feeders that run in a circle are a finding of the binder
    }
    Set<String> counted = new HashSet<>();
    for (Breaker breaker : panel.breakers()) {
      if (breaker.target() instanceof Breaker.Target.ToBranch to && counted.add(to.branch())) {
        sum = sum.plus(branches.getOrDefault(to.branch(), LegLoads.NONE));
      } else if (breaker.target() instanceof Breaker.Target.ToPanel to && house.panels().containsKey(to.panel())) {
        sum = sum.plus(ofPanel(house, house.panels().get(to.panel()), branches, above));
      }
    }
    above.remove(panel.name());
    return sum;
  }
}
