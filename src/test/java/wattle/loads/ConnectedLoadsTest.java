package wattle.loads;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.LoadClass;
import wattle.model.SupplySystem;
import wattle.read.SourceReader;

class ConnectedLoadsTest {
  private static final SupplySystem SPLIT = new SupplySystem(SupplySystem.Kind.SPLIT_PHASE, 120, 240);
  private static final SupplySystem WYE = new SupplySystem(SupplySystem.Kind.THREE_PHASE_WYE, 120, 208);

  private static LegLoads legs(double a, double b) {
    return LegLoads.toNeutral(Map.of(Leg.A, a, Leg.B, b));
  }

  /** Common practice: equal loads on the two halves cancel in the neutral, one alone returns all of its current. */
  @Test
  void theNeutralCarriesTheDifferenceOfTheLegs() {
    assertThat(legs(1200, 1200).neutralAmperes(SPLIT)).isCloseTo(0, within(1e-9));
    assertThat(legs(1200, 0).neutralAmperes(SPLIT)).isCloseTo(10, within(1e-9));
    assertThat(legs(2400, 0).neutralAmperes(SPLIT)).as("both on one leg").isCloseTo(20, within(1e-9));
  }

  /** Common practice: in a balanced wye the three currents cancel; two equal ones leave as much as one of them. */
  @Test
  void theNeutralOfAWyeCarriesThePhasorSum() {
    LegLoads three = LegLoads.toNeutral(Map.of(Leg.A, 1200.0, Leg.B, 1200.0, Leg.C, 1200.0));
    assertThat(three.neutralAmperes(WYE)).isCloseTo(0, within(1e-9));
    assertThat(legs(1200, 1200).neutralAmperes(WYE)).isCloseTo(10, within(1e-9));
  }

  @Property(tries = 200)
  void imbalanceIsNoneForEqualLegsAndOneForASingleOne(@ForAll @DoubleRange(min = 1, max = 1e6) double load) {
    assertThat(legs(load, load).imbalance(SPLIT)).isZero();
    assertThat(legs(load, 0).imbalance(SPLIT)).isEqualTo(1);
    assertThat(legs(load, 0).difference(SPLIT)).isEqualTo(load);
  }

  /** By hand: 10 A at 120 V behind one fuse and 1,500 W behind the other, whatever leg both come from. */
  @Test
  void ofTwoFusesOfOneLegEachCarriesItsOwn() throws Exception {
    var compilation = new Compiler(SourceReader.FROM_DISK).compile(Path.of("src/test/resources/plans/lockout/two-fuses-of-one-leg.wattle"));
    House house = compilation.house();
    ConnectedLoads loads = ConnectedLoads.of(house);
    var breakers = house.panels().get("F").breakers();
    assertThat(loads.behind(house, breakers.get(2)).total()).isCloseTo(1200, within(0.5));
    assertThat(loads.behind(house, breakers.get(3)).total()).isCloseTo(1500, within(0.5));
    assertThat(loads.panel("F").on(Leg.A)).isCloseTo(2700, within(0.5));
    var figures = new LoadFigures(house, loads);
    var busiest = figures.busiest(house.branches().get("wet"), SPLIT).orElseThrow();
    assertThat(busiest.id().toString()).isEqualTo("F/4");
    assertThat(figures.behind(busiest).heaviestAmperes(SPLIT)).isCloseTo(12.5, within(0.01));
    assertThat(figures.behind(breakers.get(3), Leg.A).orElseThrow().si()).isCloseTo(1500, within(0.5));
  }

  private static Stream<Path> examples() {
    return Stream.of("alder-court", "cottage").map(n -> Path.of("examples", n, "house.wattle"));
  }

  /** Nothing is lost on the way: what the devices draw is what the panels at the service carry. */
  @Test
  void panelsAtTheServiceCarryAllThatIsConnected() throws SourceReader.Unreadable {
    for (Path plan : examples().toList()) {
      House house = new Compiler(SourceReader.FROM_DISK).compile(plan).house();
      double devices = house.devices().values().stream()
          .flatMap(d -> d.loads().stream())
          .filter(l -> l.loadClass() != LoadClass.SOURCE)
          .mapToDouble(l -> l.voltAmperes())
          .sum();
      ConnectedLoads loads = ConnectedLoads.of(house);
      double panels = house.panels().values().stream()
          .filter(p -> p.supply() instanceof wattle.model.PanelSupply.FromService)
          .mapToDouble(p -> loads.panel(p.name()).total())
          .sum();
      assertThat(devices).as(plan.toString()).isGreaterThan(1000);
      assertThat(panels).as(plan.toString()).isCloseTo(devices, within(1e-6));
    }
  }

  @Test
  void loadsOnASharedNeutralStandOnTheirOwnLegs() {
    String plan = """
        plan "Shared"
        use code us-2023
        service main 120/240 V 100 A { source available 10 kA }
        panel P from main {
          bus 100 A   slots 8   bonded
          main breaker 100 A 10 kA
          1+3 20 A two-pole counter
        }
        room kitchen { c1: receptacle 1500 W on A
                       c2: receptacle 900 W on B }
        branch counter by 12/3 NM-B { P --5 m-- kitchen.c1 --1 m-- kitchen.c2 }
        """;
    House house = new Compiler(SourceReader.FROM_DISK).compile(new Source("shared.wattle", plan), Path.of("shared.wattle")).house();
    LegLoads loads = ConnectedLoads.of(house).branch("counter");
    assertThat(List.of(loads.on(Leg.A), loads.on(Leg.B))).containsExactly(1500.0, 900.0);
    assertThat(loads.neutralAmperes(SPLIT)).isCloseTo(5, within(1e-9));
  }
}
