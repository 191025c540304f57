package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wattle.trials.Plans.amps;
import static wattle.trials.Plans.volts;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.model.ConductorUse;
import wattle.model.Role;
import wattle.read.SourceReader;

/**
 * A load between two hots and the switch that works it: one that opens both leaves nothing live, one that opens a single hot
 * leaves the other at 120 V to ground. Common practice.
 */
class TwoHotsSwitchedTest {
  private static final String BOTH = "double-pole switch";
  private static final String ONE = "switch";

  private static Compilation heater(String kind, String events) {
    String plan = Plans.HOUSE.replace("6      15 A  loop", "9+11   25 A  two-pole  heat \"Water heater\"\n  6      15 A  loop")
        + """
            branch heat by 10/2 NM-B { P --6 m-- cellar.sw --2 m-- cellar.heater }
            room cellar { sw: %s for heater   heater: water heater 4.5 kW }
            trial t { %s }
            """.formatted(kind, events);
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("trial.wattle", plan), Path.of("trial.wattle"));
  }

  private static TrialResult run(String kind, String events) {
    Compilation plan = heater(kind, events);
    return new Trials(plan.house(), plan.library()).run(plan.house().trials().get("t")).value();
  }

  private static List<Role> rolesBeyondTheSwitch(String kind) {
    return heater(kind, "hall.lamp on").house().branches().get("heat").sections().get(1).conductors().stream().map(ConductorUse::role)
        .toList();
  }

  /** Volts to earth of what comes to the heater, by what it does. */
  private static Map<String, Double> atTheHeater(TrialResult result) {
    Map<String, Double> volts = new TreeMap<>();
    for (HouseNetwork.Conductor c : result.network().conductors()) {
      if (c.branch().filter("heat"::equals).isPresent() && c.point() == 2) {
        volts.put(c.role().orElseThrow().getClass().getSimpleName() + " " + c.name(),
            result.solution().volts(c.box(), c.local()).magnitude());
      }
    }
    return volts;
  }

  @Test
  void whatIsOpenedGoesOnAsSwitchLegs() {
    assertThat(rolesBeyondTheSwitch(BOTH)).containsExactly(new Role.SwitchLeg("cellar.sw", 0), new Role.SwitchLeg("cellar.sw", 1),
        new Role.Ground());
    assertThat(rolesBeyondTheSwitch(ONE)).containsExactlyInAnyOrder(new Role.SwitchLeg("cellar.sw", 0), new Role.Hot(1), new Role.Ground());
  }

  /** P / V = 4500 W / 240 V = 18.75 A in both hots and none back, a little less for the fall of the wires. */
  @Test
  void switchedOnItHasBothLegs() {
    for (String kind : List.of(BOTH, ONE)) {
      TrialResult result = run(kind, "cellar.heater on");
      assertThat(volts(result, "cellar.heater")).as(kind).isCloseTo(240, within(4.0));
      assertThat(amps(result, "heat", "switch leg of cellar.sw")).as(kind).isCloseTo(18.75, within(0.3));
      assertThat(amps(result, "heat", "hot B")).as(kind).isCloseTo(18.75, within(0.3));
    }
  }

  @Test
  void aDoublePoleSwitchLeavesNothingLive() {
    TrialResult result = run(BOTH, "cellar.heater on\n cellar.sw off");
    assertThat(volts(result, "cellar.heater")).isLessThan(1e-6);
    assertThat(atTheHeater(result)).hasSize(3).allSatisfy((name, v) -> assertThat(v).as(name).isLessThan(0.5));
  }

  /** Off, no current flows, and both ends of the element stand at the voltage of the hot that is left. */
  @Test
  void aSinglePoleSwitchLeavesTheOtherHotLive() {
    TrialResult result = run(ONE, "cellar.heater on\n cellar.sw off");
    assertThat(volts(result, "cellar.heater")).isLessThan(0.5);
    assertThat(amps(result, "heat", "hot B")).isLessThan(0.01);
    assertThat(atTheHeater(result).get("Hot hot B")).isCloseTo(120, within(1.0));
    assertThat(heater(ONE, "hall.lamp on").findings()).anySatisfy(f -> assertThat(f.rule()).isEqualTo("switch-leaves-hot-live"));
    assertThat(heater(BOTH, "hall.lamp on").findings()).noneSatisfy(f -> assertThat(f.rule()).isEqualTo("switch-leaves-hot-live"));
  }

  /** On a shared neutral it is one handle for two lights, each on a hot of its own. */
  @Test
  void itOpensEachOfTwoHotsForWhatSitsOnIt() {
    String plan = Plans.HOUSE.replace("6      15 A  loop", "9+11   15 A  two-pole  work \"Workshop\"\n  6      15 A  loop")
        + """
                       branch work by 14/3 NM-B { P --6 m-- shop.sw --2 m-- shop.one on black --2 m-- shop.two on red }
                       room shop { sw: double-pole switch for one, two   one: light 240 W   two: light 120 W }
                       trial t { shop.one draws 2 A
            shop.two draws 1 A }
                       """;
    Compilation shop = new Compiler(SourceReader.FROM_DISK).compile(new Source("trial.wattle", plan), Path.of("trial.wattle"));
    assertThat(wattle.Structure.findings(shop)).isEmpty();
    TrialResult result = new Trials(shop.house(), shop.library()).run(shop.house().trials().get("t")).value();
    assertThat(volts(result, "shop.one")).isCloseTo(120, within(1.0));
    assertThat(amps(result, "work", "switch leg of shop.sw")).isCloseTo(2, within(0.05));
    assertThat(amps(result, "work", "switch leg B of shop.sw")).isCloseTo(1, within(0.05));
    assertThat(amps(result, "work", "neutral")).as("the difference").isCloseTo(1, within(0.05));
  }
}
