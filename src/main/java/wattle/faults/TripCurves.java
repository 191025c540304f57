package wattle.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import wattle.derivation.Derivation;
import wattle.finding.Citation;
import wattle.library.Key;
import wattle.library.Library;
import wattle.library.Table;
import wattle.model.Breaker;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Trip curves of breakers, from the tables of the product standards. */
public final class TripCurves {
  /** Above this a supply of one leg is one of the places where breakers are to IEC 60898-1; common practice. */
  private static final double VOLTS_OF_IEC = 200;

  private final Library library;
  private final Map<Asked, Optional<TripCurve>> known = new ConcurrentHashMap<>();
  private final Map<Double, Optional<TripCurve>> fuses = new ConcurrentHashMap<>();

  /** What decides a curve; most breakers of a house are of a few ratings. */
  private record Asked(double amperes, boolean iec, String type) {}

  public TripCurves(Library library) {
    this.library = library;
  }

  /** Absent where the rating or a table is missing, and for fuses of supplies where breakers are to IEC 60898-1. */
  public Optional<TripCurve> of(Breaker breaker, SupplySystem system) {
    if (breaker.device() == Breaker.Device.FUSE) {
      return breaker.amperes().flatMap(a -> ofFuse(a, system));
    }
    boolean iec = breaker.trip().isPresent() || isOfIec(system);
    return breaker.amperes().flatMap(a -> curve(a, iec, breaker.trip().map(Enum::name).orElse("unstated")));
  }

  /** Of a main breaker of so many amperes, whose type of trip plans do not state. */
  public Optional<TripCurve> of(double amperes, SupplySystem system) {
    return curve(amperes, isOfIec(system), "unstated");
  }

  /**
   * Of a fuse of so many amperes: by what time it must have opened. It has no instantaneous trip; a link that melts needs no more of
   * I² × t as the current rises, so that a point at which it must have opened bounds every greater current.
   */
  public Optional<TripCurve> ofFuse(double amperes, SupplySystem system) {
    return isOfIec(system) ? Optional.empty() : fuses.computeIfAbsent(amperes, this::fuse);
  }

  private Optional<TripCurve> fuse(double amperes) {
    Optional<Table> table = library.table("fuse-opening");
    if (table.isEmpty()) {
      return Optional.empty();
    }
    Figures row = new Figures(table.get(), Key.notBelow("rating", Derivation.stated("rating", "I_n", Quantity.of(amperes, Units.AMPERE))));
    List<TripCurve.Point> mustTrip = new ArrayList<>();
    row.point("overload", "overload-time").ifPresent(mustTrip::add);
    row.point("high", "high-time").ifPresent(mustTrip::add);
    Optional<Double> hold = row.figure("hold");
    if (hold.isEmpty() || mustTrip.isEmpty()) {
      return Optional.empty();
    }
    String standard = standard(table.get());
    return Optional.of(
        new TripCurve(
            standard, amperes, hold.get(), Double.POSITIVE_INFINITY, mustTrip, Optional.empty(), hold.get(), Double.POSITIVE_INFINITY,
            Double.POSITIVE_INFINITY, 0, row.sources(), List.of()));
  }

  private String standard(Table table) {
    return table.citations().stream().findFirst().map(Citation::work).map(library::adopted).orElse(table.label());
  }

  /** Whether breakers of this supply are made to standards of IEC. */
  public static boolean isOfIec(SupplySystem system) {
    return system.kind() == SupplySystem.Kind.SINGLE_PHASE && system.legToNeutralVolts() > VOLTS_OF_IEC;
  }

  private Optional<TripCurve> curve(double amperes, boolean iec, String type) {
    return known.computeIfAbsent(new Asked(amperes, iec, type), this::find);
  }

  private Optional<TripCurve> find(Asked asked) {
    double amperes = asked.amperes;
    boolean iec = asked.iec;
    Optional<Table> trips = library.table(iec ? "breaker-trip-iec" : "breaker-trip");
    Optional<Table> bands = library.table(iec ? "instantaneous-trip-iec" : "instantaneous-trip");
    if (trips.isEmpty() || bands.isEmpty()) {
      return Optional.empty();
    }
    Key rating = Key.notBelow("rating", Derivation.stated("rating", "I_n", Quantity.of(amperes, Units.AMPERE)));
    Key kind = Key.is("type", Derivation.stated("type", "", asked.type));
    Figures trip = new Figures(trips.get(), rating);
    Figures band = new Figures(bands.get(), kind);
    List<TripCurve.Point> mustTrip = new ArrayList<>();
    trip.point("overload", "overload-time").ifPresent(mustTrip::add);
    trip.point("high", "high-time").ifPresent(mustTrip::add);
    Optional<Double> hold = trip.figure("hold");
    Optional<Double> least = band.figure("least");
    Optional<Double> usual = band.figure("usual");
    Optional<Double> most = band.figure("most");
    Optional<Double> time = band.figure("time");
    if (hold.isEmpty() || mustTrip.isEmpty() || least.isEmpty() || usual.isEmpty() || most.isEmpty() || time.isEmpty()) {
      return Optional.empty();
    }
    String standard = standard(trips.get());
    return Optional.of(
        new TripCurve(
            standard, amperes, hold.get(), trip.figure("hold-time").orElse(Double.POSITIVE_INFINITY), mustTrip,
            trip.point("high", "high-least"), least.get(), usual.get(), most.get(), time.get(), trip.sources(),
            band.sources()));
  }

  /** The figures of one row. */
  private record Figures(Table table, Key key) {
    Optional<Double> figure(String column) {
      return table.find(column, "", column, key).flatMap(Derivation::quantity).map(Quantity::si);
    }

    Optional<TripCurve.Point> point(String multiple, String seconds) {
      return figure(multiple).flatMap(m -> figure(seconds).map(s -> new TripCurve.Point(m, s)));
    }

    List<Citation> sources() {
      return table.row(key).map(table::sourcesOf).orElse(List.of());
    }
  }
}
