package wattle.faults;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import wattle.conductors.Conductors;
import wattle.conductors.Impedance;
import wattle.conductors.Insulation;
import wattle.derivation.Derivation;
import wattle.finding.Span;
import wattle.library.Library;
import wattle.model.Metal;
import wattle.model.SupplySystem;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.quantity.Quantity;
import wattle.quantity.WireSize;

/** Carries a fault from one end of a run to the other. */
final class Runs {
  /** Above this a supply of one leg is one of the places where the frequency is 50 Hz; common practice. */
  private static final double VOLTS_OF_FIFTY_HERTZ = 200;

  private final Conductors conductors;
  private final Optional<Derivation> cold;
  private final Map<Insulated, Optional<Derivation>> letThrough = new ConcurrentHashMap<>();
  private final Map<Double, Derivation> hot = new ConcurrentHashMap<>();

  private record Insulated(WireSize size, Metal metal, String material, double celsius, int sets) {}

  Runs(Conductors conductors, Library library) {
    this.conductors = conductors;
    cold = library.limit("cold-conductor").map(l -> l.derivation("T"));
  }

  /** The fault at the far end; absent where the library lacks a table for the run. */
  Optional<Fault> carry(Fault near, String name, Quantity length, Wiring wiring, Ways ways, SupplySystem system, Span written) {
    Optional<Impedance> out = conductors.impedances().of(ways.out(), wiring);
    Optional<Impedance> back = ways.back().flatMap(b -> conductors.impedances().of(b, wiring));
    if (cold.isEmpty() || out.isEmpty() || ways.back().isPresent() && back.isEmpty()) {
      return Optional.empty();
    }
    Run run = new Run(name, length, out.get(), back, cold.get(), rating(wiring.insulationCelsius()), hertz(system));
    return Optional.of(near.beyond(run, weaker(ways, wiring, written)));
  }

  private static double hertz(SupplySystem system) {
    return system.kind() == SupplySystem.Kind.SINGLE_PHASE && system.legToNeutralVolts() > VOLTS_OF_FIFTY_HERTZ ? 50 : 60;
  }

  private Derivation rating(double celsius) {
    return hot.computeIfAbsent(
        celsius, c -> Insulation.rating("T", c));
  }

  private Optional<Withstand> weaker(Ways ways, Wiring wiring, Span written) {
    Optional<Withstand> out = withstand(ways.out(), wiring, written);
    Optional<Withstand> back = ways.back().flatMap(b -> withstand(b, wiring, written));
    return out.isPresent() && back.isPresent() ? Optional.of(out.get().lesser(back.get())) : out.or(() -> back);
  }

  private Optional<Withstand> withstand(Wire wire, Wiring wiring, Span written) {
    Insulated insulated = new Insulated(wire.size(), wire.metal(), conductors.runs().insulationOf(wiring), wiring.insulationCelsius(),
        wiring.sets());
    return letThrough.computeIfAbsent(insulated, this::stands).map(i -> new Withstand(wire, i, written));
  }

  private Optional<Derivation> stands(Insulated insulated) {
    return conductors.shortCircuit()
        .k(insulated.metal, insulated.material, rating(insulated.celsius))
        .map(k -> conductors.shortCircuit().withstand(insulated.size, k, insulated.sets));
  }
}
