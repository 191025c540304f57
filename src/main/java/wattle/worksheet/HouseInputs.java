package wattle.worksheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.library.Library;
import wattle.memo.Once;
import wattle.model.Breaker;
import wattle.model.Dwelling;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Service;
import wattle.model.Status;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * What load calculations need, taken from a house: for each service, and for each panel that another panel feeds. Devices
 * belong to the dwelling whose panel feeds them; where no dwelling names a panel, to the only one. What is to be removed
 * is left out.
 */
public final class HouseInputs {
  private final House house;
  private final Once<Boolean> ofDwellings;
  private final Territory territory;
  private final UnitReader reader;
  private final boolean countsFarms;

  public HouseInputs(House house, Library library) {
    this.house = house;
    this.ofDwellings = new Once<>(() -> House.isOfDwellings(house.dwellings().values(), house.rooms().values(), house.services().values()));
    countsFarms = library.limit("farm-first").isPresent();
    territory = new Territory(house);
    reader = new UnitReader(house, library, territory);
  }

  /**
   * Inputs, and what is wrong with them or left out.
   *
   * @param atLeast the same without what may belong elsewhere, for a fault that is one in any case; absent where nothing is estimated
   */
  public record Read(Inputs inputs, List<Objection> objections, Optional<Inputs> atLeast) {
    /** Of which nothing is estimated. */
    public Read(Inputs inputs, List<Objection> objections) {
      this(inputs, objections, Optional.empty());
    }

    public Read {
      objections = List.copyOf(objections);
    }
  }

  /** Of every service, in the order of the plan. */
  public List<Read> services() {
    return house.services().values().stream().map(this::service).toList();
  }

  /** Of every feeder from a panel to a panel, in the order of the plan. */
  public List<Read> feeders() {
    return house.panels().values().stream()
        .filter(p -> p.supply() instanceof PanelSupply.FromBreaker)
        .map(this::feeder)
        .toList();
  }

  private Read service(Service service) {
    List<Panel> panels = territory.panels(service);
    Optional<Quantity> peak = Optional.ofNullable(service.facts().get("peak-demand"));
    return read(service.name(), Inputs.Scope.SERVICE, panels, service.system(), rating(service, panels), peak,
        service.status() == Status.EXISTING || panels.stream()
            .anyMatch(p -> p.supply() instanceof PanelSupply.FromService && p.status() == Status.EXISTING),
        true);
  }

  /** As stated; else the least of what stands at its panels. */
  private static Optional<Quantity> rating(Service service, List<Panel> panels) {
    return service
        .rating()
        .or(
            () -> panels.stream()
                .filter(p -> p.supply() instanceof PanelSupply.FromService)
                .map(p -> p.main().flatMap(m -> m.rating()))
                .reduce((a, b) -> Optional.empty())
                .flatMap(r -> r));
  }

  /** Of the feeder of a panel, or of a panel that a service feeds. */
  public Read feeder(Panel panel) {
    List<Panel> panels = territory.downstream(panel);
    Inputs.Scope scope = territory.isWhole(panels) ? Inputs.Scope.FEEDER : Inputs.Scope.PART;
    return read(panel.name(), scope, panels, panel.system(), feederRating(panel), Optional.empty(), isExisting(panel), true);
  }

  /** Where a code has no figures for farm loads they are loads like others. */
  private Optional<Panel> farmOf(Panel panel) {
    return countsFarms ? territory.farmOf(panel) : Optional.empty();
  }

  private boolean isExisting(Panel panel) {
    return panel.status() == Status.EXISTING || panel.supply() instanceof PanelSupply.FromBreaker from
        && house.breaker(from.breaker()).filter(b -> b.status() == Status.EXISTING).isPresent();
  }

  private Optional<Quantity> feederRating(Panel panel) {
    if (panel.supply() instanceof PanelSupply.FromBreaker from) {
      return house.breaker(from.breaker()).flatMap(Breaker::rating);
    }
    return panel.main().flatMap(m -> m.rating()).or(panel::busRating);
  }

  /** Circuits for lights and general receptacles on what a service or panel feeds. */
  LeastCircuits.General general(String name) {
    return reader.general(
        house.services().containsKey(name) ? territory.panels(house.services().get(name)) : territory.downstream(house.panels().get(name)));
  }

  private Read read(
      String name,
      Inputs.Scope scope,
      List<Panel> panels,
      wattle.model.SupplySystem system,
      Optional<Quantity> rating,
      Optional<Quantity> peak,
      boolean existing,
      boolean estimating) {
    List<Objection> objections = new ArrayList<>();
    // By name, which is empty for a dwelling that has none and absent for what belongs to no dwelling.
    Map<Optional<String>, List<Panel>> byDwelling = new LinkedHashMap<>();
    Map<String, List<Panel>> byFarm = new LinkedHashMap<>();
    panels.forEach(p -> farmOf(p).ifPresent(f -> byFarm.computeIfAbsent(f.name(), n -> new ArrayList<>()).add(p)));
    panels.stream().filter(p -> farmOf(p).isEmpty()).forEach(
        p -> byDwelling.computeIfAbsent(territory.dwellingOf(p).map(d -> d.name().orElse("")), d -> new ArrayList<>()).add(p));
    List<DwellingUnit> units = new ArrayList<>();
    List<ConnectedLoad> common = new ArrayList<>();
    byDwelling.values().forEach(
        its -> {
          Optional<Dwelling> dwelling = territory.dwellingOf(its.get(0));
          if (dwelling.isPresent()) {
            DwellingUnit unit = reader.unit(dwelling.get(), its, scope, estimating, objections);
            // Those alike have a feeder each, just like this one.
            boolean own = dwelling.get().panels().contains(name) && scope != Inputs.Scope.SERVICE;
            units.add(own ? unit.alone() : unit);
          } else if (house.dwellings().isEmpty() && scope == Inputs.Scope.PART) {
            units.add(reader.part(name, Optional.empty(), its, estimating, objections));
          } else {
            common.addAll(reader.all(its, objections));
          }
        });
    List<FarmBuilding> farm = new ArrayList<>();
    byFarm.forEach((top, its) -> farm.add(reader.farm(panels.stream().anyMatch(p -> p.name().equals(top)) ? top : name, its, objections)));
    if (units.isEmpty() && !farm.isEmpty() && !common.isEmpty()) {
      // What is in no building of its own is one more farm load.
      farm.add(new FarmBuilding("the rest of " + name, common, Set.of(), common.size()));
      common.clear();
    }
    if (scope != Inputs.Scope.PART && units.isEmpty() && farm.isEmpty()
        && !ofDwellings.get()) {
      objections.add(Conditions.workplace(name));
    }
    Inputs inputs = new Inputs(
        name, scope, system, rating.map(r -> r.shownIn(Units.AMPERE)), units, common, peak, reader.placement(panels),
        existing, farm);
    boolean estimated = objections.stream().anyMatch(o -> o.rule().equals(Areas.ESTIMATED));
    return new Read(
        inputs, objections,
        estimating && estimated
            ? Optional.of(read(name, scope, panels, system, rating, peak, existing, false).inputs())
            : Optional.empty());
  }
}
