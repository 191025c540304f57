package wattle.faults;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.LinkedList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.conductors.Conductors;
import wattle.derivation.Derivation;
import wattle.library.Library;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Section;
import wattle.model.Service;
import wattle.model.Stretch;

/**
 * What a bolted fault can drive at every panel and every box of a house.
 *
 * <p>A house is a tree from its source, so that the way of a fault current is one chain of runs, out on a hot and back on
 * another hot, the neutral or the ground, and its impedances add up as complex figures: {@code I = U / |Z_source + Σ ℓ ×
 * (z_out + z_back)|}; a three-phase fault has no way back, and is that of one leg to the point where the three meet. No network needs
 * solving, and the work is in proportion to the number of boxes. Where neutral and ground are joined again at a panel that another one
 * feeds, both carry the current back from there; what a bond beyond a place adds to that place is not in it. What an interlock keeps
 * apart from the supplier's network, such as the circuit of a generator, has no faults here.
 *
 * <p>The current is greatest with cold conductors and least with conductors at the rating of their insulation; both are kept. Other
 * sources of the house add to the greatest current, see {@link Contributions}; what motors add is not in it, nor are the joints and the
 * arc, which only lower it.
 */
public final class Faults {
  private final Map<String, FaultPoint> panels;
  private final Map<String, List<FaultPoint>> branches;
  private final Set<String> unbounded;

  private Faults(Map<String, FaultPoint> panels, Map<String, List<FaultPoint>> branches, Set<String> unbounded) {
    this.panels = panels;
    this.branches = branches;
    this.unbounded = unbounded;
  }

  /** Of every panel and branch of a house. */
  public static Faults of(House house, Library library, Conductors conductors) {
    Work work = new Work(house, new Sources(library), new Contributions(house, library), new Runs(conductors, library),
        new LinkedHashMap<>(), new LinkedHashSet<>());
    Map<String, List<FaultPoint>> branches = new LinkedHashMap<>();
    house.panels().values().forEach(p -> work.panel(p, new HashSet<>()));
    house.branches().values().forEach(b -> branches.put(b.name(), work.branch(b)));
    Map<String, FaultPoint> panels = new LinkedHashMap<>();
    house.panels().keySet().forEach(name -> panels.put(name, new FaultPoint(name, work.panels.get(name))));
    return new Faults(panels, branches, work.unbounded);
  }

  /** At the bus of a panel. */
  public FaultPoint panel(String name) {
    return panels.getOrDefault(name, new FaultPoint(name, List.of()));
  }

  /** At each point of a branch, in the order of {@link Branch#points}; the first is its panel. */
  public List<FaultPoint> branch(String name) {
    return branches.getOrDefault(name, List.of());
  }

  /** Services whose stated source has no impedance or no end of it, so that no current follows from it. */
  Set<String> unbounded() {
    return Set.copyOf(unbounded);
  }

