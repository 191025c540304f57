package wattle.bind;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import wattle.finding.Edit;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.library.CableKind;
import wattle.model.Metal;
import wattle.model.Origin;
import wattle.model.Race;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.model.Words;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;
import wattle.quantity.WireSize;
import wattle.syntax.Tree;

/** Cables and raceways with conductors, to wires with purpose, size, metal and color. */
final class WiringBinder {
  /** A number of conductors behind a size: what follows the slash where that is no 0, which belongs to the size. */
  private static final Pattern COUNT = Pattern.compile("^[0-9.]+(?:/0)?(/[1-9][0-9]*)");
  private static final Pattern WITHOUT_GROUND = Pattern.compile("without\\s+ground");
  /** Rating of insulation that the plan does not state: that of THWN, which is pulled into most raceways; common practice. */
  private static final double UNSTATED_CELSIUS = 75;
  static final List<String> COLORS = List.of("black", "red", "blue", "brown", "yellow");

  private final Scope scope;

  WiringBinder(Scope scope) {
    this.scope = scope;
  }

  Optional<Wiring> bind(Tree.Wiring wiring) {
    if (wiring instanceof Tree.CableWiring cable) {
      return cable(cable);
    }
    if (wiring instanceof Tree.RacewayWiring raceway) {
      return raceway(raceway);
    }
    if (wiring instanceof Tree.NamedWiring named) {
      return named(named);
    }
    if (wiring instanceof Tree.ParallelWiring parallel) {
      return parallel(parallel);
    }
    throw new AssertionError(wiring);
  }

  /** More sets than any switchboard has lugs for. */
  private static final int MOST_SETS = 24;

  private Optional<Wiring> parallel(Tree.ParallelWiring parallel) {
    double sets = parallel.sets();
    if (sets != Math.rint(sets) || sets < 1 || sets > MOST_SETS) {
      scope.report(
          Finding.error("sets-unlikely", "'" + parallel.number().text() + " sets' is not a number of parallel sets")
              .at(parallel.number(), "a whole number from 1 to " + MOST_SETS + " is expected here"));
      return Optional.empty();
    }
    return bind(parallel.each()).map(
        w -> new Wiring(WiringWords.of(parallel.span()), w.type(), w.race(), w.insulationCelsius(), w.wires(), (int) sets,
            Origin.of(parallel.span())));
  }

  /** Where a pattern was given a cable for it, that stands in its place. */
  private Optional<Wiring> named(Tree.NamedWiring named) {
    if (!named.told()) {
      boolean type = scope.library().cable(named.name().text()).isPresent();
      scope.report(
          Finding.error(Mistake.CABLE_UNKNOWN, "'" + named.name() + "' is not a cable" + (type ? ": its size is missing" : ""))
              .at(named.span(), "a cable such as 14/2 NM-B, or a parameter of the pattern, is expected here")
              .fix(type ? "write its size before it, as in 14/2 " + named.name() : "write its size and type, as in 14/2 NM-B"));
    }
    return Optional.empty();
  }

  /** {@code 14/2} without the {@code /2}; a size such as {@code 2/0} has no count. */
  private static Optional<Edit> withoutCount(Tree.CableSize size) {
    Matcher count = COUNT.matcher(size.span().text());
    return count.find()
        ? Optional.of(new Edit(size.span().source().span(size.span().start() + count.start(1),
            size.span().start() + count.end(1)), ""))
        : Optional.empty();
  }

  private static Fix withoutGround(Tree.CableWiring cable) {
    Matcher words = WITHOUT_GROUND.matcher(cable.span().text());
    return words.find()
        ? Fix.takenOut("leave out without ground, and the size of the ground", cable.span().source().span(
            cable.span().start() + words.start(), cable.span().start() + words.end()))
        : Fix.of("leave out without ground, and the size of the ground");
  }

