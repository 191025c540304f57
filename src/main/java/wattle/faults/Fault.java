package wattle.faults;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * A bolted fault of one kind at one place. It knows the fault at the place before it, so that its figures can be unfolded
 * run by run, back to the source.
 */
public final class Fault {
  private final SourceLoop source;
  private final Optional<Fault> before;
  private final Optional<Run> run;
  private final Optional<Withstand> weakest;
  /** Of the runs alone, without the source. */
  private final Ohms coldRuns;
  private final Ohms hotRuns;
  private final SourceLoop.Parts atMost;
  private final SourceLoop.Parts atLeast;
  private final Ohms cold;
  private final Ohms hot;
  private final List<Derivation> added;

  private Fault(
      SourceLoop source, Optional<Fault> before, Optional<Run> run, Optional<Withstand> weakest, Ohms coldRuns, Ohms hotRuns,
      List<Derivation> added) {
    this.source = source;
    this.before = before;
    this.run = run;
    this.weakest = weakest;
    this.coldRuns = coldRuns;
    this.hotRuns = hotRuns;
    atMost = source.against(coldRuns, State.COLD);
    atLeast = source.against(hotRuns, State.HOT);
    cold = atMost.ohms().plus(coldRuns);
    hot = atLeast.ohms().plus(hotRuns);
    this.added = List.copyOf(added);
  }

  /**
   * Right at the source.
   *
   * @param added what other sources give into any fault behind it, each at most
   */
  static Fault at(SourceLoop source, List<Derivation> added) {
    return new Fault(source, Optional.empty(), Optional.empty(), Optional.empty(), Ohms.NONE, Ohms.NONE, added);
  }

  /** At the far end of a run; the conductor that stands least is kept. */
  Fault beyond(Run next, Optional<Withstand> withstand) {
    Optional<Withstand> least = weakest.isPresent() && withstand.isPresent()
        ? Optional.of(weakest.get().lesser(withstand.get()))
        : weakest.or(() -> withstand);
    return new Fault(
        source, Optional.of(this), Optional.of(next), least, coldRuns.plus(next.ohms(State.COLD)), hotRuns.plus(next.ohms(State.HOT)),
        added);
  }

  /** The same place behind a further breaker, which has only what follows to guard. */
  Fault behindBreaker() {
    return new Fault(source, before, run, Optional.empty(), coldRuns, hotRuns, added);
  }

  /** The same way taken for a fault of another kind, where ground and neutral are joined. */
  Fault as(FaultKind kind) {
    SourceLoop other = new SourceLoop(
        kind, source.volts(), source.coldResistance(), source.coldReactance(), source.hotResistance(), source.hotReactance(),
        source.ratioStated());
    return new Fault(other, before, run, weakest, coldRuns, hotRuns, added);
  }

  public FaultKind kind() {
    return source.kind();
  }

  /** Volts that drive it. */
  public double volts() {
    return source.volts().si();
  }

  /** The whole way of the current with cold conductors. */
  public Ohms coldLoop() {
    return cold;
  }

  /** The whole way of the current with hot conductors. */
  public Ohms hotLoop() {
    return hot;
  }

  /** Amperes with cold conductors, and with what other sources of the house add. */
  public double mostAmperes() {
    return volts() / cold.magnitude() + added.stream().mapToDouble(Derivation::si).sum();
  }

  /** Amperes with hot conductors. */
  public double leastAmperes() {
    return volts() / hot.magnitude();
  }

  /** Of the conductors between the last breaker and here the one that stands least; absent right behind a breaker. */
  public Optional<Withstand> weakest() {
    return weakest;
  }

  /** The greatest current, unfolded. */
  public Derivation most() {
    Derivation supplied = current(State.COLD, volts() / cold.magnitude());
    if (added.isEmpty()) {
      return supplied;
    }
    List<Derivation> all = new ArrayList<>(List.of(supplied.named("from the supply", "I_s")));
    all.addAll(added);
    return new Derivation(
        supplied.name(), "I", new Value.Amount(Quantity.of(mostAmperes(), Units.AMPERE)), Derivation.Basis.COMPUTED, "I_s + Σ I_k", all,
        List.of(),
        "Magnitudes are added, each at the terminals of its source, so the sum is too high rather than too low.");
  }

  /** The least current, unfolded. */
  public Derivation least() {
    return current(State.HOT, leastAmperes());
  }

  private Derivation current(State state, double amperes) {
    // By a loop: a branch may be longer than a stack is deep.
    Deque<Run> runs = new ArrayDeque<>();
    for (Optional<Fault> at = Optional.of(this); at.isPresent(); at = at.get().before) {
      at.get().run.ifPresent(runs::push);
    }
    SourceLoop.Parts parts = state == State.COLD ? atMost : atLeast;
    Derivation resistance = parts.resistance().named(parts.resistance().name(), "R");
    Derivation reactance = parts.reactance().named(parts.reactance().name(), "X");
    for (Run next : runs) {
      resistance = next.resistance(state, resistance);
      reactance = next.reactance(state, reactance);
    }
    Ohms loop = state == State.COLD ? cold : hot;
    Derivation impedance = Derivation.computed(
        "impedance of the path", "Z", "√(R² + X²)", Run.milliohms(loop.magnitude()), List.of(resistance, reactance));
    return Derivation.computed(
        state.bound() + " fault current, " + kind().words(), "I", "U / Z", amperes, Units.AMPERE, source.volts(), impedance);
  }
}
