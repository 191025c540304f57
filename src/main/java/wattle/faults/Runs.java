package wattle.faults;

import java.util.ArrayList;
import java.util.List;
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
import wattle.model.Stretch;
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
    Optional<Run.Piece> out = piece(name, length, ways.out(), wiring, system);
    Optional<Run.Piece> back = ways.back().flatMap(b -> piece(name, length, b, wiring, system));
    if (out.isEmpty() || ways.back().isPresent() && back.isEmpty()) {
      return Optional.empty();
    }
    Run run = new Run(name, List.of(out.get()), back.map(List::of).stream().toList());
    Optional<Withstand> outStands = withstand(ways.out(), wiring, 1, written);
    Optional<Withstand> backStands = ways.back().flatMap(b -> withstand(b, wiring, 1, written));
    return Optional.of(near.beyond(run, lesser(outStands, backStands)));
  }

  /** A feeder of a panel. */
  record Feeder(String panel, Stretch stretch) {}

  /**
   * The fault at a panel whose neutral and ground are joined, from the panel before it where they are.
   *
   * @param feeders from the one to the other, one behind the other; the conductors of the last one alone are held against the fault
   * @param grounds whether neutral and ground are joined at the near end too, so that the grounds lie beside the neutrals
   */
  Optional<Fault> carry(Fault near, List<Feeder> feeders, boolean grounds, SupplySystem system) {
    List<Run.Piece> out = new ArrayList<>();
    List<Run.Piece> neutral = new ArrayList<>();
    List<Run.Piece> ground = new ArrayList<>();
    for (Feeder feeder : feeders) {
      Wiring wiring = feeder.stretch().wiring();
      Optional<Quantity> length = feeder.stretch().length();
      if (length.isEmpty()) {
        return Optional.empty();
      }
      String name = "feeder of " + feeder.panel();
      piece(name, length.get(), wiring.hot(), wiring, system).ifPresent(out::add);
      wiring.neutral().flatMap(w -> piece(name, length.get(), w, wiring, system)).ifPresent(neutral::add);
      wiring.ground().flatMap(w -> piece(name, length.get(), w, wiring, system)).ifPresent(ground::add);
    }
    List<List<Run.Piece>> back = new ArrayList<>();
    if (neutral.size() == feeders.size()) {
      back.add(neutral);
    }
    if (grounds && ground.size() == feeders.size()) {
      back.add(ground);
    }
    if (out.size() < feeders.size() || back.isEmpty()) {
      return Optional.empty();
    }
    Feeder last = feeders.get(feeders.size() - 1);
    Run run = new Run("feeder of " + last.panel(), out, back);
    Wiring wiring = last.stretch().wiring();
    Span written = last.stretch().origin().name();
    Optional<Withstand> weakest = withstand(wiring.hot(), wiring, 1, written);
    for (int i = 0; i < back.size(); i++) {
      double share = run.share(i);
      Optional<Wire> wire = back.get(i) == neutral ? wiring.neutral() : wiring.ground();
      weakest = lesser(weakest, wire.flatMap(w -> withstand(w, wiring, share, written)));
    }
    return Optional.of(near.beyond(run, weakest));
  }

  private Optional<Run.Piece> piece(String name, Quantity length, Wire wire, Wiring wiring, SupplySystem system) {
    Optional<Impedance> impedance = conductors.impedances().of(wire, wiring);
    return cold.flatMap(c -> impedance.map(i -> new Run.Piece(name, length, i, c, rating(wiring.insulationCelsius()), hertz(system))));
  }

  private static double hertz(SupplySystem system) {
    return system.kind() == SupplySystem.Kind.SINGLE_PHASE && system.legToNeutralVolts() > VOLTS_OF_FIFTY_HERTZ ? 50 : 60;
  }

  private Derivation rating(double celsius) {
    return hot.computeIfAbsent(
        celsius, c -> Insulation.rating("T", c));
  }

  private static Optional<Withstand> lesser(Optional<Withstand> one, Optional<Withstand> other) {
    return one.isPresent() && other.isPresent() ? Optional.of(one.get().lesser(other.get())) : one.or(() -> other);
  }

  private Optional<Withstand> withstand(Wire wire, Wiring wiring, double share, Span written) {
    Insulated insulated = new Insulated(wire.size(), wire.metal(), conductors.runs().insulationOf(wiring), wiring.insulationCelsius(),
        wiring.sets());
    return letThrough.computeIfAbsent(insulated, this::stands).map(i -> new Withstand(wire, i, share, written));
  }

  private Optional<Derivation> stands(Insulated insulated) {
    return conductors.shortCircuit()
        .k(insulated.metal, insulated.material, rating(insulated.celsius))
        .map(k -> conductors.shortCircuit().withstand(insulated.size, k, insulated.sets));
  }
}
