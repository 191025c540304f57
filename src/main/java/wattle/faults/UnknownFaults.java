package wattle.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.finding.Citation;
import wattle.finding.Finding;
import wattle.library.Library;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Service;
import wattle.model.Source;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * What could not be checked of fault currents and of what opens them, with what to state: an absence would read as a good word. A plan
 * that names no code is not checked against one, so that nothing is missing there.
 */
final class UnknownFaults {
  static final String CURRENT = "fault-current-unknown";
  static final String RUN = "service-run-unstated";
  static final String CLEARING = "clearing-time-unknown";

  private static final Citation USUAL_INTERRUPTING = new Citation("NFPA 70-2023", "110.9", false);
  private static final Citation USUAL_COORDINATION = new Citation("NFPA 70-2023", "110.10", false);

  private final House house;
  private final Citation interrupting;
  private final Citation coordination;

  UnknownFaults(House house, Library library) {
    this.house = house;
    interrupting = library.article(CURRENT).orElse(USUAL_INTERRUPTING);
    coordination = library.article(CLEARING).orElse(USUAL_COORDINATION);
  }

  /** Of a service that says nothing of its source, or nothing of the way from a transformer. */
  Optional<Finding> of(Service service) {
    if (house.codes().isEmpty() || feeds(service).isEmpty()) {
      return Optional.empty();
    }
    if (service.source().isEmpty()) {
      return Optional.of(
          Finding.advice(CURRENT, "the available fault current at service '" + service.name() + "' is not known")
              .at(service.origin().name(), "no source is stated")
              .because("Not checked: whether breakers and fuses can interrupt a fault, and whether they open it in time.")
              .fix("state what the utility gives, such as source transformer 50 kVA 2 %, or source available 10 kA")
              .source(interrupting)
              .about(service.name())
              .build());
    }
    boolean byTransformer = service.source().get() instanceof Source.Transformer;
    return service.run().isPresent() || !byTransformer
        ? Optional.empty()
        : Optional.of(
            Finding.advice(RUN, "service '" + service.name() + "' states no run, and fault currents are figured without it")
                .at(service.origin().name(), "no run from its transformer")
                .because(
                    "Interrupting ratings are checked against more than the real fault current. Faults far away are figured too high "
                        + "as well, so they may take longer to clear than shown. Voltage drop is figured without the run as well.")
                .fix("state it, such as run 20 m of 4/0 Al triplex")
                .source(interrupting)
                .about(service.name())
                .build());
  }

  private List<Panel> feeds(Service service) {
    return house.panels().values().stream()
        .filter(p -> p.supply() instanceof PanelSupply.FromService from && from.service().equals(service.name()))
        .toList();
  }

  /** Of a panel whose feeder is not stated, where the fault current of its service is known. */
  Optional<Finding> of(Panel panel, FaultPoint point) {
    boolean known = house.serviceOf(panel).flatMap(Service::source).isPresent();
    if (house.codes().isEmpty() || !known || !point.faults().isEmpty() || !(panel.supply() instanceof PanelSupply.FromBreaker)
        || panel.feeder().isPresent()) {
      return Optional.empty();
    }
    return Optional.of(
        Finding.advice(CURRENT, "the available fault current at panel '" + panel.name() + "' is not known")
            .at(panel.origin().name(), "the plan does not give its feeder")
            .because("Not checked: whether breakers and fuses can interrupt a fault, and whether they open it in time.")
            .fix("state its feeder, such as by 10 m of 6/3 NM-B")
            .source(interrupting)
            .about(panel.name())
            .build());
  }

  /**
   * Of a fuse or breaker of which no curve is known, with the least fault that it would have to open.
   *
   * @param bound what the standard of a fuse leaves open; absent where none is known
   */
  Optional<Finding> clearing(Breaker breaker, List<FaultPoint> points, Optional<ClearingCheck.Bound> bound) {
    List<FaultPoint> faulted = new ArrayList<>(points);
    faulted.removeIf(p -> p.faults().isEmpty());
    if (house.codes().isEmpty() || breaker.rating().isEmpty() || faulted.isEmpty()) {
      return Optional.empty();
    }
    FaultPoint far = faulted.get(faulted.size() - 1);
    double least = faulted.stream().flatMap(p -> p.faults().stream()).mapToDouble(Fault::leastAmperes).min().orElseThrow();
    boolean fuse = breaker.device() == Breaker.Device.FUSE;
    String what = fuse ? "fuse" : "breaker";
    return Optional.of(
        Finding.advice(CLEARING, "how fast the " + what + " " + breaker.id() + " opens a fault is not known")
            .at(breaker.origin().name(),
                "least fault " + amperes(least) + ", as far as " + far.place() + bound.map(UnknownFaults::words).orElse(""))
            .because((fuse
                ? "Each make of fuse has its own curve"
                    + bound.map(b -> ", and " + b.curve().standard() + " alone lets through more than the wire withstands").orElse("")
                : "No curve of a breaker of this kind and rating is known")
                + ". Not checked: whether a fault at the far end is opened in time.")
            .fix("compare the least fault with the time-current curve of its maker")
            .source(coordination)
            .about(breaker.id().toString())
            .build());
  }

  /** What the standard lets a fuse take over a fault, and what the conductor stands. */
  private static String words(ClearingCheck.Bound bound) {
    Fault fault = bound.fault().orElseThrow();
    double amperes = fault.leastAmperes();
    String most = bound.curve().at(amperes).most().map(t -> "take up to " + seconds(t) + " over ").orElse("hold ");
    String stands = fault.weakest()
        .map(w -> ", which the " + w.wire().size() + " wire withstands for " + seconds(w.secondsAt(amperes))).orElse("");
    return "; by " + bound.curve().standard() + " it may " + most + Quantity.plain(amperes, 3) + " A" + stands;
  }

  private static String seconds(double value) {
    return Quantity.plain(value, 2) + " s";
  }

  private static String amperes(double value) {
    return new Quantity(value, Units.AMPERE).toString();
  }
}