  private Optional<Wiring> cable(Tree.CableWiring cable) {
    Optional<CableKind> kind = cable.type().flatMap(this::kind);
    if (cable.type().isPresent() && kind.isEmpty()) {
      return Optional.empty();
    }
    List<Sized> groups = new ArrayList<>();
    for (Tree.CableSize group : cable.sizes()) {
      Optional<Sized> sized = sized(group);
      if (sized.isEmpty()) {
        return Optional.empty();
      }
      groups.add(sized.get());
    }
    Metal metal = metal(cable.metal(), kind.map(CableKind::metal).orElse(Metal.COPPER));
    if (cable.metal().isEmpty() && kind.isEmpty()) {
      scope.assume("conductors are copper where no metal is stated");
    }
    boolean countedInList = groups.size() > 1 && groups.stream().anyMatch(g -> g.count.isPresent());
    if (countedInList || groups.size() > 1 && cable.withoutGround()) {
      scope.report(
          Finding.error(Mistake.WIRE_SIZE_UNKNOWN, "'" + cable.span().text() + "' lists its conductors and also counts them")
              .at(cable.span(), "the size of each conductor, as in 2-2-2-4, or their number, as in 2/3")
              .fix(countedInList
                  ? new Fix("take out the count", cable.sizes().stream().flatMap(g -> withoutCount(g).stream()).toList(),
                      Fix.Safety.OFFERED)
                  : withoutGround(cable)));
      return Optional.empty();
    }
    List<Wire> wires = groups.size() == 1
        ? counted(groups.get(0), metal, kind, cable)
        : listed(groups, metal, kind, cable);
    double insulation = kind.map(CableKind::insulationCelsius).orElse(60.0);
    return wires.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Wiring(
                WiringWords.of(cable.span()), kind.map(CableKind::name).orElse(""), Optional.empty(), insulation, wires,
                Origin.of(cable.span())));
  }

  /** {@code 14/2 NM-B}: so many insulated conductors of one size, and the ground that the cable type has. */
  private List<Wire> counted(Sized group, Metal metal, Optional<CableKind> kind, Tree.CableWiring cable) {
    List<Wire> wires = new ArrayList<>();
    if (group.count.isPresent()) {
      int count = group.count.get();
      List<String> colors = kind.map(CableKind::colors).orElse(COLORS);
      for (int i = 0; i < Math.max(1, count - 1); i++) {
        wires.add(new Wire(Wire.Purpose.HOT, group.size, metal, colors.isEmpty() ? "black" : colors.get(i % colors.size())));
      }
      if (count > 1) {
        wires.add(new Wire(Wire.Purpose.NEUTRAL, group.size, metal, kind.map(CableKind::neutralColor).orElse("white")));
      }
    } else if (kind.isPresent() && kind.get().hots() > 0) {
      for (int i = 0; i < kind.get().hots(); i++) {
        wires.add(new Wire(Wire.Purpose.HOT, group.size, metal, kind.get().colors().get(i)));
      }
      if (kind.get().neutral()) {
        wires.add(new Wire(Wire.Purpose.NEUTRAL, group.size, metal, kind.get().neutralColor()));
      }
    } else {
      wires.add(new Wire(Wire.Purpose.HOT, group.size, metal, kind.isEmpty() ? "bare" : "black"));
      return wires;
    }
    if (kind.isPresent() && !kind.get().ground().equals("none") && !cable.withoutGround()) {
      String size = kind.get().groundSizes().getOrDefault(group.size.key(), group.size.key());
      String color = kind.get().ground().equals("bare") ? "bare" : "green";
      wires.add(new Wire(Wire.Purpose.GROUND, WireSize.parse(size).orElse(group.size), metal, color));
    }
    return wires;
  }

  /** {@code 2-2-2-4 Al SER}: each conductor by its size; the ground last where the type has one, the neutral before. */
  private List<Wire> listed(List<Sized> groups, Metal metal, Optional<CableKind> kind, Tree.CableWiring cable) {
    boolean ground = kind.isEmpty() ? groups.size() > 3 : !kind.get().ground().equals("none");
    int insulated = groups.size() - (ground && groups.size() > 2 ? 1 : 0);
    List<Wire> wires = new ArrayList<>();
    for (int i = 0; i < groups.size(); i++) {
      WireSize size = groups.get(i).size;
      if (i >= insulated) {
        wires.add(new Wire(Wire.Purpose.GROUND, size, metal, "bare"));
      } else if (i == insulated - 1 && insulated > 1) {
        wires.add(new Wire(Wire.Purpose.NEUTRAL, size, metal, kind.map(CableKind::neutralColor).orElse("white")));
      } else {
        List<String> colors = kind.map(CableKind::colors).orElse(COLORS);
        wires.add(new Wire(Wire.Purpose.HOT, size, metal, colors.isEmpty() ? "black" : colors.get(i % colors.size())));
      }
    }
    return wires;
  }

  /** More conductors than the largest raceway takes of the thinnest; also keeps what is worked out for each pair of them short. */
  private static final int MOST_IN_RACEWAY = 500;

  /** A raceway, whose size is a length above nothing. */
  Optional<Race> race(Tree.RaceSize race) {
    Optional<Unit> unit = Units.find(race.unit().text()).filter(u -> u.dimension().equals(Dimension.LENGTH));
    if (unit.isEmpty() || race.size() <= 0) {
      scope.report(
          Finding.error("raceway-size-unknown", "'" + race.span().text() + "' is not a raceway size")
              .at(race.span(), "a trade size such as 3/4 in or 21 mm is expected here"));
      return Optional.empty();
    }
    return scope.word(Words.RACEWAYS, race.kind())
        .map(kind -> new Race(WiringWords.of(race.span()), kind, Quantity.of(race.size(), unit.get())));
  }

  private Optional<Wiring> raceway(Tree.RacewayWiring raceway) {
    if (raceway.conductors().stream().mapToLong(Tree.Conductor::count).sum() > MOST_IN_RACEWAY) {
      scope.report(
          Finding.error(Mistake.CONDUCTORS_TOO_MANY, "a raceway cannot hold so many conductors")
              .at(raceway.span(), "at most " + MOST_IN_RACEWAY + " in one raceway"));
      return Optional.empty();
    }
    List<Wire> wires = new ArrayList<>();
    double insulation = Double.POSITIVE_INFINITY;
    String type = "";
    boolean neutralNamed = raceway.conductors().stream().anyMatch(c -> c.role().isPresent() && c.role().get().text().equals("neutral"));
    Optional<Race> race = race(raceway.race());
    if (race.isEmpty()) {
      return Optional.empty();
    }
    for (Tree.Conductor conductor : raceway.conductors()) {
      Optional<Sized> sized = sized(conductor.size());
      if (conductor.count() < 1 || sized.flatMap(Sized::count).isPresent()) {
        scope.report(
            Finding.error(Mistake.WIRE_SIZE_UNKNOWN, "'" + conductor.span().text() + "' does not give the conductors of a raceway")
                .at(conductor.span(), "a count and a size such as 3 x 12 Cu THWN are expected here"));
        return Optional.empty();
      }
      Optional<CableKind> kind = conductor.insulation().flatMap(this::kind);
      if (sized.isEmpty() || conductor.insulation().isPresent() && kind.isEmpty()) {
        return Optional.empty();
      }
      Metal metal = metal(conductor.metal(), kind.map(CableKind::metal).orElse(Metal.COPPER));
      boolean ground = conductor.role().filter(r -> r.text().equals("ground")).isPresent();
      if (kind.isPresent() || !ground) { // a ground that states none has the insulation of the others
        insulation = Math.min(insulation, kind.map(CableKind::insulationCelsius).orElse(UNSTATED_CELSIUS));
      }
      type = type.isEmpty() ? kind.map(CableKind::name).orElse("") : type;
      addConductors(wires, conductor, sized.get().size, metal, neutralNamed);
    }
    wires.sort((a, b) -> a.purpose().compareTo(b.purpose()));
    return wires.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Wiring(
                WiringWords.of(raceway.span()), type, race, Double.isInfinite(insulation) ? UNSTATED_CELSIUS : insulation, wires,
                Origin.of(raceway.span())));
  }

  private static void addConductors(
      List<Wire> wires, Tree.Conductor conductor, WireSize size, Metal metal, boolean neutralNamed) {
    String role = conductor.role().map(Tree.Word::text).orElse("");
    for (int i = 0; i < conductor.count(); i++) {
      boolean last = i == conductor.count() - 1;
      if (role.equals("ground")) {
        wires.add(new Wire(Wire.Purpose.GROUND, size, metal, "green"));
      } else if (role.equals("neutral") || role.isEmpty() && !neutralNamed && last && conductor.count() > 1) {
        wires.add(new Wire(Wire.Purpose.NEUTRAL, size, metal, "white"));
      } else {
        long hots = wires.stream().filter(w -> w.purpose() == Wire.Purpose.HOT).count();
        wires.add(new Wire(Wire.Purpose.HOT, size, metal, COLORS.get((int) (hots % COLORS.size()))));
      }
    }
  }

  private record Sized(WireSize size, Optional<Integer> count) {}

  /** Splits {@code 4/0/3} into a size and a count; the figure after the first is part of the size where it is 0. */
  private Optional<Sized> sized(Tree.CableSize group) {
    List<Double> figures = group.figures();
    boolean aught = figures.size() > 1 && figures.get(1) == 0;
    String unit = group.unit().map(Tree.Word::text).orElse("");
    String text = plain(figures.get(0)) + (aught ? "/0" : "") + (unit.equals("AWG") ? "" : unit);
    Optional<WireSize> size = unit.isEmpty() || List.of("AWG", "kcmil", "mm2", "mm²").contains(unit)
        ? WireSize.parse(text)
        : Optional.empty();
    List<Double> rest = figures.subList(aught ? 2 : 1, figures.size());
    if (size.isEmpty() || rest.size() > 1 || !rest.isEmpty() && (rest.get(0) < 1 || rest.get(0) > 12)) {
      // As a tidy plan has it, so that setting it in order changes no finding.
      String written = figures.stream().map(WiringBinder::plain).collect(Collectors.joining("/")) + (unit.isEmpty() ? "" : " " + unit);
      scope.report(
          Finding.error(Mistake.WIRE_SIZE_UNKNOWN, "'" + written + "' is not a wire size")
              .at(group.span(), "a size such as 14, 2/0, 250 kcmil or 2.5 mm2 is expected here")
              .because("A second figure counts the insulated conductors of a cable, from 1 to 12: 14/2 is two of 14 AWG."));
      return Optional.empty();
    }
    return Optional.of(new Sized(size.get(), rest.isEmpty() ? Optional.empty() : Optional.of(rest.get(0).intValue())));
  }

  private static String plain(double figure) {
    return figure == Math.rint(figure) ? Long.toString((long) figure) : Double.toString(figure);
  }

  private static Metal metal(Optional<Tree.Word> written, Metal otherwise) {
    return written.map(w -> w.text().equals("Al") ? Metal.ALUMINUM : Metal.COPPER).orElse(otherwise);
  }

  private Optional<CableKind> kind(Tree.Word name) {
    Optional<CableKind> found = scope.library().cable(name.text());
    if (found.isEmpty()) {
      Finding.Builder finding = Finding.error(Mistake.CABLE_UNKNOWN, "no type of cable is called '" + name + "'")
          .at(name.span(), "a type such as NM-B or UF-B is expected here");
      for (String near : NearNames.of(name.text(), scope.library().cables().keySet())) {
        finding.fix(Fix.safe("write " + near, name.span(), near));
      }
      scope.report(finding);
    }
    return found;
  }
}
