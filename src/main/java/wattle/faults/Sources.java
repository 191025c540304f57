package wattle.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.finding.Citation;
import wattle.library.Library;
import wattle.model.Service;
import wattle.model.Source;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * The impedance of what stands behind a service. A primary without impedance is assumed: what the utility adds only lowers
 * the current. Where the plan does not say how resistance and reactance share the impedance, the current lies between that
 * of a pure reactance, which adds least to the resistance of the conductors, and that of a pure resistance, which adds most.
 */
final class Sources {
  private static final Citation TRANSFORMER = new Citation("IEEE 242", "short circuit at the secondary, infinite primary", true);

  private final Optional<Derivation> halfResistance;
  private final Optional<Derivation> halfReactance;

  Sources(Library library) {
    halfResistance = library.limit("half-winding-resistance").map(l -> l.derivation("k_r"));
    halfReactance = library.limit("half-winding-reactance").map(l -> l.derivation("k_x"));
  }

  /** One loop for each kind of fault that the supply can drive; none where the plan states no source or half of one. */
  List<SourceLoop> of(Service service) {
    List<SourceLoop> loops = new ArrayList<>();
    service.source().ifPresent(
        source -> {
          if (service.system().kind() == SupplySystem.Kind.THREE_PHASE_WYE) {
            impedance(source, service.system(), FaultKind.THREE_PHASE).ifPresent(loops::add);
          }
          if (service.system().kind() != SupplySystem.Kind.SINGLE_PHASE) {
            impedance(source, service.system(), FaultKind.LINE_LINE).ifPresent(loops::add);
          }
          impedance(source, service.system(), FaultKind.LINE_NEUTRAL).ifPresent(loops::add);
        });
    return loops;
  }

  private Optional<SourceLoop> impedance(Source source, SupplySystem system, FaultKind kind) {
    Derivation volts = volts(system, kind);
    if (source instanceof Source.Available available) {
      return Optional.of(available(available, system, kind, volts));
    }
    if (source instanceof Source.Transformer transformer) {
      Derivation rating = Derivation.stated("rating of the transformer", "S", transformer.rating());
      Derivation percent = Derivation.stated("impedance of the transformer", "z", transformer.impedance());
      return winding(rating, percent, system, kind, volts, transformer.reactanceToResistance(), true);
    }
    if (source instanceof Source.Generator generator) {
      Derivation rating = Derivation.stated("rating of the generator", "S", generator.rating());
      return generator.impedance()
          .map(z -> Derivation.stated("impedance of the generator", "z", z))
          .flatMap(z -> winding(rating, z, system, kind, volts, Optional.empty(), false));
    }
    throw new AssertionError(source);
  }

  private static Derivation volts(SupplySystem system, FaultKind kind) {
    if (kind == FaultKind.THREE_PHASE) {
      Derivation between = volts(system, FaultKind.LINE_LINE).named("voltage between legs", "U_L");
      return Derivation.computed("voltage from leg to the point where they meet", "U", "U_L / √3", between.si() / Math.sqrt(3), Units.VOLT,
          between);
    }
    boolean lines = kind == FaultKind.LINE_LINE;
    double volts = lines ? system.legToLegVolts() : system.legToNeutralVolts();
    return Derivation.stated(lines ? "voltage between legs" : "voltage from leg to neutral", "U", Quantity.of(volts, Units.VOLT));
  }

  /** The stated current is the greatest of any fault there, so each kind is taken to reach it, but for two legs of a wye. */
  private SourceLoop available(Source.Available source, SupplySystem system, FaultKind kind, Derivation volts) {
    Derivation current = Derivation.stated("available fault current", "I_k", source.faultCurrent());
    boolean wye = isWye(system) && kind == FaultKind.LINE_LINE;
    Derivation phase = Derivation.stated("voltage from leg to neutral", "U_n", Quantity.of(system.legToNeutralVolts(), Units.VOLT));
    Derivation z = wye
        ? ohms("impedance of the source, both legs", "Z", "2 × U_n / I_k", 2 * phase.si() / current.si(), phase, current)
        : ohms("impedance of the source", "Z", "U / I_k", volts.si() / current.si(), volts, current)
            .remarking("The stated current is assumed to be the largest of any fault at the service.");
    return shared(kind, volts, z, z, source.reactanceToResistance());
  }

