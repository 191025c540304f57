package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.trials.SourceReading.State;

/** Sources of the house in trials: what they give, what flows where, and what may never be joined. */
class SourcesTest {
  private static TrialResult run(String events) {
    Checked<TrialResult> run = Plans.runWithSources(events);
    assertThat(run.findings()).isEmpty();
    return run.value();
  }

  private static SourceReading source(TrialResult result, String name) {
    return result.sources().stream().filter(s -> s.name().equals(name)).findFirst().orElseThrow();
  }

  private static List<String> rules(String events) {
    return Plans.runWithSources(events).findings().stream().map(Finding::rule).toList();
  }

  /** What the sun gives is what the house takes, the wires lose and the street gets. */
  @Property(tries = 60)
  void powerIsNeitherMadeNorLost(@ForAll @DoubleRange(min = 0, max = 5000) double sun,
      @ForAll @DoubleRange(min = 1, max = 4000) double load) {
    TrialResult result = run("yard.pv gives " + Math.round(sun) + " W\n kitchen.range draws " + Math.round(load) + " W power");
    double taken = Math.round(load) + result.wattsLost();
    double given = source(result, "main").watts().si() + source(result, "yard.pv").watts().si();
    // The run of the service lies before its meter.
    double beforeTheMeter = result.conductors().stream().filter(c -> c.run().startsWith("service ")).mapToDouble(c -> c.watts().si()).sum();
    assertThat(given).isCloseTo(taken - beforeTheMeter, within(0.5));
  }

  @Test
  void exportedPowerIsBelowZero() {
    TrialResult result = run("yard.pv on");
    assertThat(source(result, "yard.pv").watts().si()).isCloseTo(5000, within(1e-3));
    assertThat(source(result, "main").watts().si()).isBetween(-5000.0, -4700.0);
    assertThat(source(result, "main").state()).isEqualTo(State.TAKES);
    assertThat(source(result, "main").amps().si()).isCloseTo(20.5, within(0.4));
  }

  /**
   * 10 AWG copper, 1.21 Ω for 1000 ft at 75 °C by NFPA 70 chapter 9 table 8 (solid, uncoated), there and back over 30 m:
   * 0.2382 Ω. 5 kW at 240 V and 20.5 A make a rise of 2.0 % of 240 V.
   */
  @Test
  void theVoltageRisesUpToTheInverter() {
    TrialResult result = run("yard.pv on");
    SourceReading sun = source(result, "yard.pv");
    double ohms = 1.21 / 304.8 * 2 * 30;
    assertThat(sun.rise().orElseThrow().si()).isCloseTo(sun.amps().si() * ohms / 240, within(0.0006));
    assertThat(sun.volts().si()).isGreaterThan(240);
  }

  /**
   * The first cycles of a bolted fault at the terminals of a generator drive its rated current over its subtransient
   * reactance, I = S / (U × x″d) (the per-unit method, as of IEEE 141): 6 kVA, 240 V, 12 %: 208.3 A. Ten meters of 10 AWG
   * there and back add 0.079 Ω of resistance to the 1.152 Ω of reactance.
   */
  @Test
  void aGeneratorDrivesItsSubtransientCurrent() {
    TrialResult result = run("lose main\n transfer P to yard.g\n yard.g on\n fault hot to other-hot at yard.g");
    assertThat(result.faults().get(0).amps().si()).isCloseTo(6000 / (240 * 0.12), within(0.1));
    TrialResult far = run("lose main\n transfer P to yard.g\n yard.g on\n fault hot to other-hot at P");
    double ohms = 1.21 / 304.8 * 2 * 10;
    assertThat(far.faults().get(0).amps().si()).isCloseTo(240 / Math.hypot(ohms, 0.12 * 240 * 240 / 6000), within(1.0));
  }

  @Test
  void anInverterStopsWithNothingToFollow() {
    TrialResult result = run("lose main\n yard.pv on\n kitchen.range on");
    assertThat(source(result, "yard.pv").state()).isEqualTo(State.STOPPED);
    assertThat(Plans.volts(result, "kitchen.range")).isCloseTo(0, within(1e-6));
  }

