package wattle.conductors;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.library.CableKind;
import wattle.library.Library;
import wattle.model.Metal;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/**
 * What a circuit without a plan needs: breaker, conductor, ground and voltage drop, from the tables that plans are judged by.
 *
 * <p>The breaker is the next standard rating not below the load. The conductor is the thinnest whose ampacity is not below the
 * load, which that breaker guards without the next rating above being used, and that loses no more of the voltage than asked.
 * The drop is that of the hand formula of the trade, out and back at 75 °C.
 *
 * @param breaker its rating
 * @param byAmpacity the size that load and breaker ask for
 * @param size the size that the drop asks for too
 * @param drop with that size, as a part of the voltage
 * @param longest run, in meters, that stays within the drop, in that size
 * @param longestByAmpacity the same in the size that load and breaker ask for
 * @param ground the least equipment ground, enlarged with the hots
 * @param raceways the least trade size of each usual kind that two conductors and the ground may go into; none for a cable, which has
 *        a sheath, and none of a kind that the code's tables lack
 */
public record CircuitSize(
    Derivation breaker, Derivation byAmpacity, WireSize size, Derivation drop, Derivation longest, Derivation longestByAmpacity,
    Optional<Derivation> ground, List<Derivation> raceways) {
  /** Metal and plastic raceways that are usual in houses (common practice). */
  private static final List<String> USUAL_RACEWAYS = List.of("EMT", "PVC");

  private static final double HOT_CELSIUS = 75;

  /**
   * What is asked.
   *
   * @param load in A
   * @param continuous whether the load lasts three hours or more and counts at 125 %
   * @param length one way
   * @param volts between the two conductors
   * @param most drop allowed, as a part of the voltage
   */
  public record Question(
      Quantity load, boolean continuous, Quantity length, Quantity volts, Quantity most, CableKind cable, Metal metal) {}

  /** Absent where no listed size will do, or the pack lacks a table. */
  public static Optional<CircuitSize> of(Library library, Question asked) {
    Ampacities ampacities = new Ampacities(library);
    BreakerSizes breakers = new BreakerSizes(library);
    Derivation load = Derivation.stated("load", "I", asked.load);
    Derivation needed = asked.continuous
        ? Derivation.computed("load at 125 %", "I", "1.25 × I_c", 1.25 * load.si(), Units.AMPERE, load.named("continuous load", "I_c"))
        : load;
    Conditions like = new Conditions(
        WireSize.awg(14), asked.metal, asked.cable.insulationCelsius(),
        Math.min(asked.cable.insulationCelsius(), asked.cable.ampacityCelsius()),
        Derivation.assumed("ambient", "T_a", Quantity.of(30, Units.CELSIUS)),
        Derivation.assumed("conductors together", "n", Quantity.of(2, Units.ONE)));
    Optional<Derivation> breaker = breakers.notBelow(needed);
    Optional<Derivation> byAmpacity = breaker.flatMap(
        b -> new ConductorSizes(ampacities, breakers).forBreaker(b, like, Optional.empty(), false));
    if (byAmpacity.isEmpty()) {
      return Optional.empty();
    }
    WireSize least = ((Value.Size) byAmpacity.get().value()).size();
    Impedances impedances = new Impedances(library);
    for (WireSize size : ampacities.sizes(asked.metal)) {
      Optional<Derivation> ohms = size.compareTo(least) < 0 ? Optional.empty() : perMeter(impedances, size, asked);
      if (ohms.isPresent() && drop(asked, load, ohms.get()).si() <= asked.most.si() * (1 + 1e-9)) {
        Optional<Derivation> ground = ground(library, ampacities, breaker.get(), least, size, asked);
        return Optional.of(
            new CircuitSize(
                breaker.get(), byAmpacity.get(), size, drop(asked, load, ohms.get()), longest(asked, load, ohms.get(), size),
                longest(asked, load, perMeter(impedances, least, asked).orElse(ohms.get()), least),
                ground, raceways(library, size, ground, asked)));
      }
    }
    return Optional.empty();
  }

  private static List<Derivation> raceways(Library library, WireSize size, Optional<Derivation> ground, Question asked) {
    if (!asked.cable.single() || ground.isEmpty()) {
      return List.of();
    }
    RacewayFill.Conductor hot = new RacewayFill.Conductor(asked.cable.name(), size, asked.metal);
    WireSize grounding = ((Value.Size) ground.get().value()).size();
    List<RacewayFill.Conductor> conductors = List.of(hot, hot, new RacewayFill.Conductor(asked.cable.name(), grounding, asked.metal));
    RacewayFill fill = new RacewayFill(library);
    return USUAL_RACEWAYS.stream().flatMap(kind -> fill.smallest(kind, false, conductors).stream()).toList();
  }

  private static Optional<Derivation> perMeter(Impedances impedances, WireSize size, Question asked) {
    String surround = "plastic";
    return impedances.of(size, asked.metal, Construction.usual(size), surround)
        .map(i -> i.resistance().at75().named("resistance of " + size + " " + asked.metal.word() + " at 75 °C", "r"));
  }

  private static Derivation drop(Question asked, Derivation load, Derivation ohms) {
    Derivation length = Derivation.stated("length, one way", "l", asked.length);
    Derivation volts = Derivation.stated("voltage", "U", asked.volts);
    return Derivation.computed(
        "voltage drop", "ΔU", "2 × I × r × l / U", 2 * load.si() * ohms.si() * length.si() / volts.si() * 100, Units.PERCENT, load, ohms,
        length, volts);
  }

  private static Derivation longest(Question asked, Derivation load, Derivation ohms, WireSize size) {
    Derivation volts = Derivation.stated("voltage", "U", asked.volts);
    Derivation most = Derivation.stated("drop allowed", "ΔU", asked.most);
    double meters = most.si() * volts.si() / (2 * load.si() * ohms.si());
    return Derivation.computed(
        "longest run in " + size, "l", "ΔU × U / (2 × I × r)",
        new Value.Amount(new Quantity(meters, asked.length.unit())), List.of(most, volts, load, ohms));
  }

  private static Optional<Derivation> ground(
      Library library, Ampacities ampacities, Derivation breaker, WireSize least, WireSize used, Question asked) {
    return new GroundSizes(library).forBreaker(breaker, asked.metal)
        .map(
            g -> g.value() instanceof Value.Size s && s.size().compareTo(least) > 0
                ? Derivation.computed("ground, never larger than the hots", "S_g", "", new Value.Size(least), List.of(g))
                : g)
        .flatMap(g -> GroundSizes.enlarged(g, least, used, ampacities.sizes(asked.metal)));
  }

  /** Every figure, in the order in which one leads to the next. */
  public List<Derivation> workings() {
    List<Derivation> all = new ArrayList<>(List.of(breaker, byAmpacity, drop, longest));
    if (!longest.name().equals(longestByAmpacity.name())) {
      all.add(longestByAmpacity);
    }
    ground.ifPresent(all::add);
    all.addAll(raceways);
    return all;
  }
}
