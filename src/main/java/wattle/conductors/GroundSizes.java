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
import wattle.quantity.WireSize;

/** Least sizes of grounds and of the conductors of a dwelling's service, by the tables of the plan's code. */
public final class GroundSizes {
  private static final double SQUARE_METERS_PER_KCMIL = 0.5067074791e-6;
  /** Thickest hots that table 250.102(C)(1) has a row for, in kcmil. */
  private static final double LAST_COPPER = 1100;
  private static final double LAST_ALUMINUM = 1750;

  private final Optional<Table> equipment;
  private final Optional<Table> electrodes;
  private final Optional<Table> alone;
  private final Optional<Table> service;
  private final Map<Guard, Optional<Derivation>> known = new ConcurrentHashMap<>();

  private record Guard(Derivation rating, Metal metal) {
    @Override
    public int hashCode() {
      return 31 * Double.hashCode(rating.si()) + metal.hashCode();
    }
  }

  public GroundSizes(Library library) {
    equipment = library.table("equipment-ground");
    electrodes = library.table("electrode-conductor");
    alone = library.table("electrode-limit");
    service = library.table("service-conductor");
  }

  /** The least equipment ground for a breaker. */
  public Optional<Derivation> forBreaker(Derivation rating, Metal metal) {
    return known.computeIfAbsent(new Guard(rating, metal), g -> equipment.flatMap(
        t -> t.find("least ground, " + metal.word(), "S_g", metal.word(), Key.notBelow("rating", rating))));
  }

  /**
   * The ground where the hots are thicker than they need be, as for voltage drop: it grows with their cross-section.
   *
   * @param ground what the breaker asks for
   * @param needed the size of hot that would have done
   * @param used the size of hot that is there
   * @param sizes of the ground's metal that can be had, thinnest first
   */
  public static Optional<Derivation> enlarged(Derivation ground, WireSize needed, WireSize used, List<WireSize> sizes) {
    if (used.compareTo(needed) <= 0 || !(ground.value() instanceof Value.Size least)) {
      return Optional.of(ground);
    }
    double area = least.size().areaSquareMeters() * used.areaSquareMeters() / needed.areaSquareMeters();
    return sizes.stream()
        .filter(size -> size.areaSquareMeters() >= area * (1 - 1e-9))
        .findFirst()
        .map(
            size -> Derivation.computed(
                "least ground for enlarged hots", "S_g", "the smallest with S ≥ S_g × S_u / S_h",
                new Value.Size(size),
                List.of(
                    ground.named(ground.name(), "S_g"), CrossSection.of(used, "S_u"),
                    CrossSection.of(needed, "S_h"))));
  }

  /**
   * The least conductor to an electrode, for service conductors of a size.
   *
   * @param electrode such as {@code rod}; where the electrode is alone on its conductor, no more than its own limit
   * @param metal of the electrode conductor
   */
  public Optional<Derivation> forElectrode(WireSize serviceSize, Metal serviceMetal, String electrode, Metal metal) {
    Derivation size = Derivation.stated("service conductor", "", serviceSize);
    String column = "service-" + serviceMetal.word();
    Key byElectrode = Key.is("electrode", Derivation.stated("electrode", "", electrode));
    String name = "least electrode conductor, " + metal.word();
    // The last row of the table has no end, and several conductors in parallel may be above any size that is made.
    Optional<Derivation> full = electrodes.flatMap(
        t -> t.find(name, "S_e", metal.word(), Key.notBelow(column, size))
            .or(() -> t.find(name, "S_e", metal.word(), Key.notAbove(column, size))));
    Optional<Derivation> limit = alone.flatMap(t -> t.find("limit for a " + electrode, "S_a", metal.word(), byElectrode));
    return full.map(f -> limit.filter(l -> size(l).compareTo(size(f)) < 0).map(l -> thinner(name, f, l)).orElse(f));
  }

  /**
   * The least supply-side bonding jumper beside hots of a size, NFPA 70 Table 250.102(C)(1): that of an electrode conductor, as far as the
   * two tables are alike.
   *
   * @param metal of the jumper
   * @return absent above 1100 kcmil of copper and 1750 of aluminum, where it is an eighth of the hots
   */
  public Optional<Derivation> forBonding(WireSize hot, Metal hotMetal, Metal metal) {
    if (hot.areaSquareMeters() > (hotMetal == Metal.COPPER ? LAST_COPPER : LAST_ALUMINUM) * SQUARE_METERS_PER_KCMIL * (1 + 1e-9)) {
      return Optional.empty();
    }
    return electrodes.flatMap(
        t -> t.find("least bonding jumper, " + metal.word(), "S_b", metal.word(),
            Key.notBelow("service-" + hotMetal.word(), Derivation.stated("service conductor", "", hot))));
  }

  private static Derivation thinner(String name, Derivation full, Derivation limit) {
    return Derivation.computed(name, "S_e", "the smaller of S_e and S_a", limit.value(), List.of(full, limit));
  }

  /** The least conductor of a service, or of a feeder that carries all of a dwelling, for a rating. */
  public Optional<Derivation> forService(Derivation rating, Metal metal) {
    return service.flatMap(
        t -> t.find("least service conductor, " + metal.word(), "S", metal.word(), Key.notBelow("rating", rating)));
  }

  private static WireSize size(Derivation derivation) {
    return ((Value.Size) derivation.value()).size();
  }
}