  @Test
  void storageFollowsTheSupplyAndElseHoldsTheVoltage() {
    assertThat(source(run("yard.store gives 2 kW"), "yard.store").state()).isEqualTo(State.FOLLOWS);
    TrialResult alone = run("transfer P to yard.store\n yard.store on\n yard.pv gives 1 kW\n laundry.washer on");
    assertThat(source(alone, "yard.store").state()).isEqualTo(State.TAKES);
    assertThat(source(alone, "yard.pv").state()).isEqualTo(State.FOLLOWS);
    assertThat(source(alone, "main").amps().si()).isCloseTo(0, within(1e-9));
  }

  /** Whatever the position, the supply and the interlocked source are never joined. */
  @ParameterizedTest
  @ValueSource(strings = {"", "transfer P to utility", "transfer P to yard.g", "transfer P to off", "transfer P to yard.store"})
  void theTransferNeverJoinsBoth(String position) {
    TrialResult result = run(position + "\n yard.g on\n yard.pv on");
    Islands islands = new Islands(result.house(), result.scenario().openBreakers(), result.scenario().supplies().openMains());
    assertThat(islands.ofService("main")).isNotEqualTo(islands.ofDevice("yard.g"));
    assertThat(source(result, "yard.g").state()).isIn(State.HOLDS, State.TAKES);
  }

  @Test
  void aGeneratorThatNothingKeepsApartIsAFinding() {
    String house = Plans.SOURCES.replace("back-fed interlocked gen", "back-fed gen");
    Checked<TrialResult> run = Plans.runIn(house, "yard.g on\n kitchen.range on");
    assertThat(run.findings()).extracting(Finding::rule).containsExactly("sources-in-parallel");
    assertThat(run.value().sources()).extracting(SourceReading::name).doesNotContain("yard.g");
  }

  /** With the street dark it would light it: the conductors of the service stand at its voltage. */
  @Test
  void aGeneratorThatNothingKeepsApartFeedsTheStreet() {
    String house = Plans.SOURCES.replace("back-fed interlocked gen", "back-fed gen");
    TrialResult result = Plans.runIn(house, "lose main\n yard.g on").value();
    assertThat(source(result, "main").state()).isEqualTo(State.BACK_FED);
    assertThat(source(result, "main").volts().si()).isCloseTo(240, within(1.0));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
          "yard.pv gives 9 kW", "yard.g gives 1 kW", "kitchen.range gives 1 kW", "yard.pv draws 1 kW",
          "transfer P to yard.pv\n transfer P to kitchen.range", "kitchen.c1 gives 1 kW"
      })
  void whatCannotBeIsTold(String events) {
    assertThat(rules(events)).contains("trial-impossible");
  }

  @Test
  void aSourceWithoutARatingIsTold() {
    Checked<TrialResult> run = Plans.runIn(Plans.SOURCES.replace("solar inverter 5 kW", "solar inverter"), "yard.pv on");
    assertThat(run.findings().get(0).headline()).contains("'yard.pv' states no rating");
  }

  /** A neutral that is bonded at the generator too and not switched shares the current with the ground. */
  @Test
  void aSecondBondPutsCurrentOnTheGround() {
    String bonded = Plans.SOURCES.replace("reactance 12 %", "reactance 12 % bonded");
    String events = "lose main\n transfer P to yard.g\n yard.g on\n kitchen.c1.upper draws 10 A";
    double joined = Plans.amps(Plans.runIn(bonded, events).value(), "gen", "ground");
    double apart = Plans.amps(Plans.runIn(Plans.SOURCES, events).value(), "gen", "ground");
    assertThat(joined).isGreaterThan(2);
    assertThat(apart).isLessThan(1e-3);
    String switched = bonded.replace("interlocked gen", "interlocked switched-neutral gen").replace("slots 20   bonded", "slots 20");
    assertThat(Plans.amps(Plans.runIn(switched, events).value(), "gen", "ground")).isLessThan(1e-3);
  }

  /** The main lets in what the loads take beyond what the sun gives; in between the bar carries no more than either. */
  @Test
  void theBusCarriesWhatFlowsPast() {
    TrialResult result = run("yard.pv gives 2 kW\n yard.store draws 5 kW power");
    BusReading bus = result.buses().get(0);
    double main = source(result, "main").amps().si();
    assertThat(bus.sum().si()).isCloseTo(main + source(result, "yard.pv").amps().si(), within(0.3));
    assertThat(bus.most().si()).isLessThanOrEqualTo(bus.sum().si() + 1e-6);
    assertThat(bus.most().si()).isGreaterThanOrEqualTo(main - 1e-6);
  }
}