  private Optional<SourceLoop> winding(
      Derivation rating, Derivation percent, SupplySystem system, FaultKind kind, Derivation volts,
      Optional<Quantity> ratio, boolean transformer) {
    if (kind == FaultKind.LINE_NEUTRAL && system.kind() == SupplySystem.Kind.SPLIT_PHASE) {
      return transformer
          ? halfResistance.flatMap(
              r -> halfReactance.map(x -> shared(kind, volts, half(rating, percent, volts, r), half(rating, percent, volts, x), ratio)))
          : Optional.of(half(rating, percent, volts)).map(z -> shared(kind, volts, z, z, ratio));
    }
    Derivation between = volts(system, isWye(system) ? FaultKind.LINE_LINE : kind).named("rated voltage", "U_r");
    double base = between.si() * between.si() / rating.si() * percent.si();
    boolean both = isWye(system) && kind == FaultKind.LINE_LINE;
    Derivation z = ohms("impedance of the source", "Z", both ? "2 × z × U_r² / S" : "z × U_r² / S", both ? 2 * base : base, percent,
        between, rating)
        .citing(TRANSFORMER);
    return Optional.of(shared(kind, volts, z, z, ratio));
  }

  /** A generator's halves are taken alike: each has half of the whole. */
  private static Derivation half(Derivation rating, Derivation percent, Derivation volts) {
    return ohms("impedance of half the winding", "Z", "2 × z × U² / S", 2 * percent.si() * volts.si() * volts.si() / rating.si(),
        percent, volts, rating);
  }

  /** Of a center-tapped winding one half has less than half of the whole, at half the voltage and all of the rating. */
  private static Derivation half(Derivation rating, Derivation percent, Derivation volts, Derivation factor) {
    String letter = factor.symbol();
    return ohms("impedance of half the winding", "Z", letter + " × z × U² / S",
        factor.si() * percent.si() * volts.si() * volts.si() / rating.si(), factor, percent, volts, rating);
  }

  /** Shares an impedance out, given as it would be if it were all resistance and if it were all reactance. */
  private static SourceLoop shared(
      FaultKind kind, Derivation volts, Derivation ifResistance, Derivation ifReactance, Optional<Quantity> ratio) {
    if (ratio.isEmpty()) {
      Derivation none = Derivation.assumed("the other part of the source", "", Quantity.of(0, Units.OHM));
      return new SourceLoop(
          kind, volts, none.named("resistance of the source", "R_s"),
          ifReactance.named("reactance of the source", "X_s").remarking("The plan states no X/R; figured as all reactance."),
          ifResistance.named("resistance of the source", "R_s").remarking("The plan states no X/R; figured as all resistance."),
          none.named("reactance of the source", "X_s"), false);
    }
    Derivation q = Derivation.stated("reactance to resistance", "q", ratio.get());
    Derivation resistance = ohms("resistance of the source", "R_s", "Z / √(1 + q²)", ifResistance.si() / Math.sqrt(1 + q.si() * q.si()),
        ifResistance, q);
    Derivation reactance = ohms("reactance of the source", "X_s", "Z × q / √(1 + q²)",
        ifReactance.si() * q.si() / Math.sqrt(1 + q.si() * q.si()),
        ifReactance, q);
    return new SourceLoop(kind, volts, resistance, reactance, resistance, reactance, true);
  }

  private static boolean isWye(SupplySystem system) {
    return system.kind() == SupplySystem.Kind.TWO_LEGS_OF_WYE || system.kind() == SupplySystem.Kind.THREE_PHASE_WYE;
  }

  private static Derivation ohms(String name, String symbol, String formula, double ohms, Derivation... inputs) {
    return Derivation.computed(name, symbol, formula, ohms, Units.OHM, inputs);
  }
}
