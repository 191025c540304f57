package wattle.conductors;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.library.Key;
import wattle.library.Library;
import wattle.library.Table;
import wattle.model.Metal;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/**
 * Resistance with reactance, by size and what surrounds the conductors. From 3/0 AWG up the resistance is that of
 * alternating current, which crowds to the surface of thick conductors; below, the table of it is rounded more coarsely
 * than the effect.
 */
public final class Impedances {
  private static final WireSize CROWDED_FROM = WireSize.awg(-2);

  private final Resistances resistances;
  private final Optional<Table> table;
  private final Optional<Table> kinds;
  private final Map<Conductor, Optional<Impedance>> known = new ConcurrentHashMap<>();
  private final Map<String, Optional<String>> surrounds = new ConcurrentHashMap<>();

  private record Conductor(WireSize size, Metal metal, Construction construction, String surround) {}

  public Impedances(Library library) {
    resistances = new Resistances(library);
    table = library.table("conductor-impedance");
    kinds = library.table("raceway-material");
  }

  public Resistances resistances() {
    return resistances;
  }

  /** Of one wire of a wiring, in what surrounds it there. Absent where the library lacks a table. */
  public Optional<Impedance> of(Wire wire, Wiring wiring) {
    Optional<Impedance> one = of(wire.size(), wire.metal(), Construction.usual(wire.size()), surround(wiring));
    return wiring.sets() == 1 ? one : one.map(i -> parallel(i, wiring.sets()));
  }

  /** So many alike joined at both ends have a share of what one has; their raceways lie apart, and do not add to each other. */
  private static Impedance parallel(Impedance one, int sets) {
    Derivation count = Derivation.stated("sets in parallel", "n_s", Quantity.of(sets, Units.ONE));
    return new Impedance(
        new Resistance(shared(one.resistance().at75(), sets, count), one.resistance().perKelvin()), shared(one.reactance(), sets, count));
  }

  private static Derivation shared(Derivation one, int sets, Derivation count) {
    return Derivation.computed(
        one.name() + ", all sets", one.symbol(), one.symbol() + "_1 / n_s",
        new Value.Amount(new Quantity(one.si() / sets, Units.OHM_PER_KILOMETER)),
        List.of(one.named(one.name(), one.symbol() + "_1"), count));
  }

  /** @param surround {@code steel} or {@code plastic} */
  public Optional<Impedance> of(WireSize size, Metal metal, Construction construction, String surround) {
    return known.computeIfAbsent(new Conductor(size, metal, construction, surround), this::find);
  }

  /** What surrounds the conductors: a raceway of unknown kind counts as steel, a cable of unknown kind as none. */
  public String surround(Wiring wiring) {
    return surrounds
        .computeIfAbsent(wiring.raceway().orElse(wiring.type()), this::listedSurround)
        .orElse(wiring.raceway().isPresent() ? "steel" : "plastic");
  }

  private Optional<String> listedSurround(String kind) {
    return kinds
        .flatMap(t -> t.find("surround", "", "material", Key.is("kind", Derivation.stated("kind", "", kind))))
        .map(d -> d.value().text());
  }

  private Optional<Impedance> find(Conductor conductor) {
    Derivation size = Derivation.stated("size", "", conductor.size);
    String column = "reactance-" + conductor.surround;
    Optional<Derivation> reactance = table.flatMap(
        t -> t.find("reactance at 60 Hz", "X", column, Key.is("size", size))
            // A thinner conductor has the greater reactance.
            .or(() -> t.find("reactance at 60 Hz", "X", column, Key.notAbove("size", size)).map(Impedances::near))
            .or(() -> t.find("reactance at 60 Hz", "X", column, Key.notBelow("size", size)).map(Impedances::near)));
    Optional<Resistance> direct = resistances.of(conductor.size, conductor.metal, conductor.construction);
    return reactance.flatMap(x -> direct.map(r -> new Impedance(alternating(conductor, size, r), x)));
  }

  private static Derivation near(Derivation reactance) {
    return reactance.remarking("The table does not list this size; the nearest one is used.");
  }

  private Resistance alternating(Conductor conductor, Derivation size, Resistance direct) {
    if (conductor.size.compareTo(CROWDED_FROM) < 0) {
      return direct;
    }
    String column = conductor.metal.word() + "-" + conductor.surround;
    return table
        .flatMap(t -> t.find("alternating-current resistance at 75 °C", "R_75", column, Key.is("size", size)))
        .map(r -> new Resistance(r, direct.perKelvin()))
        .orElse(direct);
  }
}
