package wattle.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.conductors.Impedances;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.library.Library;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.Trial;
import wattle.network.Solution;

/**
 * Runs trials on a house. Only what a trial names draws in it; without a trial every device draws what the plan states.
 * Switches are on unless an event says otherwise. Conductors are taken at 75 °C, as the tables of resistance are.
 */
public final class Trials {
  private final House house;
  private final Library library;
  private final Impedances impedances;
  private final EarthFigures earth;

  public Trials(House house, Library library) {
    this.house = house;
    this.library = library;
    impedances = new Impedances(library);
    earth = EarthFigures.of(library);
  }

  /** The house as stated: everything on at once. */
  public TrialResult stated() {
    return run(Scenario.quiet().drawing(new StatedLoads(house).all()));
  }

  /** One trial of the plan; findings tell of events that cannot happen in this house, and of loads that cannot be served. */
  public Checked<TrialResult> run(Trial trial) {
    return run(trial.name(), trial.events());
  }

  /** @param name of the trial; empty for events that no trial of the plan holds */
  public Checked<TrialResult> run(String name, List<Event> events) {
    Checked<Scenario> scenario = new ScenarioReader(house).read(name, events);
    TrialResult result = run(scenario.value());
    List<Finding> findings = new ArrayList<>(scenario.findings());
    findings.addAll(new LoadFindings(result).list());
    return new Checked<>(result, findings);
  }

  TrialResult run(Scenario scenario) {
    HouseNetwork network = network(scenario, Optional.empty());
    Solution solution = network.network().solve();
    Optional<HouseNetwork> touched =
        scenario.lifted().isEmpty() ? Optional.empty() : Optional.of(network(scenario, Optional.of(earth.body().si())));
    return new TrialResult(house, library, scenario, network, solution, touched.map(t -> new TrialResult.Touched(t, t.network().solve())), earth);
  }

  private HouseNetwork network(Scenario scenario, Optional<Double> body) {
    return new HouseNetworkBuilder(house, library, impedances, earth, scenario, body).build();
  }
}
