package wattle.rules;

import java.util.Optional;
import wattle.conductors.Conditions;
import wattle.conductors.Conductors;
import wattle.derivation.Derivation;
import wattle.finding.Severity;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Service;
import wattle.model.Status;
import wattle.model.Wire;
import wattle.quantity.Quantity;
import wattle.quantity.WireSize;
import wattle.worksheet.Worksheet;

/**
 * What a service may come through. One main holds it to the rating, so that the ampacity, or the next
 * standard rating above it, must reach that (NFPA 70 230.90(A), 240.4(B) and (C)). The whole of one dwelling on two hots may come
 * through less (310.12). Several mains may add up to more than the ampacity, as long as the calculated load does not (230.90(A)
 * exception 3); that is checked with the worksheet.
 */
final class ServiceConductor {
  private ServiceConductor() {}

  /** Panels straight on a service that have a main which opens by itself. */
  static int mains(Facts facts, Service service) {
    return (int) facts.house().panels().values().stream()
        .filter(p -> p.supply() instanceof PanelSupply.FromService from && from.service().equals(service.name()))
        .filter(p -> p.main().filter(m -> m.kind() == MainDevice.Kind.BREAKER || m.kind() == MainDevice.Kind.FUSE).isPresent())
        .count();
  }

  /** Absent where the plan lacks what the worksheets need. */
  static Optional<Quantity> calculated(Facts facts, Service service) {
    return worksheet(facts, service).flatMap(w -> w.current().quantity());
  }

  /** The smallest of the methods that apply; absent where the plan lacks what they need. */
  static Optional<Worksheet> worksheet(Facts facts, Service service) {
    return facts.worksheets().services().stream()
        .filter(r -> r.inputs().name().equals(service.name()))
        .filter(r -> r.objections().stream().noneMatch(o -> o.severity() == Severity.ERROR))
        .findFirst()
        .flatMap(facts.worksheets()::least);
  }

  /** By the table of conductors that carry the whole of one dwelling; absent where it may not be applied. */
  static Optional<WireSize> least(Facts facts, Service service) {
    return service.run().isPresent() && WholeDwelling.isFor(facts, service)
        ? WholeDwelling.least(facts, service.rating().get(), conditions(facts, service), marked(facts, service))
        : Optional.empty();
  }

  /** The largest standard rating that the run may carry, where {@link #least} does not judge it; absent where several mains do. */
  static Optional<Quantity> largestRating(Facts facts, Service service) {
    if (service.rating().isEmpty() || service.run().isEmpty() || least(facts, service).isPresent()) {
      return Optional.empty();
    }
    Wire hot = service.run().get().wiring().hot();
    Conditions conditions = conditions(facts, service);
    if (WholeDwelling.isFor(facts, service)) {
      return WholeDwelling.largest(facts, service.rating().get(), hot, conditions, marked(facts, service));
    }
    if (WholeDwelling.raised(facts, service, conditions).isPresent()) {
      return service.rating();
    }
    // The run of a small old service is its utility's, and was made before it; the load is what it is judged by.
    boolean old = service.status() == Status.EXISTING && WholeDwelling.isBelow(facts, service.rating().get());
    if (old || mains(facts, service) > 1) {
      return Optional.empty();
    }
    Conductors conductors = facts.conductors();
    Derivation rating = Derivation.stated("rating", "I", service.rating().get());
    return conductors.ampacities().between(conditions, rating, marked(facts, service))
        .flatMap(a -> conductors.breakers().largestFor(a, hot.size(), hot.metal(), true))
        .flatMap(Derivation::quantity);
  }

  /** Whether the size of its hots is judged by 310.12, so that no load of a worksheet is above them. */
  static boolean isOfWholeDwelling(Facts facts, Service service) {
    return WholeDwelling.isFor(facts, service);
  }

  static Conditions conditions(Facts facts, Service service) {
    return facts.conductors().runs().of(service.run().orElseThrow(), service.system(), service.run().orElseThrow().wiring().hot());
  }

  /** What the terminals are marked for; where the plan says nothing, what the code's pack takes those of a service for, if anything. */
  static Optional<Derivation> marked(Facts facts, Service service) {
    return facts.house().panels().values().stream()
        .filter(p -> p.supply() instanceof PanelSupply.FromService from && from.service().equals(service.name()))
        .map(Panel::incoming)
        .flatMap(t -> t.temperature().stream())
        .findFirst()
        .map(t -> Derivation.stated("marking of the terminals", "T_t", t))
        .or(() -> facts.library().limit("service-terminals").map(l -> l.derivation("T_t")));
  }
}