  private record Work(
      House house, Sources sources, Contributions others, Runs runs, Map<String, List<Fault>> panels, Set<String> unbounded) {
    /** @param underway panels that are being worked out, so that feeders in a circle end */
    private List<Fault> panel(Panel panel, Set<String> underway) {
      List<Fault> known = panels.get(panel.name());
      if (known == null) {
        known = underway.add(panel.name()) ? fedBy(panel, underway) : List.of();
        panels.put(panel.name(), known);
      }
      return known;
    }

    /** What the supplier's network does not reach: it lies behind an interlock, which is open while that feeds the house. */
    private static boolean isApart(Breaker breaker) {
      return breaker.interlocked();
    }

    private List<Fault> fedBy(Panel panel, Set<String> underway) {
      if (panel.supply() instanceof PanelSupply.FromService from) {
        return Optional.ofNullable(house.services().get(from.service())).map(s -> fromService(panel, s)).orElse(List.of());
      }
      if (panel.supply() instanceof PanelSupply.FromBreaker from) {
        Optional<Breaker> breaker = house.breaker(from.breaker());
        Optional<Panel> parent = Optional.ofNullable(house.panels().get(from.breaker().panel()));
        if (breaker.isEmpty() || isApart(breaker.get()) || parent.isEmpty() || panel.feeder().isEmpty()) {
          return List.of();
        }
        List<Fault> near = new ArrayList<>(panel(parent.get(), underway));
        near.removeIf(f -> f.kind().hots() > breaker.get().poles().size());
        List<Fault> far = along(panel.feeder().get(), near.stream().map(Fault::behindBreaker).toList(), panel, "feeder of " + panel.name());
        return panel.bonded() && !near.isEmpty() ? joined(panel, parent.get(), far) : far;
      }
      return List.of();
    }

    /**
     * Where neutral and ground are joined at the end of a feeder too, they lie side by side back to the panel before it where they
     * are joined, and faults to either are the same.
     */
    private List<Fault> joined(Panel panel, Panel parent, List<Fault> far) {
      LinkedList<Runs.Feeder> feeders = new LinkedList<>();
      feeders.add(new Runs.Feeder(panel.name(), panel.feeder().orElseThrow()));
      Panel at = parent;
      while (!at.bonded() && at.supply() instanceof PanelSupply.FromBreaker from && at.feeder().isPresent()) {
        feeders.addFirst(new Runs.Feeder(at.name(), at.feeder().get()));
        at = house.panels().get(from.breaker().panel());
      }
      boolean grounds = at.bonded();
      List<Fault> all = new ArrayList<>(far);
      all.removeIf(f -> f.kind() == FaultKind.LINE_NEUTRAL || f.kind() == FaultKind.LINE_GROUND);
      panels.get(at.name()).stream().filter(f -> f.kind() == FaultKind.LINE_NEUTRAL).findFirst()
          .flatMap(f -> runs.carry(f.behindBreaker(), feeders, grounds, panel.system()))
          .ifPresent(f -> {
            all.add(f);
            all.add(f.as(FaultKind.LINE_GROUND));
          });
      return all;
    }

    // Between the service and the first panel the neutral is the ground; they part at the panel.
    private List<Fault> fromService(Panel panel, Service service) {
      List<SourceLoop> loops = sources.of(service);
      if (!loops.stream().allMatch(SourceLoop::isBounded)) {
        unbounded.add(service.name());
        return List.of();
      }
      List<Derivation> added = others.beside(service);
      List<Fault> faults = loops.stream().map(l -> Fault.at(l, added)).toList();
      if (service.run().isPresent()) {
        faults = along(service.run().get(), faults, panel, "service run");
      }
      if (panel.feeder().isPresent()) {
        faults = along(panel.feeder().get(), faults, panel, "feeder of " + panel.name());
      }
      List<Fault> all = new ArrayList<>(faults);
      if (isBonded(service)) {
        faults.stream().filter(f -> f.kind() == FaultKind.LINE_NEUTRAL).map(f -> f.as(FaultKind.LINE_GROUND)).forEach(all::add);
      }
      return all;
    }

    // The grounds of all panels at a service come together there, so that the bond of one is that of all.
    private boolean isBonded(Service service) {
      return house.panels().values().stream()
          .anyMatch(p -> p.bonded() && p.supply() instanceof PanelSupply.FromService from && from.service().equals(service.name()));
    }

    private List<Fault> along(Stretch stretch, List<Fault> near, Panel panel, String name) {
      List<Fault> far = new ArrayList<>();
      for (Fault fault : near) {
        Optional<Ways> ways = Ways.in(stretch.wiring(), fault.kind());
        if (ways.isPresent() && stretch.length().isPresent()) {
          runs.carry(
              fault, name, stretch.length().get(), stretch.wiring(), ways.get(), panel.system(), stretch.origin().name())
              .ifPresent(far::add);
        }
      }
      return far;
    }

    List<FaultPoint> branch(Branch branch) {
      Optional<Panel> panel = branch.panel().map(house.panels()::get);
      if (panel.isEmpty() || branch.points().isEmpty()) {
        return List.of();
      }
      FaultPoint[] points = new FaultPoint[branch.points().size()];
      boolean apart = branch.hots().stream().flatMap(h -> house.breaker(h.breaker()).stream()).anyMatch(Work::isApart);
      List<Fault> near = apart ? List.of() : panels.get(panel.get().name());
      points[0] = new FaultPoint(panel.get().name(), near.stream().map(Fault::behindBreaker).toList());
      for (Section section : branch.sections()) {
        points[section.to()] = new FaultPoint(nameOf(branch, section.to()), beyond(section, points[section.from()], branch, panel.get()));
      }
      return List.of(points);
    }

    private static String nameOf(Branch branch, int point) {
      return branch.points().get(point).box().or(branch::panel).orElse("");
    }

    private List<Fault> beyond(Section section, FaultPoint near, Branch branch, Panel panel) {
      List<Fault> far = new ArrayList<>();
      if (section.length().isEmpty() || near.faults().isEmpty()) {
        return far;
      }
      String name = near.place() + " to " + nameOf(branch, section.to());
      for (Fault fault : near.faults()) {
        Ways.in(section, branch, fault.kind())
            .flatMap(
                w -> runs.carry(
                    fault, name, section.length().get(), section.wiring(), w, panel.system(), section.origin().whole()))
            .ifPresent(far::add);
      }
      return far;
    }
  }
}
