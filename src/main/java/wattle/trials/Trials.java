package wattle.trials;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.conductors.Impedances;
import wattle.finding.Checked;
import wattle.library.Library;
import wattle.memo.OnceEach;
import wattle.model.Branch;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Trial;
import wattle.network.Solution;

/**
 * Runs trials on a house. Only what a trial names draws in it; without a trial every device draws what the plan states.
 * Switches are on unless an event says otherwise. Conductors are taken at 75 °C, as the tables of resistance are.
 */
public final class Trials {
  /** Of nominal, the voltage below which no inverter takes a grid for one. */
  private static final double LEAST_SHARE = 0.5;

  private final House house;
  private final Library library;
  private final Impedances impedances;
  private final OnceEach<String, BranchWires> wires = new OnceEach<>(this::wiresOf);
  private final EarthFigures earth;
  private final CarriedLimits limits;

  public Trials(House house, Library library) {
    this.house = house;
    this.library = library;
    impedances = new Impedances(library);
    earth = EarthFigures.of(library);
    limits = new CarriedLimits(house, library);
  }

  /** The house as stated: everything on at once. */
  public TrialResult stated() {
    return run(Scenario.quiet().drawing(new StatedLoads(house).all()));
  }

  /** One trial of the plan; findings tell of events that cannot happen in this house. */
  public Checked<TrialResult> run(Trial trial) {
    return run(trial.name(), trial.events());
  }

  /** @param name of the trial; empty for events that no trial of the plan holds */
  public Checked<TrialResult> run(String name, List<Event> events) {
    return run(name, events, false);
  }

  /** Events beside every stated load, which is on unless an event says otherwise. */
  Checked<TrialResult> statedWith(List<Event> events) {
    return run("", events, true);
  }

  private Checked<TrialResult> run(String name, List<Event> events, boolean stated) {
    Checked<Scenario> scenario = new ScenarioReader(house, stated).read(name, events);
    return new Checked<>(run(scenario.value()), scenario.findings());
  }

  TrialResult run(Scenario asked) {
    Scenario scenario = asked.supplies().has(Supplies.Part.FOLLOWS) ? asked.fedBy(asked.supplies().stopping(stopped(asked))) : asked;
    HouseNetwork network = network(scenario, Optional.empty());
    Solution solution = network.network().solve();
    Optional<HouseNetwork> touched = scenario.lifted().isEmpty()
        ? Optional.empty()
        : Optional.of(network(scenario, Optional.of(earth.body().si())));
    return new TrialResult(house, library, scenario, network, solution, touched.map(t -> new TrialResult.Touched(t, t.network().solve())),
        earth, limits);
  }

  /** Sources that follow and find no voltage with all of their kind off; what a plan calls an island does not keep them on. */
  private Set<String> stopped(Scenario scenario) {
    Set<String> followers = scenario.supplies().followers();
    HouseNetwork alone = network(scenario.fedBy(scenario.supplies().stopping(followers)), Optional.empty());
    Solution solution = alone.network().solve();
    Set<String> found = alone.outlets().stream()
        .filter(o -> solution.volts(o.box(), o.a(), o.b()).magnitude() >= LEAST_SHARE * o.nominalVolts())
        .map(HouseNetwork.Outlet::device)
        .collect(Collectors.toSet());
    return followers.stream().filter(f -> !found.contains(f)).collect(Collectors.toSet());
  }

  private BranchWires wiresOf(String name) {
    Branch branch = house.branches().get(name);
    Panel panel = house.panels().get(branch.panel().orElseThrow());
    return BranchWires.of(branch, house, impedances, HouseNetworkBuilder.hertz(house.serviceOf(panel)));
  }

  private HouseNetwork network(Scenario scenario, Optional<Double> body) {
    return new HouseNetworkBuilder(house, library, impedances, wires, earth, scenario, body).build();
  }
}
