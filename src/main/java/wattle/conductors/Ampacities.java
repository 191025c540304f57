package wattle.conductors;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
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
 * What conductors may carry, by the tables of the plan's code: the table's figure for the rating of the insulation, times
 * the ambient factor, times the factor for bundling, and not more than the column that the use or the terminals are held
 * to. A terminal is a separate limit: it is as hot as the conductor there, and takes no part in the factors.
 */
public final class Ampacities {
  private static final int[] COLUMNS = {90, 75, 60};

  private final Optional<Table> table;
  private final Optional<Table> ambients;
  private final Optional<Table> bundles;
  private final Optional<Table> terminals;
  private final Map<Conditions, Optional<Ampacity>> known = new ConcurrentHashMap<>();
  private final Map<Ends, Optional<Derivation>> knownAtEnds = new ConcurrentHashMap<>();

  /** What decides the limit of the terminals; the rating by its figure and the name that it goes by. */
  private record Ends(WireSize size, Metal metal, Derivation rating, Optional<Derivation> marked) {
    @Override
    public int hashCode() {
      return 31 * (31 * size.hashCode() + metal.hashCode()) + Double.hashCode(rating.si());
    }
  }

  public Ampacities(Library library) {
    table = library.table("ampacity");
    ambients = library.table("ambient-correction");
    bundles = library.table("bundling");
    terminals = library.table("terminal-temperature");
  }

  /** Absent where the code has no figure for the conductor, or the plan names no code. */
  public Optional<Ampacity> of(Conditions conditions) {
    return known.computeIfAbsent(conditions, this::find);
  }

  private Optional<Ampacity> find(Conditions conditions) {
    Optional<Derivation> base = listed(conditions.size(), conditions.metal(), conditions.insulationCelsius(), "I_t");
    Optional<Derivation> ambient = ambientFactor(conditions);
    Optional<Derivation> bundling = bundlingFactor(conditions);
    Optional<Derivation> use = listed(conditions.size(), conditions.metal(), conditions.useCelsius(), "I_u");
    if (base.isEmpty() || ambient.isEmpty() || bundling.isEmpty() || use.isEmpty()) {
      return Optional.empty();
    }
    double one = base.get().si() * ambient.get().si() * bundling.get().si();
    String name = "corrected ampacity of " + conditions.conductor();
    Derivation corrected = conditions.sets() == 1
        ? Derivation.computed(name, "I_c", "I_t × k_a × k_n", one, Units.AMPERE, base.get(), ambient.get(), bundling.get())
        : Derivation.computed(
            name, "I_c", "n_s × I_t × k_a × k_n", conditions.sets() * one, Units.AMPERE, sets(conditions), base.get(), ambient.get(),
            bundling.get());
    Derivation allowed = conditions.useCelsius() < conditions.insulationCelsius()
        ? least("ampacity of " + conditions.conductor(), corrected, all(use.get(), conditions).named("limit of its use", "I_u"))
        : corrected.named("ampacity of " + conditions.conductor(), "I_z");
    return Optional.of(new Ampacity(base.get(), ambient.get(), bundling.get(), corrected, allowed));
  }

  /**
   * The table's figure for a column not above a temperature rating.
   *
   * @param symbol of the result in derivations
   */
  public Optional<Derivation> listed(WireSize size, Metal metal, double celsius, String symbol) {
    for (int column : COLUMNS) {
      if (column <= celsius) {
        return listed(size, metal, column, "ampacity of " + size + " " + metal.word() + " at " + column + " °C", symbol);
      }
    }
    return Optional.empty();
  }

  private Optional<Derivation> listed(WireSize size, Metal metal, int column, String name, String symbol) {
    Derivation sought = Derivation.stated("size", "", size);
    String place = metal.word() + "-" + column;
    return table.flatMap(
        t -> size.kind() == WireSize.Kind.SQUARE_MILLIMETERS
            ? t.find(name, symbol, place, Key.notAbove("size", sought))
                .map(d -> d.remarking("The table lists gauges; the next smaller one is used for this size."))
            : t.find(name, symbol, place, Key.is("size", sought)));
  }

  private Optional<Derivation> ambientFactor(Conditions conditions) {
    return ambients.map(
        t -> {
          Derivation air = conditions.ambient();
          for (int column : COLUMNS) {
            if (column <= conditions.insulationCelsius()) {
              return t.find("ambient factor", "k_a", "rated-" + column, Key.notBelow("ambient", air))
                  .orElseGet(() -> tooHot(t, conditions));
            }
          }
          return tooHot(t, conditions);
        });
  }

