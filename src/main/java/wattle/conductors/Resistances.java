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
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/**
 * Resistance by size, metal and construction. A gauge stands in table {@code conductor-resistance}; a size in mm² in
 * {@code conductor-resistance-metric}, where it is the largest that the standard allows. A size in neither is worked out
 * from the next one listed, in proportion to cross-section.
 */
public final class Resistances {
  private final Optional<Table> gauges;
  private final Optional<Table> metric;
  private final Optional<Table> coefficients;
  private final Map<Conductor, Optional<Resistance>> known = new ConcurrentHashMap<>();

  private record Conductor(WireSize size, Metal metal, Construction construction) {}

  public Resistances(Library library) {
    gauges = library.table("conductor-resistance");
    metric = library.table("conductor-resistance-metric");
    coefficients = library.table("temperature-coefficient");
  }

  /** As usual for the size. */
  public Optional<Resistance> of(WireSize size, Metal metal) {
    return of(size, metal, Construction.usual(size));
  }

  /** Absent where the library lacks a table or a metal. */
  public Optional<Resistance> of(WireSize size, Metal metal, Construction construction) {
    return known.computeIfAbsent(new Conductor(size, metal, construction), this::find);
  }

  private Optional<Resistance> find(Conductor conductor) {
    Key metalKey = Key.is("metal", Derivation.stated("metal", "", conductor.metal.word()));
    Optional<Derivation> coefficient = coefficients.flatMap(
        t -> t.find("rise for each kelvin, " + conductor.metal.word() + ", from 75 °C", "α", "per-kelvin", metalKey));
    return coefficient.flatMap(c -> at75(conductor, c).map(r -> new Resistance(r, c)));
  }

  private Optional<Derivation> at75(Conductor conductor, Derivation coefficient) {
    Derivation size = Derivation.stated("size", "", conductor.size);
    return (conductor.size.kind() == WireSize.Kind.SQUARE_MILLIMETERS
        ? metric
            .flatMap(t -> t.find("resistance at 20 °C", "R_20", conductor.metal.word(), Key.is("size", size)))
            .map(r20 -> warmed(r20, coefficient))
        : Optional.<Derivation>empty())
        .or(() -> listed(conductor, Key.is("size", size)))
        .or(() -> scaled(conductor));
  }

  private Optional<Derivation> listed(Conductor conductor, Key size) {
    Key construction = Key.is("construction", Derivation.stated("construction", "", conductor.construction.word()));
    return gauges.flatMap(
        t -> t.find("resistance at 75 °C", "R_75", conductor.metal.word(), size, construction)
            // Thick conductors are listed stranded alone.
            .or(() -> t.find("resistance at 75 °C", "R_75", conductor.metal.word(), size)));
  }

  private static Derivation warmed(Derivation r20, Derivation coefficient) {
    double factor = 1 + coefficient.si() * (20 - Resistance.TABLE_CELSIUS);
    return Derivation.computed(
        "resistance at 75 °C", "R_75", "R_20 / (1 + α × (20 °C − 75 °C))",
        new Value.Amount(new Quantity(r20.si() / factor, Units.OHM_PER_KILOMETER)), List.of(r20, coefficient));
  }

  private Optional<Derivation> scaled(Conductor conductor) {
    Derivation size = Derivation.stated("size", "", conductor.size);
    Optional<Table> column = gauges.filter(t -> t.indexOf(conductor.metal.word()).isPresent());
    return column
        .flatMap(t -> t.find("next size listed", "", "size", Key.notBelow("size", size)))
        .or(() -> column.flatMap(t -> t.find("next size listed", "", "size", Key.notAbove("size", size))))
        .flatMap(next -> scaled(conductor, next));
  }

  private Optional<Derivation> scaled(Conductor conductor, Derivation next) {
    WireSize other = ((Value.Size) next.value()).size();
    return listed(conductor, Key.is("size", next))
        .map(
            r -> {
              Derivation base = r.named("resistance of " + other + " at 75 °C", "R_n");
              Derivation area = CrossSection.of(conductor.size, "S");
              Derivation otherArea = CrossSection.of(other, "S_n");
              return Derivation.computed(
                  "resistance at 75 °C", "R_75", "R_n × S_n / S",
                  new Value.Amount(new Quantity(r.si() * otherArea.si() / area.si(), Units.OHM_PER_KILOMETER)),
                  List.of(base, otherArea, area))
                  .remarking("No table lists this size; it is figured in proportion to cross-section.");
            });
  }
}
