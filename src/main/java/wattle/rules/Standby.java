package wattle.rules;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.DeviceKind.Grid;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * A source that can feed a panel alone, behind a transfer switch or an interlock, held against the load calculated for all that it
 * takes over (NFPA 70 702.4).
 */
final class Standby {
  private Standby() {}

  /** What it gives, on each leg; absent for what can only follow another source, and where no rating is stated. */
  static Optional<Quantity> gives(Facts facts, Device source) {
    boolean alone = source.kind().grid().filter(g -> g != Grid.FOLLOWS).isPresent();
    Optional<SupplySystem> system = facts.branchOf(source).flatMap(facts::systemOf);
    return system.filter(s -> alone && source.voltAmperes() > 0)
        .map(s -> Quantity.of(tenth(source.voltAmperes() / Interconnection.volts(facts, source, s)), Units.AMPERE));
  }

  /** The panel that it takes over. */
  static Optional<Panel> panel(Facts facts, Device source) {
    return facts.branchOf(source).stream().flatMap(b -> facts.breakersOf(b).stream()).filter(Standby::takesOver).findFirst()
        .flatMap(b -> Optional.ofNullable(facts.house().panels().get(b.id().panel())));
  }

  private static boolean takesOver(Breaker breaker) {
    return breaker.interlocked() || breaker.backFed();
  }

  /** Generators whose panel feeds the way of a source that follows: on that panel itself, or on one that it feeds. */
  static List<Device> generatorsBehind(Facts facts, Device follower) {
    if (follower.kind().grid().filter(g -> g == Grid.FOLLOWS).isEmpty()) {
      return List.of();
    }
    Set<String> above = new HashSet<>();
    facts.branchOf(follower).stream().flatMap(b -> facts.breakersOf(b).stream()).map(b -> b.id().panel()).forEach(at -> {
      Optional<Panel> panel = Optional.ofNullable(facts.house().panels().get(at));
      while (panel.isPresent() && above.add(panel.get().name())) {
        panel = panel.get().supply() instanceof PanelSupply.FromBreaker from
            ? Optional.ofNullable(facts.house().panels().get(from.breaker().panel()))
            : Optional.empty();
      }
    });
    return facts.house().devices().values().stream()
        .filter(d -> d.kind().grid().filter(g -> g == Grid.FORMS).isPresent())
        .filter(d -> panel(facts, d).filter(p -> above.contains(p.name())).isPresent())
        .toList();
  }

  /** The load calculated for that panel; absent where it cannot be. */
  static Optional<Quantity> asked(Facts facts, Device source) {
    return panel(facts, source).flatMap(p -> p.supply() instanceof PanelSupply.FromService from
        ? ServiceConductor.calculated(facts, facts.house().services().get(from.service()))
        : facts.calculated(p).flatMap(w -> w.current().quantity())).map(q -> Quantity.of(tenth(q.si()), Units.AMPERE));
  }

  /** Whether a transfer switch of that panel has a trait; false where it has no transfer switch. */
  static boolean transferIs(Facts facts, Device source, String trait) {
    List<MainDevice> mains = panel(facts, source).stream().flatMap(p -> p.main().stream()).toList();
    return mains.stream().anyMatch(m -> m.kind() == MainDevice.Kind.TRANSFER && m.traits().contains(trait));
  }

  /** Whether a transfer switch of that panel goes over to it, so that it never meets the supply. */
  static boolean isTransferred(Facts facts, Device source) {
    return panel(facts, source).flatMap(Panel::main).filter(m -> m.kind() == MainDevice.Kind.TRANSFER).isPresent();
  }

  private static double tenth(double amperes) {
    return Math.round(10 * amperes) / 10.0;
  }
}
