package wattle.rules;

import java.util.Optional;
import wattle.conductors.Conditions;
import wattle.conductors.Conductors;
import wattle.derivation.Derivation;
import wattle.finding.Severity;
import wattle.model.Dwelling;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Service;
import wattle.model.SupplySystem;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/**
 * What a service may come through. One main holds it to the rating, so that the ampacity, or the next
 * standard rating above it, must reach that (NFPA 70 230.90(A), 240.4(B) and (C)). The whole of one dwelling on two hots may come
 * through less (310.12). Several mains may add up to more than the ampacity, as long as the calculated load does not (230.90(A)
 * exception 3); that is checked with the worksheet.
 */
final class ServiceConductor {
  /** NFPA 70 310.12(A): share of the rating that the conductors of one dwelling carry at least. */
  private static final double SHARE_OF_ONE_DWELLING = 0.83;
  /** NFPA 70 310.12: amperes up to which that share holds. */
  private static final double MOST_OF_ONE_DWELLING = 400;

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
    return facts.worksheets().services().stream()
        .filter(r -> r.inputs().name().equals(service.name()))
        .filter(r -> r.objections().stream().noneMatch(o -> o.severity() == Severity.ERROR))
        .findFirst()
        .flatMap(facts.worksheets()::least)
        .flatMap(w -> w.current().quantity());
  }

  /** By the table of conductors that carry the whole of one dwelling; absent for any other service. */
  static Optional<WireSize> least(Facts facts, Service service) {
    if (service.rating().isEmpty() || service.run().isEmpty() || !isOneDwelling(facts, service)) {
      return Optional.empty();
    }
    Wiring wiring = service.run().get().wiring();
    return wiring.sets() > 1
        ? Optional.empty()
        : SupplyProperties.size(
            facts.conductors().grounds().forService(Derivation.stated("rating", "I", service.rating().get()), wiring.hot().metal()));
  }

  /** The largest standard rating that the run may carry, where {@link #least} does not judge it; absent where several mains do. */
  static Optional<Quantity> largestRating(Facts facts, Service service) {
    if (service.rating().isEmpty() || service.run().isEmpty() || least(facts, service).isPresent()) {
      return Optional.empty();
    }
    boolean one = isOneDwelling(facts, service) && service.rating().get().si() <= MOST_OF_ONE_DWELLING;
    if (!one && mains(facts, service) > 1) {
      return Optional.empty();
    }
    Conductors conductors = facts.conductors();
    Wire hot = service.run().get().wiring().hot();
    Derivation rating = Derivation.stated("rating", "I", service.rating().get());
    Conditions conditions = conductors.runs().of(service.run().get(), service.system(), hot);
    Optional<Derivation> ampacity = conductors.ampacities().between(conditions, rating, marked(facts, service));
    return ampacity
        .flatMap(a -> one
            ? conductors.breakers().notAbove(wholeDwelling(a))
            : conductors.breakers().largestFor(a, hot.size(), hot.metal(), true))
        .flatMap(Derivation::quantity);
  }

  private static Derivation wholeDwelling(Derivation ampacity) {
    Derivation share = Derivation.stated("share for one dwelling", "k", new Quantity(SHARE_OF_ONE_DWELLING, Units.PERCENT));
    return Derivation.computed(
        "rating for one dwelling", "I_r", "I_z / k", ampacity.si() / share.si(), Units.AMPERE, ampacity.named(ampacity.name(), "I_z"),
        share);
  }

  private static boolean isOneDwelling(Facts facts, Service service) {
    boolean twoHots = service.system().kind() == SupplySystem.Kind.SPLIT_PHASE
        || service.system().kind() == SupplySystem.Kind.TWO_LEGS_OF_WYE;
    double dwellings = facts.house().dwellings().values().stream().mapToDouble(Dwelling::count).sum();
    return twoHots && dwellings <= 1;
  }

  private static Optional<Derivation> marked(Facts facts, Service service) {
    return facts.house().panels().values().stream()
        .filter(p -> p.supply() instanceof PanelSupply.FromService from && from.service().equals(service.name()))
        .map(Panel::incoming)
        .flatMap(t -> t.temperature().stream())
        .findFirst()
        .map(t -> Derivation.stated("marking of the terminals", "T_t", t));
  }
}
