package wattle.loads;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.finding.Finding;
import wattle.model.Leg;
import wattle.model.SupplySystem;
import wattle.trials.TrialResult.ConductorReading;
import wattle.trials.Trials;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.Worksheet;

/** A duplex whose dwellings are on two legs each of a three-phase service: its worksheets and legs against hand figures. */
class LarchMewsTest {
  private static final Compilation PLAN = LarchMews.plan();

  private static Worksheet feeder(Compilation plan, String method, String panel) {
    HouseWorksheets sheets = new HouseWorksheets(plan.house(), plan.library());
    return sheets.calculate(sheets.method(method).orElseThrow(), sheets.feeder(panel).orElseThrow()).worksheet().orElseThrow();
  }

  private static Worksheet service(Compilation plan) {
    HouseWorksheets sheets = new HouseWorksheets(plan.house(), plan.library());
    HouseInputs.Read read = sheets.services().get(0);
    return sheets.calculate(sheets.method("multifamily").orElseThrow(), read).worksheet().orElseThrow();
  }

  /**
   * By hand, NFPA 70 Part III: 90 m² × 33 + 3000 + 1500 = 7470, 3000 + 35 % of 4470 = 4564.5; water 4500; one range 8000 (table 220.55,
   * column C); dryer 5400: 22 464.5 VA / 208 V = 108.0 A. Neutral by 220.61(C)(1) in full: 17 964.5 / 208 = 86.4 A.
   */
  @Test
  void aFeederOnTwoLegsOfAWyeIsAThreeWireSupply() {
    for (String panel : List.of("EAST", "WEST")) {
      Worksheet feeder = feeder(PLAN, "standard", panel);
      assertThat(feeder.total().si()).isCloseTo(22464.5, within(0.01));
      assertThat(feeder.current().si()).isCloseTo(108.0, within(0.05));
      assertThat(feeder.neutralTotal().si()).isCloseTo(17964.5, within(0.01));
      assertThat(feeder.neutralCurrent().si()).isCloseTo(86.4, within(0.05));
    }
  }

  /** By hand, NFPA 70 220.82, which names three-wire 208Y/120: 10 000 + 40 % of 16 370 = 16 548 VA, 79.6 A. */
  @Test
  void theOptionalMethodIsOpenToIt() {
    Worksheet feeder = feeder(PLAN, "optional", "WEST");
    assertThat(feeder.total().si()).isCloseTo(16548, within(0.01));
    assertThat(feeder.current().si()).isCloseTo(79.6, within(0.05));
  }

  /**
   * By hand: general 3000 + 35 % of 11 940 = 7179, water 9000, both half on A-B and half on B-C: √3 × 8089.5 / 208 = 67.4 A on B; ranges by
   * 220.55 2 × 1 → 11 kW × 3/2 and dryers by 220.54 2 × 5400 × 3/2, each / (√3 × 208): 45.8 and 45.0 A. Together 158.1 A.
   */
  @Test
  void theServiceIsThatOfItsHeaviestLeg() {
    Worksheet service = service(PLAN);
    assertThat(service.total().si()).isCloseTo(7179 + 9000 + 16500 + 16200, within(0.01));
    assertThat(service.current().si()).isCloseTo(158.1, within(0.1));
  }

  /** By hand: both on A-B, 2 × 2 ranges → 17 kW × 3/2 and 4 × 5400 × 3/2: 25 500 and 32 400 VA; another spread saves 25 200 VA. */
  @Test
  void anotherSpreadThatSavesIsSaid() {
    Compilation together = LarchMews.compile(LarchMews.text("2+4"));
    assertThat(service(together).total().si()).isCloseTo(7179 + 9000 + 25500 + 32400, within(0.01));
    List<String> said = spread(together);
    assertThat(said).hasSize(1);
    assertThat(said.get(0)).contains("2 between A and B");
    assertThat(spread(PLAN)).isEmpty();
  }

  private static List<String> spread(Compilation plan) {
    return plan.findings().stream().filter(f -> f.rule().equals("dwellings-unevenly-spread")).map(Finding::headline).toList();
  }

  /** The legs by vectors against the trial solver, which knows of neither: within what the wires lose. */
  @Test
  void theTrialSolverFindsTheSameLegsAndNeutral() {
    ConnectedLoads loads = ConnectedLoads.of(PLAN.house());
    List<ConductorReading> readings = new Trials(PLAN.house(), PLAN.library()).stated().conductors();
    for (String panel : List.of("EAST", "WEST")) {
      SupplySystem system = PLAN.house().panels().get(panel).system();
      for (Leg leg : system.legs()) {
        double solved = amps(readings, "to " + panel, "hot " + leg);
        assertThat(loads.panel(panel).amperes(leg, system)).as(panel + " " + leg).isCloseTo(solved, within(0.035 * solved));
      }
      double neutral = amps(readings, "to " + panel, "neutral");
      assertThat(loads.panel(panel).neutralAmperes(system)).as(panel + " neutral").isCloseTo(neutral, within(0.3));
    }
  }

  private static double amps(List<ConductorReading> readings, String run, String conductor) {
    Stream<ConductorReading> found = readings.stream().filter(r -> r.run().endsWith(run) && r.conductor().startsWith(conductor));
    return found.findFirst().orElseThrow().amps().si();
  }
}
