package wattle.conductors;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.library.Cell;
import wattle.library.Key;
import wattle.library.Library;
import wattle.library.Table;
import wattle.model.Metal;
import wattle.model.Race;
import wattle.model.Wiring;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/**
 * How full a raceway is, by the tables of the plan's code: the areas of all conductors over their insulation, grounds
 * among them, against a part of the area inside that depends on how many there are, or on whether it is a nipple.
 *
 * <p>Areas are in the unit of the code's own tables and rounded as those print them, so that what the tables allow to the last figure is
 * allowed here. Of conductors that are all alike one more may go in where the code takes the division up from some part of one.
 */
public final class RacewayFill {
  private static final Unit SQUARE_INCH = Units.find("in²").orElseThrow();
  private static final Printed IN_INCHES = new Printed(Units.INCH, SQUARE_INCH, 10_000, 1000);
  private static final Printed IN_MILLIMETERS = new Printed(Units.MILLIMETER, Units.SQUARE_MILLIMETER, 100, 100);

  /**
   * How the tables of a code print.
   *
   * @param conductors parts of the unit to which areas of conductors are rounded
   * @param room the same of the area that may be filled
   */
  private record Printed(Unit length, Unit area, double conductors, double room) {}

  private final Optional<Table> bores;
  private final Optional<Table> parts;
  private final Optional<Table> jackets;
  private final Optional<Table> diameters;
  private final Optional<Table> compact;
  private final Printed printed;
  private final double roundedUp;
  private final Optional<Derivation> nippleLength;
  private final Optional<Derivation> nipplePart;

  /** @param insulation its type, such as {@code THWN-2} */
  public record Conductor(String insulation, WireSize size, Metal metal) {}

  /**
   * @param fill part of the area inside that the conductors take
   * @param most part that they may take
   * @param over whether they take more
   * @param needs area that they take
   * @param room area that they may take
   */
  public record Fill(Derivation fill, Derivation most, boolean over, Derivation needs, Derivation room) {}

  public RacewayFill(Library library) {
    bores = library.table("raceway-bore");
    parts = library.table("raceway-part");
    jackets = library.table("insulation-jacket");
    diameters = library.table("conductor-diameter");
    compact = library.table("compact-diameter");
    boolean metric = bores.stream().flatMap(t -> t.columns().stream()).filter(c -> c.name().equals("bore"))
        .anyMatch(c -> c.unit().filter(Units.MILLIMETER::equals).isPresent());
    printed = metric ? IN_MILLIMETERS : IN_INCHES;
    roundedUp = library.limit("alike-rounded-up").map(l -> 1 - l.value().si()).orElse(0.0);
    nippleLength = library.limit("nipple-length").map(l -> l.derivation("l"));
    nipplePart = library.limit("nipple-part").map(l -> l.derivation("p"));
  }

  /** The conductors of one set of a wiring. */
  public static List<Conductor> in(Wiring wiring) {
    return wiring.wires().stream().map(w -> new Conductor(wiring.type(), w.size(), w.metal())).toList();
  }

  /** Whether a piece of raceway from box to box is so short that it counts as a nipple; one of unknown length does not. */
  public boolean isNipple(Optional<Quantity> length) {
    return nippleLength.isPresent() && length.isPresent() && length.get().si() <= nippleLength.get().si() * (1 + 1e-9);
  }

  /** Whether the code lists this kind of raceway, but not in this size. */
  public boolean isUnlisted(Race race) {
    return bores.isPresent() && row(race).isEmpty() && !rows(race.kind()).isEmpty();
  }

  /** Absent where a table lacks the raceway, or the insulation or size of a conductor. */
  public Optional<Fill> of(Race race, Optional<Quantity> length, List<Conductor> conductors) {
    return row(race).flatMap(row -> fill(bore(row, race.kind()), isNipple(length), conductors));
  }

  /** The smallest trade size of a kind of raceway that holds conductors; absent where none does or a table lacks one of them. */
  public Optional<Derivation> smallest(String kind, boolean nipple, List<Conductor> conductors) {
    for (Table.Row row : rows(kind)) {
      Optional<Fill> fill = fill(bore(row, kind), nipple, conductors);
      if (fill.isPresent() && !fill.get().over) {
        return Optional.of(
            Derivation.computed(
                "least raceway", "", "the smallest with A_r ≥ A_c", new Value.Words(name(row) + " " + kind),
                List.of(fill.get().room.named("area that may be filled", "A_r"), fill.get().needs.named("area of the conductors", "A_c"))));
      }
    }
    return Optional.empty();
  }

  private Optional<Fill> fill(Derivation bore, boolean nipple, List<Conductor> conductors) {
    List<Derivation> areas = new ArrayList<>();
    for (Conductor conductor : conductors) {
      Optional<Derivation> area = area(conductor);
      if (area.isEmpty()) {
        return Optional.empty();
      }
      areas.add(area.get());
    }
    Optional<Derivation> most = nipple ? nipplePart : part(conductors.size());
    if (areas.isEmpty() || most.isEmpty()) {
      return Optional.empty();
    }
    Derivation needs = sum(areas);
    double inside = Math.PI / 4 * length(bore) * length(bore);
    Derivation area = area("area inside", "A_i", "π / 4 × d²", inside, bore.named("inside diameter", "d"));
    Derivation room = area(
        "area that may be filled", "A_r", "A_i × p", Math.round(printed.room * inside * most.get().si()) / printed.room, area,
        most.get().named("part", "p"));
    Derivation fill = Derivation.computed("raceway fill", "", "A_c / A_i",
        new Value.Amount(Quantity.of(100 * measure(needs) / inside, Units.PERCENT)),
        List.of(needs.named("area of the conductors", "A_c"), area));
    return Optional.of(new Fill(fill, most.get(), isOver(areas, needs, room), needs, room));
  }

