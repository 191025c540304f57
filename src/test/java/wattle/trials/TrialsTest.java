package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wattle.trials.Plans.amps;
import static wattle.trials.Plans.run;
import static wattle.trials.Plans.volts;

import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.finding.Finding;

/** Every kind of event on a small house, against what an electrician expects of it; common practice. */
class TrialsTest {
  @Test
  void theSharedNeutralCarriesTheDifference() {
    assertThat(amps(run("kitchen.c1.upper draws 10 A\n kitchen.c1.lower draws 10 A"), "counter", "neutral")).isCloseTo(0, within(1e-6));
    assertThat(amps(run("kitchen.c1.upper draws 10 A"), "counter", "neutral")).isCloseTo(10, within(1e-6));
  }

  /** Both hots on slots 2 and 6, rows 1 and 3, are on one leg: 20 A return. */
  @Test
  void movedToOneLegTheNeutralCarriesTheSum() {
    TrialResult result = run("kitchen.c1.upper draws 10 A\n kitchen.c1.lower draws 10 A\n move counter to 2+6");
    assertThat(amps(result, "counter", "neutral")).isCloseTo(20, within(1e-3));
  }

  /** 12 Ω and 24 Ω in series across 240 V: 80 V and 160 V, a little less for the wires. */
  @Test
  void anOpenNeutralPutsUnequalLoadsInSeries() {
    TrialResult result = run("kitchen.c2.upper draws 1200 W\n kitchen.c2.lower draws 600 W\n open neutral of counter at kitchen.c1");
    assertThat(volts(result, "kitchen.c2.upper")).isCloseTo(80, within(0.6));
    assertThat(volts(result, "kitchen.c2.lower")).isCloseTo(160, within(1.2));
    assertThat(amps(result, "counter", "neutral")).isLessThan(1e-9);
  }

  @Test
  void anOpenNeutralAtThePanelIsTheSame() {
    TrialResult result = run("kitchen.c2.upper draws 1200 W\n kitchen.c2.lower draws 600 W\n open neutral of counter");
    assertThat(volts(result, "kitchen.c2.lower")).isCloseTo(160, within(1.2));
  }

  @Test
  void aBreakerThatIsOffKillsItsBranch() {
    TrialResult result = run("laundry.washer on\n open breaker P/3");
    assertThat(volts(result, "laundry.washer")).isLessThan(1e-6);
    assertThat(volts(result, "kitchen.c1.upper")).isGreaterThan(119);
  }

  /** Without its neutral the service leans on the rods: the lightly loaded leg rises, the other falls. */
  @Test
  void anOpenServiceNeutralShiftsTheLegs() {
    TrialResult result = run("laundry.washer draws 1200 W\n open service neutral");
    double loaded = volts(result, "laundry.washer");
    double idle = volts(result, "hall.lamp");
    assertThat(Math.min(loaded, idle)).isLessThan(90);
    assertThat(result.metals().get(0).volts().si()).as("metal parts").isGreaterThan(20);
  }

  /** 0.5 Ω with 7.5 A in it: 28 W; with the whole 20 A of the breaker 200 W. */
  @Test
  void aLooseJointHeats() {
    TrialResult result = run("laundry.washer draws 7.5 A\n loosen neutral at laundry.washer by 0.5 ohm");
    TrialResult.JointReading joint = result.joints().get(0);
    assertThat(joint.watts().si()).isCloseTo(7.5 * 7.5 * 0.5, within(1e-6));
    assertThat(joint.wattsAtFullLoad().orElseThrow().si()).isCloseTo(200, within(1e-9));
    assertThat(joint.watts().worked()).contains("7.5 A").contains("0.5 Ω");
  }

  /** 5 kΩ from the hot to metal that has lost its ground: 120 V to a voltmeter, 20 mA through a person of 1 kΩ. */
  @Test
  void aLiftedGroundLetsMetalRise() {
    TrialResult result = run("lift ground at laundry.washer leaking 5 kohm");
    TrialResult.MetalReading metal = result.metals().get(0);
    assertThat(metal.name()).isEqualTo("laundry.washer");
    assertThat(metal.volts().si()).isCloseTo(120, within(0.1));
    assertThat(metal.bodyAmps().orElseThrow().si()).isCloseTo(0.020, within(1e-4));
  }

  @Test
  void withoutLeakageMetalOffItsGroundHasNoVoltage() {
    TrialResult result = run("lift ground at laundry.washer");
    assertThat(result.metals()).allSatisfy(m -> assertThat(m.volts().si()).isLessThan(1e-6));
  }

  @Test
  void reversedPolarityPutsTheHotOnTheNeutralContact() {
    TrialResult result = run("swap at laundry.washer");
    assertThat(result.reversed()).singleElement().satisfies(r -> assertThat(r.volts().si()).isCloseTo(120, within(0.1)));
  }

  /** Only the source, the service run and 7 m of cable there and back hold it; a resistance in the fault adds to them. */
  @Test
  void aBoltedFaultIsHeldBackByTheWiresAlone() {
    TrialResult bolted = run("fault hot to ground at laundry.washer");
    TrialResult arcing = run("fault hot to ground at laundry.washer through 0.5 ohm");
    double amps = bolted.faults().get(0).amps().si();
    assertThat(amps).isBetween(600.0, 1300.0);
    assertThat(1 / arcing.faults().get(0).amps().si() - 1 / amps).isCloseTo(0.5 / 120, within(0.0006));
    assertThat(run("fault hot to other-hot at kitchen.range").faults().get(0).amps().si()).isGreaterThan(amps);
    assertThat(run("fault hot to neutral at P").faults().get(0).amps().si()).isGreaterThan(2 * amps);
  }

