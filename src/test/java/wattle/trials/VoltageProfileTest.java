package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.model.Branch;
import wattle.read.SourceReader;

class VoltageProfileTest {
  private static Optional<VoltageProfile> profile(Compilation plan, String branch) {
    return VoltageProfile.of(plan.house().branches().get(branch), plan.house(), plan.figures().trials());
  }

  private static Compilation compile(String branch) {
    String text = """
        plan "Test" use code us-2023
        service main 120/240 V 200 A { source available 10 kA }
        panel P from main { bus 200 A slots 20 bonded main breaker 200 A 22 kA
          1 15 A far }
        branch far by 14/2 NM-B %s
        room r { one: receptacle two: light 60 W j: junction }
        """
        .formatted(branch);
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", text), Path.of("house.wattle"));
  }

  /** By hand: 15 A through 2 × 20 m of 14 AWG copper at 75 °C, 3.07 Ω/kft (NFPA 70 chapter 9 table 8), is 6.04 V. */
  @Test
  void aBranchByHand() {
    VoltageProfile profile = profile(compile("{ P --20 m-- r.one }"), "far").orElseThrow();
    assertThat(profile.stops()).hasSize(2);
    assertThat(profile.stops().get(0).fullLoad()).isCloseTo(1, within(0.001));
    assertThat(120 * (1 - profile.stops().get(1).fullLoad())).isCloseTo(15 * 40 * 3.07 / 304.8, within(0.1));
    assertThat(profile.stops().get(1).meters()).isEqualTo(20);
    assertThat(profile.stops().get(1).before()).isZero();
  }

  @Test
  void aJunctionOnTheWayIsAStopAndAForkIsTwo() {
    VoltageProfile profile = profile(compile("{ P --5 m-- r.j --10 m-- r.one\n r.j --2 m-- r.two }"), "far").orElseThrow();
    assertThat(profile.stops()).extracting(VoltageProfile.Stop::name).containsExactly("P", "r.j", "r.one", "r.two");
    assertThat(profile.stops()).extracting(VoltageProfile.Stop::meters).containsExactly(0.0, 5.0, 15.0, 7.0);
    assertThat(profile.stops()).extracting(VoltageProfile.Stop::before).containsExactly(-1, 0, 1, 1);
    assertThat(profile.stops().get(1).stated()).isEmpty();
    double junction = 1 - profile.stops().get(1).fullLoad();
    double end = 1 - profile.stops().get(2).fullLoad();
    double panel = 1 - profile.stops().get(0).fullLoad();
    assertThat((end - panel) / (junction - panel)).isCloseTo(3, within(0.01));
  }

  /** The picture and the table of voltages tell the same. */
  @Test
  void itAgreesWithTheWorstCases() throws SourceReader.Unreadable {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(Path.of("examples/alder-court/house.wattle"));
    var cases = plan.figures().worst().voltages();
    int compared = 0;
    for (Branch branch : plan.house().branches().values()) {
      VoltageProfile profile = profile(plan, branch.name()).orElseThrow();
      for (VoltageProfile.Stop stop : profile.stops()) {
        assertThat(stop.fullLoad()).isFinite();
        var worst = cases.stream()
            .filter(c -> c.branch().equals(branch.name()) && (c.outlet().equals(stop.name()) || c.outlet().startsWith(stop.name() + ".")))
            .mapToDouble(c -> c.fall().orElseThrow().si())
            .max();
        if (worst.isPresent()) {
          compared++;
          assertThat(1 - stop.fullLoad()).as(stop.name()).isCloseTo(worst.getAsDouble(), within(1e-9));
        }
      }
    }
    assertThat(compared).isGreaterThan(60);
  }

  /** 15 A through 2 × 500 m of 14 AWG copper, 10.1 Ω, would take 151 V of 120: nothing is left, in table and picture. */
  @Test
  void whereTheRatingCannotFlowNothingIsLeft() {
    Compilation plan = compile("{ P --500 m-- r.one }");
    WorstCases.VoltageCase worst = plan.figures().worst().voltages().get(0);
    assertThat(worst.atFullLoad().orElseThrow().si()).isZero();
    assertThat(worst.fall().orElseThrow().si()).isEqualTo(1);
    assertThat(worst.atFullLoad().orElseThrow().remark()).contains("not even a short circuit");
    assertThat(profile(plan, "far").orElseThrow().stops().get(1).fullLoad()).isZero();
  }

  @Test
  void whatHasNoRatingHasNone() {
    Compilation plan = compile("{ P --20 m-- r.one }");
    Compilation later = new Compiler(SourceReader.FROM_DISK)
        .compile(new Source("house.wattle", plan.source().text().replace("1 15 A far", "1 later far")), Path.of("house.wattle"));
    assertThat(profile(later, "far")).isEmpty();
  }
}
