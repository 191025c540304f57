package wattle.faults;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Citation;
import wattle.finding.Finding;
import wattle.finding.Span;
import wattle.library.Library;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.Doubt;
import wattle.model.Doubts;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Service;
import wattle.model.Status;

/** What is wrong with the breakers and runs of a house on a fault. */
public final class FaultChecks {
  private static final Citation FAULT_CURRENT = new Citation("IEEE 242", "short-circuit currents", true);

  /** Names of what is found here and may be silenced. */
  public static final Set<String> NAMES = Set.of("interrupting-rating-below-fault", ClearingCheck.BELOW_INSTANTANEOUS,
      "conductor-would-not-survive", "source-without-impedance", UnknownFaults.CURRENT, UnknownFaults.RUN,
      UnknownFaults.CLEARING);

  private FaultChecks() {}

  public static List<Finding> of(House house, Library library, Faults faults) {
    List<Finding> findings = new ArrayList<>();
    UnknownFaults unknown = new UnknownFaults(house, library);
    for (Service service : house.services().values()) {
      if (faults.unbounded().contains(service.name())) {
        service.source().ifPresent(s -> findings.add(unbounded(service.name(), s.span())));
      } else if (service.status() != Status.TO_REMOVE && !house.doubts().has(Doubt.SERVICE, service.name())) {
        unknown.of(service).ifPresent(findings::add);
      }
    }
    InterruptingCheck interrupting = new InterruptingCheck(house, library);
    ClearingCheck clearing = new ClearingCheck(library);
    Set<String> slowFeeders = new HashSet<>();
    // A feeder that is found answers for what hangs on it, so those next to the service come first.
    List<Panel> outward = house.panels().values().stream()
        .sorted(Comparator.comparingInt(p -> Upstream.through(house, faults, p).depth()))
        .toList();
    for (Panel panel : outward) {
      if (panel.status() != Status.TO_REMOVE && !inDoubt(house, panel)) {
        findings.addAll(interrupting.of(panel, faults.panel(panel.name())));
        unknown.of(panel, faults.panel(panel.name())).ifPresent(findings::add);
        feeder(house, panel).filter(b -> !clearing.knows(b, panel.system()))
            .flatMap(b -> clearing(clearing, unknown, b, panel, List.of(faults.panel(panel.name())))).ifPresent(findings::add);
        feeder(house, panel).flatMap(b -> feeder(house, faults, clearing, panel, b, slowFeeders)).ifPresent(f -> {
          findings.add(f);
          slowFeeders.add(panel.name());
        });
      }
    }
    for (Branch branch : house.branches().values()) {
      Optional<Panel> panel = branch.panel().map(house.panels()::get);
      Optional<Breaker> breaker = branch.hots().stream().findFirst().map(BranchHot::breaker).flatMap(house::breaker);
      if (branch.status() != Status.TO_REMOVE && panel.isPresent() && breaker.isPresent()
          && !inDoubt(house, branch, panel.get(), breaker.get())) {
        // Each fuse of a shared neutral has a curve of its own.
        branch.hots().stream().map(BranchHot::breaker).distinct().flatMap(id -> house.breaker(id).stream())
            .filter(b -> !clearing.knows(b, panel.get().system()))
            .forEach(b -> clearing(clearing, unknown, b, panel.get(), faults.branch(branch.name())).ifPresent(findings::add));
        clearing
            .of("'" + branch.name() + "'", branch.name(), branch.origin().name(), breaker.get(), panel.get().system(),
                faults.branch(branch.name()), Optional.of(Upstream.through(house, faults, panel.get())), slowFeeders)
            .ifPresent(findings::add);
      }
    }
    return findings;
  }

  /** What is left open of a fuse or breaker without a curve, with what its standard says of it. */
  private static Optional<Finding> clearing(
      ClearingCheck clearing, UnknownFaults unknown, Breaker breaker, Panel panel, List<FaultPoint> points) {
    Optional<ClearingCheck.Bound> bound = clearing.bound(breaker, panel.system(), points);
    return bound.isPresent() && bound.get().fault().isEmpty() ? Optional.empty() : unknown.clearing(breaker, points, bound);
  }

  private static Optional<Finding> feeder(
      House house, Faults faults, ClearingCheck clearing, Panel panel, Breaker breaker, Set<String> slowFeeders) {
    Optional<Panel> above = Optional.ofNullable(house.panels().get(breaker.id().panel()));
    List<FaultPoint> points = new ArrayList<>();
    above.ifPresent(a -> points.add(faults.panel(a.name())));
    points.add(faults.panel(panel.name()));
    return clearing.of("the feeder of '" + panel.name() + "'", panel.name(), panel.feeder().get().origin().name(), breaker, panel.system(),
        points, above.map(a -> Upstream.through(house, faults, a)), slowFeeders);
  }

  /** Whether a mistake in the plan leaves the ways to a panel, or its protection, other than the house has them. */
  private static boolean inDoubt(House house, Panel panel) {
    Doubts doubts = house.doubts();
    return !doubts.isEmpty() && (doubts.has(Doubt.SUPPLY, panel.name()) || doubts.has(Doubt.FEEDER, panel.name())
        || doubts.has(Doubt.PANEL, panel.name())
        || house.serviceOf(panel).filter(s -> doubts.has(Doubt.SERVICE, s.name())).isPresent()
        || panel.supply() instanceof PanelSupply.FromBreaker from && (inDoubt(doubts, from.breaker().toString())
            || house.panels().containsKey(from.breaker().panel()) && inDoubt(house, house.panels().get(from.breaker().panel()))));
  }

  private static boolean inDoubt(House house, Branch branch, Panel panel, Breaker breaker) {
    Doubts doubts = house.doubts();
    return !doubts.isEmpty() && (inDoubt(house, panel) || inDoubt(doubts, breaker.id().toString()) || doubts.has(Doubt.FED, branch.name())
        || doubts.has(Doubt.WAY, branch.name()) || doubts.has(Doubt.LENGTH, branch.name()));
  }

  private static boolean inDoubt(Doubts doubts, String breaker) {
    return doubts.has(Doubt.RATING, breaker) || doubts.has(Doubt.TRAITS, breaker) || doubts.has(Doubt.TARGET, breaker)
        || doubts.has(Doubt.LEGS, breaker);
  }

  private static Optional<Breaker> feeder(House house, Panel panel) {
    return panel.feeder().isPresent() && panel.supply() instanceof PanelSupply.FromBreaker from
        ? house.breaker(from.breaker())
        : Optional.empty();
  }

  private static Finding unbounded(String service, Span source) {
    return Finding.error("source-without-impedance", "no source of a house delivers what that of '" + service + "' would")
        .at(source, "more than 1000 kA, or nothing")
        .because("Its figures leave almost no impedance, or nothing else; the fault currents of the house were not calculated.")
        .fix("state what the utility gives, such as 50 kVA 1.8 % or available 10 kA")
        .source(FAULT_CURRENT)
        .about(service)
        .build();
  }
}
