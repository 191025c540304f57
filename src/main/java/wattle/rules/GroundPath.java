package wattle.rules;

import java.util.Optional;
import java.util.Set;
import wattle.conductors.Impedance;
import wattle.model.Panel;
import wattle.model.Stretch;
import wattle.model.Wire;
import wattle.model.Wiring;

/** The way back for a fault beyond a feeder, and what flows over it when the neutral is joined to it a second time. */
final class GroundPath {
  private static final double HOT_CELSIUS = 75;
  /** Metal raceways and armor that are equipment grounds themselves (NFPA 70 250.118). */
  private static final Set<String> METAL = Set.of("EMT", "IMC", "RMC", "AC", "BX", "AC90");

  private GroundPath() {}

  /** Whether a run brings a ground: a wire, or a metal raceway. */
  static boolean has(Stretch stretch) {
    Wiring wiring = stretch.wiring();
    return wiring.ground().isPresent() || wiring.raceway().filter(METAL::contains).isPresent() || METAL.contains(wiring.type());
  }

  /** In a sentence, with amperes where the neutral and the ground are wires: their currents are as their admittances. */
  static Optional<String> flow(Facts facts, Panel panel) {
    Optional<Wiring> wiring = panel.feeder().map(Stretch::wiring);
    Optional<Double> neutral = wiring.flatMap(Wiring::neutral).flatMap(w -> ohms(facts, w, wiring.get()));
    Optional<Double> ground = wiring.flatMap(Wiring::ground).flatMap(w -> ohms(facts, w, wiring.get()));
    if (neutral.isEmpty() || ground.isEmpty()) {
      return Optional.of("Part of what its neutral carries returns over the ground, and over every metal part that it touches.");
    }
    double stated = facts.loads().panel(panel.name()).neutralAmperes(panel.system());
    double share = neutral.get() / (neutral.get() + ground.get());
    String part = stated >= 1
        ? "Of the " + CircuitLoad.amperes(stated) + " that its neutral carries with everything on, " + CircuitLoad.amperes(stated * share)
            + " returns"
        : Math.round(100 * share) + " % of what its neutral carries returns";
    return Optional.of(part + " over the ground of its feeder, and over every metal part that it touches.");
  }

  private static Optional<Double> ohms(Facts facts, Wire wire, Wiring wiring) {
    return facts.conductors().impedances().of(wire, wiring).map((Impedance i) -> i.ohmsPerMeter(HOT_CELSIUS));
  }
}
