package wattle.server;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import wattle.library.CableKind;
import wattle.library.Library;
import wattle.loads.LegLoads;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Load;
import wattle.model.Panel;
import wattle.model.Race;
import wattle.model.Raceway;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.UnitSystem;
import wattle.quantity.Units;

/** What there is to know of a thing with a name; of a rule, {@link RulePages} tells. */
final class ThingPages {
  private ThingPages() {}

  /** Absent for a thing that neither the plan nor the library has. */
  static Optional<Page> of(Named thing, Analysis analysis) {
    if (thing.kind() == Named.Kind.PATTERN || thing.kind() == Named.Kind.PLACEMENT || thing.kind() == Named.Kind.PARAMETER) {
      return PatternPages.of(thing, analysis);
    }
    Optional<Page> page = analysis.inHouse(thing).flatMap(name -> of(thing, name, analysis));
    boolean inPattern = !thing.pattern().isEmpty() && thing.kind() != Named.Kind.PARAMETER;
    return inPattern ? page.map(p -> p.line("as in the first placement of pattern " + thing.pattern())) : page;
  }

  private static Optional<Page> of(Named thing, String name, Analysis analysis) {
    House house = analysis.house();
    Library library = analysis.compilation().library();
    return switch (thing.kind()) {
      case BRANCH -> Optional.ofNullable(house.branches().get(name)).map(b -> BranchPage.of(b, analysis));
      case PANEL -> Optional.ofNullable(house.panels().get(name)).map(p -> panel(p, analysis));
      case SERVICE ->
        Optional.ofNullable(house.services().get(name))
            .map(s -> new Page().title("service " + name, "").line(s.system().text()));
      case DWELLING ->
        Optional.ofNullable(house.dwellings().get(name))
            .map(d -> new Page().title("dwelling " + name, d.label().orElse("")).line(String.join(", ", d.panels())));
      case ROOM ->
        Optional.ofNullable(house.rooms().get(name))
            .map(r -> new Page().title("room " + name, r.title()).line(String.join(", ", r.boxes())));
      case DEVICE -> device(name, analysis);
      case RACEWAY -> Optional.ofNullable(house.raceways().get(name)).map(r -> raceway(r, house));
      case CONSTANT -> constant(thing, analysis);
      case TRIAL ->
        Optional.ofNullable(house.trials().get(name))
            .map(t -> new Page().title("trial " + name, t.label().orElse(""))
                .line(t.events().size() + (t.events().size() == 1 ? " event" : " events")));
      case PART -> library.part(name).map(ThingPages::part);
      case CABLE -> library.cable(name).map(c -> cable(c, house.units()));
      case TABLE ->
        library.table(name).map(t -> new Page().title("table " + name, "").line(t.citations().toString()));
      case LIMIT -> library.limit(name).map(l -> new Page().title("limit " + name, house.units().known(l.value())));
      case PACK -> Optional.ofNullable(library.packs().get(name)).map(t -> new Page().title("pack " + name, t));
      case RULE -> throw new AssertionError("RulePages");
      case PATTERN, PLACEMENT, PARAMETER -> throw new AssertionError("PatternPages");
    };
  }

  /** {@code leg A 1.2 kVA (10 A), leg B …}, of legs that carry something. */
  static String loads(LegLoads loads, SupplySystem system) {
    List<String> parts = new ArrayList<>();
    for (Leg leg : system.legs()) {
      if (loads.on(leg) > 0) {
        parts.add(
            "leg " + leg + " " + Quantity.plain(loads.on(leg), 4) + " VA ("
                + Quantity.plain(loads.amperes(leg, system), 3) + " A)");
      }
    }
    if (loads.unplaced() > 0) {
      parts.add(Quantity.plain(loads.unplaced(), 4) + " VA on no leg that is known");
    }
    return parts.isEmpty() ? "no load is stated" : "connected: " + String.join(", ", parts);
  }