  @Test
  void switchesAreContacts() {
    assertThat(volts(run("hall.lamp on"), "hall.lamp")).isGreaterThan(118);
    assertThat(volts(run("hall.lamp on\n hall.sw1 off"), "hall.lamp")).isLessThan(0.01);
    assertThat(volts(run("hall.lamp on\n hall.sw1 off\n hall.sw2 off"), "hall.lamp")).isGreaterThan(118);
    assertThat(volts(run("den.sw on"), "den.lamp")).isGreaterThan(118);
    assertThat(run("den.sw on").drawing()).containsExactly("den.lamp");
    assertThat(volts(run("den.sw off"), "den.lamp")).isLessThan(0.01);
  }

  @Test
  void currentGoesThroughTheSwitchLoop() {
    assertThat(amps(run("den.lamp draws 2 A"), "loop", "switch leg")).isCloseTo(2, within(1e-6));
  }

  @Test
  void theHouseAsStatedHasAllItsLoads() {
    var plan = Plans.compile("");
    TrialResult result = new Trials(plan.house(), plan.library()).stated();
    assertThat(result.drawing()).contains("kitchen.range", "laundry.washer", "hall.lamp", "den.lamp");
    assertThat(volts(result, "kitchen.range")).isBetween(100.0, 240.0);
  }

  @Test
  void whatCannotHappenIsSaid() {
    assertThat(Plans.runChecked("laundry.washer on\n open neutral of range at kitchen.c1").findings())
        .extracting(Finding::rule)
        .containsExactly("trial-impossible");
    assertThat(Plans.runChecked("move counter to 2").findings()).extracting(Finding::rule).containsExactly("trial-impossible");
    assertThat(Plans.runChecked("move counter to 2+60").findings()).extracting(Finding::rule).containsExactly("trial-impossible");
  }

  @Test
  void aLoadThatCannotBeServedIsSaid() {
    TrialResult result = run("laundry.washer draws 400 kW power");
    assertThat(result.dangers()).anyMatch(d -> d.kind() == Danger.Kind.NOT_SERVED && d.at().equals("laundry.washer"));
  }

  @Test
  void everyFigureUnfolds() {
    TrialResult result = run("laundry.washer draws 7.5 A");
    TrialResult.OutletReading washer = result.outlets().stream().filter(o -> o.name().equals("laundry.washer")).findFirst().orElseThrow();
    assertThat(washer.volts().inputs()).extracting(i -> i.name()).anyMatch(n -> n.startsWith("drop in neutral, P to laundry"));
    assertThat(washer.volts().inputs()).extracting(i -> i.name()).anyMatch(n -> n.contains("service main"));
  }

  /** Behind an open neutral with nothing on, the neutral floats: no voltage is told, and none can be expected. */
  @Test
  void whatHangsOnNothingHasNoVoltage() {
    TrialResult result = run("open neutral of counter at kitchen.c1");
    assertThat(result.outlets()).filteredOn(TrialResult.OutletReading::floating).extracting(TrialResult.OutletReading::name)
        .containsExactlyInAnyOrder("kitchen.c1.upper", "kitchen.c1.lower", "kitchen.c2.upper", "kitchen.c2.lower");
    assertThat(Plans.compile("trial t { open neutral of counter }\nexpect voltage at kitchen.c1.upper is 120 V in t\n").findings())
        .extracting(Finding::rule).contains("expectation-unmeasured");
    assertThat(run("open neutral of counter at kitchen.c1\n kitchen.c2.upper draws 5 A").outlets())
        .noneMatch(TrialResult.OutletReading::floating);
  }

  /** A ground that is off and a hot that touches the metal: 120 V through the 1000 Ω of a person is 120 mA. */
  @Test
  void aLeakageOfNoResistanceIsAHotOnTheMetal() {
    TrialResult.MetalReading metal = run("lift ground at laundry.washer leaking 0 ohm").metals().get(0);
    assertThat(metal.volts().si()).isCloseTo(120, within(0.1));
    assertThat(metal.bodyAmps().orElseThrow().si()).isCloseTo(0.120, within(0.001));
    assertThat(Plans.compile("trial t { lift ground at laundry.washer leaking (0 ohm - 5 ohm) }").findings())
        .extracting(Finding::rule).contains("resistance-negative");
  }

  @Test
  void aTrialInWhichNothingHappensIsSaid() {
    assertThat(Plans.compile("trial t { }").findings()).extracting(Finding::rule).contains("trial-empty");
    assertThat(Plans.compile("trial t { laundry.washer on }").findings()).extracting(Finding::rule).doesNotContain("trial-empty");
    assertThat(Plans.compile("trial t { laundry.wsher on }").findings()).extracting(Finding::rule)
        .contains("name-unknown").doesNotContain("trial-empty");
  }

  /** No source gives a figure that is none: each is told, and the rest of the plan is worked out without it. */
  @Test
  void sourcesThatCannotBeAreFindings() {
    for (String source : List.of(
        "transformer 0 kVA 2 %", "transformer 25 kVA 0 %", "transformer 25 kVA (0 % - 1 %)", "transformer 25 kVA 2 % ratio (0 - 1)",
        "available 0 kA", "available (0 kA - 1 kA)", "generator 10 kVA 0 %", "generator (0 kVA - 1 kVA)")) {
      var plan = Plans.compileWith("transformer 25 kVA 2 % ratio 1.5", source, "trial t { laundry.washer on }");
      assertThat(plan.findings()).as(source).extracting(Finding::rule).contains("source-incomplete");
      TrialResult result = new Trials(plan.house(), plan.library()).run(plan.house().trials().get("t")).value();
      assertThat(volts(result, "laundry.washer")).as(source).isBetween(110.0, 120.0);
    }
  }
}
