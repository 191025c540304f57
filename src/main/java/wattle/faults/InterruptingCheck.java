package wattle.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.finding.Citation;
import wattle.finding.Finding;
import wattle.finding.Span;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.model.Service;
import wattle.model.Status;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Whether what opens a fault in a panel can open it. A single pole never sees the current between two legs. */
final class InterruptingCheck {
  private static final String RULE = "interrupting-rating-below-fault";

  private static final Citation USUAL = new Citation("NFPA 70-2023", "110.9", false);

  private final House house;
  private final Optional<Quantity> usual;
  private final Citation source;

  InterruptingCheck(House house, Library library) {
    this.house = house;
    usual = library.limit("usual-interrupting").map(Limit::value);
    source = library.article(RULE).orElse(USUAL);
  }

  List<Finding> of(Panel panel, FaultPoint point) {
    List<Finding> findings = new ArrayList<>();
    List<Breaker> unstated = new ArrayList<>();
    panel.main()
        .filter(InterruptingCheck::opensFaults)
        .ifPresent(m -> m.interrupting().ifPresent(i -> main(panel, m, i, point).ifPresent(findings::add)));
    for (Breaker breaker : panel.breakers()) {
      if (breaker.status() == Status.TO_REMOVE) {
        continue;
      }
      double fault = worst(point, breaker.poles().size());
      if (breaker.interrupting().isPresent()) {
        Quantity interrupts = breaker.interrupting().get();
        if (exceeds(fault, interrupts)) {
          findings.add(stated(panel, "the " + word(breaker.device()) + " " + breaker.id(), breaker.origin().whole(), interrupts, fault));
        }
      } else if (usual.isPresent() && exceeds(fault, usual.get())) {
        unstated.add(breaker);
      }
    }
    boolean mainUnstated = usual.isPresent() && exceeds(point.mostAmperes(), usual.get())
        && panel.main().filter(InterruptingCheck::opensFaults).filter(m -> m.interrupting().isEmpty()).isPresent();
    if (mainUnstated || !unstated.isEmpty()) {
      findings.add(unstated(panel, unstated.size() + (mainUnstated ? 1 : 0), point));
    }
    return findings;
  }

  private static boolean opensFaults(MainDevice main) {
    return main.kind() == MainDevice.Kind.BREAKER || main.kind() == MainDevice.Kind.FUSE;
  }

  private Optional<Finding> main(Panel panel, MainDevice main, Quantity interrupts, FaultPoint point) {
    double fault = point.mostAmperes();
    return exceeds(fault, interrupts)
        ? Optional.of(stated(panel, "the main of '" + panel.name() + "'", main.origin().whole(), interrupts, fault))
        : Optional.empty();
  }

  private Finding stated(Panel panel, String what, Span place, Quantity interrupts, double fault) {
    Finding.Builder finding = Finding
        .error(RULE,
            what + " can interrupt " + kiloamperes(interrupts.si()) + ", and the available fault current is " + kiloamperes(fault))
        .at(place, "it can interrupt " + kiloamperes(interrupts.si()))
        .because("It may burst or weld shut instead of opening. The figure is for a bolted fault at the panel with cold conductors.")
        .figure("fault current at " + panel.name(), kiloamperes(fault))
        .figure("interrupting rating", kiloamperes(interrupts.si()))
        .fix("use one that can interrupt at least " + kiloamperes(fault) + ", or a combination that is tested and marked for it")
        .source(source)
        .about(panel.name());
    sourceOf(panel).ifPresent(s -> finding.with(s, "its source"));
    return finding.build();
  }

  private Finding unstated(Panel panel, int count, FaultPoint point) {
    String many = count == 1 ? "one breaker" : count + " breakers";
    Finding.Builder finding = Finding
        .warning(RULE,
            many + " in panel '" + panel.name() + "' state no interrupting rating, and the available fault current is "
                + kiloamperes(point.mostAmperes()))
        .at(panel.origin().name(), "more than the usual " + kiloamperes(usual.orElseThrow().si()))
        .because("Breakers sold for dwellings interrupt " + usual.orElseThrow() + "; they may fail to open more than that.")
        .figure("fault current at " + panel.name(), kiloamperes(point.mostAmperes()))
        .fix("state what each can interrupt, such as 22 kA, or ask the utility for the fault current at the service")
        .source(source)
        .about(panel.name());
    sourceOf(panel).ifPresent(s -> finding.with(s, "its source"));
    return finding.build();
  }

  private Optional<Span> sourceOf(Panel panel) {
    return house.serviceOf(panel).flatMap(Service::source).map(wattle.model.Source::span);
  }

  private static double worst(FaultPoint point, int poles) {
    return point.faults().stream()
        .filter(f -> f.kind().hots() <= poles)
        .mapToDouble(Fault::mostAmperes)
        .max()
        .orElse(0);
  }

  // A stated current comes back through a voltage and an impedance, and may differ from itself in its last digit.
  private static boolean exceeds(double fault, Quantity rating) {
    return fault > rating.si() * (1 + 1e-9);
  }

  private static String word(Breaker.Device device) {
    return device == Breaker.Device.FUSE ? "fuse" : "breaker";
  }

  private static String kiloamperes(double amperes) {
    return new Quantity(amperes, Units.KILOAMPERE).toString();
  }
}