  private static Page panel(Panel panel, Analysis analysis) {
    Page page = new Page().title("panel " + panel.name(), panel.label().orElse(""));
    page.line(panel.system().text() + panel.busRating().map(b -> ", bus " + b).orElse("")
        + panel.slotCount().map(n -> ", " + n + " slots").orElse(""));
    return page.line(loads(analysis.compilation().figures().loads().panel(panel.name()), panel.system()));
  }

  private static Optional<Page> device(String name, Analysis analysis) {
    Device device = analysis.house().devices().get(name);
    if (device == null) {
      return Optional.ofNullable(analysis.house().boxes().get(name))
          .map(b -> new Page().title("box " + name, "").line(String.join(", ", b.devices())).line(branchesOf(name, analysis)));
    }
    Page page = new Page().title(name, device.kind().name() + device.label().map(l -> " \"" + l + "\"").orElse(""));
    String load = device.loads().stream()
        .filter(l -> l.voltAmperes() > 0)
        .map(ThingPages::load)
        .collect(Collectors.joining(", "));
    page.line(load);
    page.line(device.controls().isEmpty() ? "" : "controls " + String.join(", ", device.controls()));
    return Optional.of(page.line(branchesOf(device.box(), analysis)));
  }

  private static String load(Load load) {
    return (load.part().isEmpty() ? "" : load.part() + " ") + load.rated().map(Quantity::toString).orElse("") + " = "
        + Quantity.plain(load.voltAmperes(), 4) + " VA";
  }

  private static String branchesOf(String box, Analysis analysis) {
    List<String> on = analysis.house().branches().values().stream()
        .filter(b -> b.points().stream().anyMatch(p -> p.box().filter(box::equals).isPresent()))
        .map(b -> b.name() + legs(b))
        .toList();
    return on.isEmpty() ? "on no branch" : "on branch " + String.join(", ", on);
  }

  static String legs(Branch branch) {
    List<String> legs = branch.hots().stream().flatMap(h -> h.leg().stream()).map(Leg::name).distinct().toList();
    return legs.isEmpty() ? "" : (legs.size() == 1 ? ", leg " : ", legs ") + String.join(" and ", legs);
  }

  private static Page raceway(Raceway raceway, House house) {
    List<String> through = house.branches().values().stream()
        .filter(b -> b.sections().stream().anyMatch(s -> s.surroundings().raceways().contains(raceway.name())))
        .map(Branch::name)
        .toList();
    return new Page()
        .title("raceway " + raceway.name(), raceway.race().map(Race::text).orElse(""))
        .line(through.isEmpty() ? "nothing goes through it" : "contains runs of " + String.join(", ", through));
  }

  private static Optional<Page> constant(Named thing, Analysis analysis) {
    return analysis
        .derived()
        .declaration(thing)
        .map(o -> new Page().title(thing.name(), "").line(o.whole().text()));
  }

  private static Page part(DeviceKind kind) {
    Page page = new Page().title(kind.name(), kind.family().name().toLowerCase(java.util.Locale.ROOT));
    if (!kind.halves().isEmpty()) {
      page.line("halves: " + String.join(", ", kind.halves()));
    }
    kind.rating().ifPresent(r -> page.line("rated " + r));
    return page;
  }

  private static Page cable(CableKind cable, UnitSystem units) {
    Page page = new Page().title(cable.name(), cable.label());
    page.line(
        cable.metal().word() + ", insulation good for " + units.known(Quantity.of(cable.insulationCelsius(), Units.CELSIUS))
            + (cable.ampacityCelsius() < cable.insulationCelsius()
                ? ", held to the " + units.known(Quantity.of(cable.ampacityCelsius(), Units.CELSIUS)) + " ampacities"
                : ""));
    return page
        .line(cable.places().isEmpty() ? "" : "for places that are " + cable.places().stream().sorted().collect(Collectors.joining(", ")));
  }
}