  private static Derivation tooHot(Table table, Conditions conditions) {
    return Derivation.lookedUp(
        "ambient factor", "k_a", new Value.Amount(Quantity.of(0, Units.ONE)), "table " + table.name(),
        List.of(conditions.ambient()), table.citations())
        .remarking("The table ends below this temperature: this insulation is not made for it.");
  }

  private Optional<Derivation> bundlingFactor(Conditions conditions) {
    return bundles.flatMap(
        t -> t.find("bundling factor", "k_n", "factor", Key.notBelow("conductors", conditions.together())));
  }

  /**
   * What the terminals at the ends allow: the column of the temperature they are marked for, or where the plan states
   * none, the one the code holds unmarked terminals of that rating to.
   *
   * @param rating of the breaker or device, in amperes
   */
  public Optional<Derivation> atTerminals(WireSize size, Metal metal, Derivation rating, Optional<Derivation> marked) {
    return knownAtEnds.computeIfAbsent(new Ends(size, metal, rating, marked), this::atTerminals);
  }

  private Optional<Derivation> atTerminals(Ends ends) {
    WireSize size = ends.size;
    Metal metal = ends.metal;
    return ends.marked
        .or(
            () -> unmarked("temperature of unmarked terminals", "T_t", ends.rating))
        .flatMap(
            celsius -> listed(size, metal, celsius.quantity().orElseThrow().in(Units.CELSIUS), "I_e")
                .map(d -> limit(d, celsius)));
  }

  /** The temperature that the code holds terminals to which are not marked, by the rating of their circuit. */
  public Optional<Derivation> unmarked(Derivation rating) {
    return unmarked("temperature of unmarked terminals", "T_t", rating);
  }

  Optional<Derivation> unmarked(String name, String symbol, Derivation rating) {
    return terminals.flatMap(t -> t.find(name, symbol, "celsius", Key.notBelow("current", rating)));
  }

  private static Derivation limit(Derivation listed, Derivation celsius) {
    List<Derivation> keys = Stream.concat(listed.inputs().stream(), Stream.of(celsius)).toList();
    return Derivation.lookedUp(
        "limit of the terminals", listed.symbol(), listed.value(), listed.formula(), keys, listed.sources())
        .remarking(listed.remark());
  }

  /** The ampacity that counts for a breaker: that of the run, or of the terminals where that is less. */
  public Optional<Derivation> between(Conditions conditions, Derivation rating, Optional<Derivation> marked) {
    return of(conditions)
        .flatMap(
            a -> atTerminals(conditions.size(), conditions.metal(), rating, marked)
                .map(e -> least("ampacity of " + conditions.conductor() + " between terminals", a.allowed(), all(e, conditions))));
  }

  private static Derivation sets(Conditions conditions) {
    return Derivation.stated("sets in parallel", "n_s", Quantity.of(conditions.sets(), Units.ONE));
  }

  /** A limit of one conductor, for all that share the current. */
  private static Derivation all(Derivation limit, Conditions conditions) {
    return conditions.sets() == 1
        ? limit
        : Derivation.computed(
            limit.name() + ", all sets", limit.symbol(), "n_s × I", conditions.sets() * limit.si(), Units.AMPERE, sets(conditions),
            limit.named(limit.name(), "I"));
  }

  private static Derivation least(String name, Derivation one, Derivation other) {
    String formula = "min(" + one.symbol() + ", " + other.symbol() + ")";
    return Derivation.computed(
        name, "I_z", formula, Math.min(one.si(), other.si()), Units.AMPERE, one, other);
  }

  /** The sizes that the table lists for a metal, thinnest first. */
  public List<WireSize> sizes(Metal metal) {
    return table.map(t -> Sizes.listed(t, "size", metal.word() + "-60")).orElse(List.of());
  }

  /**
   * The thinnest size whose listed figure is not below a current, without any correction; absent where none is.
   *
   * @param celsius column of the table
   * @param allowed sizes that another rule allows for it
   */
  public Optional<WireSize> leastFor(double amperes, Metal metal, double celsius, Predicate<WireSize> allowed) {
    return sizes(metal).stream().filter(allowed)
        .filter(s -> listed(s, metal, celsius, "I").filter(i -> i.si() >= amperes - 1e-9).isPresent()).findFirst();
  }
}