  private boolean isOver(List<Derivation> areas, Derivation needs, Derivation room) {
    double one = measure(areas.get(0));
    boolean alike = areas.stream().allMatch(a -> measure(a) == one);
    return alike
        ? areas.size() > Math.floor(measure(room) / one + roundedUp + 1e-9)
        : measure(needs) > measure(room) + 1e-9;
  }

  private Optional<Derivation> part(int conductors) {
    Derivation count = Derivation.counted("conductors", "n", conductors);
    return parts.flatMap(t -> t.find("part that may be filled", "p", "part", Key.notAbove("conductors", count)));
  }

  private Optional<Derivation> area(Conductor conductor) {
    Derivation insulation = Derivation.stated("insulation", "", conductor.insulation);
    Derivation size = Derivation.stated("conductor", "", conductor.size);
    return jackets.flatMap(t -> t.find("jacket", "", "jacket", Key.is("insulation", insulation)))
        .map(j -> j.value().text())
        .flatMap(jacket -> diameter(jacket, size, conductor.metal))
        .map(d -> area(
            "area of " + conductor.size + " " + conductor.insulation, "A", "π / 4 × d²",
            rounded(Math.PI / 4 * length(d) * length(d)), d));
  }

  /** Aluminum is sold compact, thinner than other conductors, where a code has a table of such; sizes that it lacks are not made so. */
  private Optional<Derivation> diameter(String jacket, Derivation size, Metal metal) {
    Optional<Derivation> thinner = metal == Metal.ALUMINUM
        ? compact.flatMap(t -> t.find("diameter of compact conductors", "d", jacket, Key.is("size", size)))
        : Optional.empty();
    return thinner.or(() -> diameters.flatMap(t -> t.find("diameter", "d", jacket, Key.is("size", size))));
  }

  /** Alike ones counted: {@code 3 × A_1 + A_2}. */
  private Derivation sum(List<Derivation> areas) {
    Map<String, List<Derivation>> alike = new LinkedHashMap<>();
    areas.forEach(a -> alike.computeIfAbsent(a.name(), n -> new ArrayList<>()).add(a));
    List<String> terms = new ArrayList<>();
    List<Derivation> inputs = new ArrayList<>();
    double sum = 0;
    for (List<Derivation> each : alike.values()) {
      String symbol = "A_" + (terms.size() + 1);
      terms.add((each.size() > 1 ? each.size() + " × " : "") + symbol);
      inputs.add(each.get(0).named(each.get(0).name(), symbol));
      sum += each.size() * measure(each.get(0));
    }
    return area("area of the conductors", "A_c", String.join(" + ", terms), rounded(sum),
        inputs.toArray(new Derivation[0]));
  }

  private Derivation area(String name, String symbol, String formula, double value, Derivation... inputs) {
    return Derivation.computed(name, symbol, formula, value, printed.area, inputs);
  }

  private double rounded(double area) {
    return Math.round(printed.conductors * area) / printed.conductors;
  }

  private List<Table.Row> rows(String kind) {
    return bores.map(t -> t.rows().stream().filter(r -> cell(r, "kind").text().equals(kind)).toList()).orElse(List.of());
  }

  private Optional<Table.Row> row(Race race) {
    boolean metric = race.size().unit().equals(Units.MILLIMETER);
    return rows(race.kind()).stream()
        .filter(r -> Math.abs(figure(r, metric ? "metric" : "trade").si() - race.size().si()) <= 1e-6)
        .findFirst();
  }

  private Derivation bore(Table.Row row, String kind) {
    Derivation sought = Derivation.stated("raceway", "", kind);
    Derivation trade = Derivation.stated("trade size", "", figure(row, "trade"));
    return bores.orElseThrow().find("inside diameter", "d", "bore", Key.is("kind", sought), Key.is("trade", trade)).orElseThrow();
  }

  private Cell cell(Table.Row row, String column) {
    return row.cells().get(bores.orElseThrow().indexOf(column).orElseThrow());
  }

  private Quantity figure(Table.Row row, String column) {
    return ((Cell.Figure) cell(row, column)).quantity();
  }

  private double length(Derivation length) {
    return length.quantity().orElseThrow().in(printed.length);
  }

  private double measure(Derivation area) {
    return area.quantity().orElseThrow().in(printed.area);
  }

  /** By its trade size, or by its designator where the code's tables are in millimeters. */
  private String name(Table.Row row) {
    return printed.equals(IN_MILLIMETERS)
        ? Math.round(figure(row, "metric").in(Units.MILLIMETER)) + " mm"
        : tradeName(figure(row, "trade"));
  }

  /** As the trade writes it: {@code 1/2 in}, {@code 1-1/4 in}, {@code 2 in}. */
  public static String tradeName(Quantity size) {
    double inches = size.in(Units.INCH);
    long eighths = Math.round(inches * 8);
    long whole = eighths / 8;
    long rest = eighths % 8;
    if (rest == 0) {
      return whole + " in";
    }
    long by = rest % 4 == 0 ? 4 : rest % 2 == 0 ? 2 : 1;
    return (whole > 0 ? whole + "-" : "") + rest / by + "/" + 8 / by + " in";
  }
}
