package wattle.loads;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.finding.Finding;
import wattle.model.Role;
import wattle.model.Section;

/** A hot keeps its color: common practice, so that red is never spliced to a black of another leg. */
class HotColorTest {
  private static Compilation plan(String chain, String room) {
    return LarchMews.compile("""
        plan "Color" revision "A"
        use code us-2023
        service main 120/240 V 100 A { source available 10 kA }
        panel P from main { bus 100 A slots 8 bonded
          main breaker 100 A 10 kA
          1+3 20 A two-pole counter "Counter" }
        branch counter by 12/3 NM-B { P --3 m-- kitchen.a on black --2 m-- kitchen.b %s }
        room kitchen { a: receptacle 1200 W   b: receptacle 600 W %s }
        """.formatted(chain, room));
  }

  @Test
  void whatIsOnRedIsOnTheRedWireOfTheLastCableToo() {
    for (Compilation plan : List.of(plan("on red", ""), plan("", "on red"))) {
      Section last = plan.house().branches().get("counter").sections().get(1);
      assertThat(last.conductors()).anySatisfy(c -> {
        assertThat(c.role()).isEqualTo(new Role.Hot(1));
        assertThat(c.wire().color()).isEqualTo("red");
      });
      assertThat(ConnectedLoads.of(plan.house()).branch("counter").on(wattle.model.Leg.B)).isEqualTo(600);
    }
  }

  @Test
  void whatARunSaysAndWhatItsDeviceSaysIsTheSame() {
    assertThat(plan("on red", "on black").findings()).extracting(Finding::rule).contains("hot-disagrees");
    assertThat(plan("on red", "on red").findings()).extracting(Finding::rule).doesNotContain("hot-disagrees");
  }

  /**
   * Two receptacles in one box on the two hots of a multiwire circuit, which NFPA 70 210.4 has; currents by hand: 1200 VA / 120 V and
   * 600 VA / 120 V on their own legs, and the difference in the neutral.
   */
  @Test
  void theDevicesOfOneBoxSitOnTheHotThatEachSays() {
    Compilation plan = LarchMews.compile("""
        plan "Two in one" revision "A"
        use code us-2023
        service main 120/240 V 100 A { source available 10 kA }
        panel P from main { bus 100 A slots 8 bonded
          main breaker 100 A 10 kA
          1+3 20 A two-pole counter "Counter" }
        branch counter by 12/3 NM-B { P --3 m-- kitchen.pair }
        room kitchen { box pair 36 in3 { a: receptacle 1200 W on black   b: receptacle 600 W on red } }
        """);
    assertThat(plan.findings()).extracting(Finding::rule)
        .doesNotContain("hot-disagrees", "hot-unstated", "pole-feeds-nothing", "box-overfilled");
    ConnectedLoads loads = ConnectedLoads.of(plan.house());
    assertThat(loads.branch("counter").on(wattle.model.Leg.A)).isEqualTo(1200);
    assertThat(loads.branch("counter").on(wattle.model.Leg.B)).isEqualTo(600);
    assertThat(plan.house().branches().get("counter").points().get(1).hotOf("kitchen.a")).isZero();
    assertThat(plan.house().branches().get("counter").points().get(1).hotOf("kitchen.b")).isEqualTo(1);
  }

  /** Where two of a box differ, a third that says nothing is asked for; where they agree it is on the same. */
  @Test
  void whoSaysNothingIsAskedWhereTheOthersDiffer() {
    String text = """
        service main 120/240 V 100 A { source available 10 kA }
        panel P from main { bus 100 A slots 8 bonded
          1+3 20 A two-pole counter "Counter" }
        branch counter by 12/3 NM-B { P --3 m-- kitchen.trio }
        room kitchen { box trio 60 in3 { a: receptacle on black   b: receptacle on %s   c: receptacle } }
        """;
    assertThat(LarchMews.compile(text.formatted("red")).findings()).extracting(Finding::rule).contains("hot-unstated");
    assertThat(LarchMews.compile(text.formatted("black")).findings()).extracting(Finding::rule).doesNotContain("hot-unstated");
  }
}
