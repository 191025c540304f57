package wattle.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compilation;
import wattle.derivation.Derivation;
import wattle.trials.Trials;

/** Bonds at subpanels are paths of a fault current in the table of faults as in trials, and what the street never feeds is in neither. */
class BondedPanelsTest {
  /** Conductors of 75 °C in PVC: the least current of the table is at the 75 °C that trials take. */
  private static final String FARM = """
      plan "Invented farm" use code us-2023
      service main 120/240 V 200 A { source available 20 kA ratio 1   earth rods by 6 Cu 25 ohm }
      panel P from main { bus 225 A slots 30 bonded
        main breaker 200 A 22 kA
        1+3 60 A two-pole S
        2+4 30 A two-pole back-fed interlocked gen
        5+7 60 A two-pole O
        9+11 60 A two-pole M
        13+15 60 A two-pole interlocked G
      }
      panel S from P/1 by 100 ft of 1 in PVC with 3 x 6 Cu THWN, 10 Cu ground { bus 100 A slots 12 bonded
        1 20 A far
      }
      panel O from P/5 by 100 ft of 1 in PVC with 3 x 6 Cu THWN existing is outbuilding { bus 100 A slots 12 bonded
        earth rods by 6 Cu 25 ohm
        1 20 A shed
      }
      panel M from P/9 by 60 ft of 1 in PVC with 3 x 6 Cu THWN, 10 Cu ground { bus 100 A slots 12
        1+3 60 A two-pole B
      }
      panel B from M/1 by 40 ft of 1 in PVC with 3 x 6 Cu THWN, 10 Cu ground { bus 100 A slots 12 bonded
        1 20 A last
      }
      panel G from P/13 by 40 ft of 1 in PVC with 3 x 6 Cu THWN, 10 Cu ground { bus 100 A slots 12
        1 20 A well
      }
      branch far by 1/2 in PVC with 2 x 12 Cu THWN, 12 Cu ground { S --40 ft-- a.one }
      branch shed by 1/2 in PVC with 2 x 12 Cu THWN, 12 Cu ground { O --40 ft-- b.one }
      branch last by 1/2 in PVC with 2 x 12 Cu THWN, 12 Cu ground { B --40 ft-- c.one }
      branch well by 1/2 in PVC with 2 x 12 Cu THWN, 12 Cu ground { G --40 ft-- d.one }
      branch gen by 10/3 NM-B { P --8 m-- y.g }
      room a { one: receptacle }
      room b is workshop { one: receptacle }
      room c { one: receptacle }
      room d { one: receptacle }
      room y is outdoors { g: generator inlet 6 kW reactance 12 % }
      """;

  private static FaultPoint point(Compilation plan, String place) {
    Faults faults = Plans.faults(plan);
    return plan.house().panels().containsKey(place)
        ? faults.panel(place)
        : plan.house().branches().values().stream().flatMap(b -> faults.branch(b.name()).stream())
            .filter(p -> p.place().equals(place)).findFirst().orElseThrow();
  }

  private static double inTrial(String events) {
    Compilation plan = Plans.compile(FARM + "trial t { " + events + " }\n");
    return new Trials(plan.house(), plan.library()).run(plan.house().trials().get("t")).value().faults().get(0).amps().si();
  }

  /**
   * NFPA 70 chapter 9 table 8 and 9, Ω for 1000 ft at 75 °C: 6 AWG 0.491 and 0.051, 10 AWG stranded 1.24 and 0.050. The neutral beside
   * the ground is (0.491 + j0.051) ∥ (1.24 + j0.050) = 0.352 + j0.029; with the hot and 0.006 Ω at 45° of the source 100 ft come to
   * 0.0885 + j0.0122 Ω, and 120 V over that to 1343 A. On the neutral alone 0.1024 + j0.0144: 1160 A.
   */
  @Test
  void neutralAndGroundLieSideBySideBetweenTwoBonds() {
    Compilation plan = Plans.compile(FARM);
    Fault ground = point(plan, "S").fault(FaultKind.LINE_GROUND).orElseThrow();
    assertThat(ground.leastAmperes()).isCloseTo(1343, withinPercentage(2));
    assertThat(point(plan, "S").fault(FaultKind.LINE_NEUTRAL).orElseThrow().leastAmperes()).isEqualTo(ground.leastAmperes());
    assertThat(point(plan, "O").fault(FaultKind.LINE_GROUND).orElseThrow().leastAmperes()).isCloseTo(1160, withinPercentage(2));
  }

  @ParameterizedTest
  @CsvSource({"S", "O", "B", "a.one", "b.one", "c.one"})
  void theTableAndATrialAgree(String place) {
    Compilation plan = Plans.compile(FARM);
    for (FaultKind kind : new FaultKind[]{FaultKind.LINE_NEUTRAL, FaultKind.LINE_GROUND}) {
      String to = kind == FaultKind.LINE_GROUND ? "ground" : "neutral";
      double trial = inTrial("fault hot to " + to + " at " + place);
      assertThat(point(plan, place).fault(kind).orElseThrow().leastAmperes()).as(to).isCloseTo(trial, withinPercentage(0.6));
    }
  }

  /**
   * Of the current the ground carries |0.491 + j0.051| / |1.731 + j0.101| = 0.285, so that it stands what would be 12.3 times as much;
   * 6 AWG has 2.53 times the area of 10 AWG, and 6.4 times the let-through: the hot, with all of the current, stands less. Of two of
   * 10 AWG each has half of it, and stands four times as much.
   */
  @Test
  void eachConductorIsHeldAgainstItsShare() {
    Compilation plan = Plans.compile(FARM);
    Withstand weakest = point(plan, "S").fault(FaultKind.LINE_GROUND).orElseThrow().weakest().orElseThrow();
    assertThat(weakest.wire().size()).hasToString("6 AWG");
    assertThat(weakest.share()).isEqualTo(1);
    Withstand thin = point(
        Plans.compile(FARM.replace("100 ft of 1 in PVC with 3 x 6 Cu THWN, 10 Cu",
            "100 ft of 1 in PVC with 2 x 6 Cu THWN hot, 10 Cu THWN neutral, 10 Cu")),
        "S").fault(FaultKind.LINE_GROUND).orElseThrow().weakest().orElseThrow();
    assertThat(thin.wire().size()).hasToString("10 AWG");
    assertThat(thin.share()).isCloseTo(0.5, within(1e-9));
    assertThat(thin.ampereSquaredSeconds()).isCloseTo(4 * thin.letThrough().si(), withinPercentage(0.001));
  }

  @Test
  void theWayOfBothUnfolds() {
    Derivation least = point(Plans.compile(FARM), "c.one").fault(FaultKind.LINE_GROUND).orElseThrow().least();
    assertThat(least.si()).isGreaterThan(0);
    assertThat(names(least)).anyMatch(n -> n.startsWith("resistance back on the ground")).contains("length of feeder of M");
  }

  private static List<String> names(Derivation of) {
    List<String> all = new ArrayList<>(List.of(of.name()));
    of.inputs().forEach(i -> all.addAll(names(i)));
    return all;
  }

  @Test
  void whatAnInterlockKeepsOffTheStreetHasNoFaultsFromThere() {
    Compilation plan = Plans.compile(FARM);
    assertThat(point(plan, "y.g").faults()).isEmpty();
    assertThat(point(plan, "G").faults()).isEmpty();
    assertThat(point(plan, "d.one").faults()).isEmpty();
    assertThat(inTrial("fault hot to ground at y.g")).isCloseTo(0, within(0.1));
    assertThat(inTrial("fault hot to neutral at d.one")).isCloseTo(0, within(0.1));
  }

  @Test
  void withoutAnyBondAFaultToGroundHasNoWayBack() {
    Compilation plan = Plans.compile(FARM.replace(" bonded", ""));
    assertThat(point(plan, "P").fault(FaultKind.LINE_GROUND)).isEmpty();
    assertThat(point(plan, "a.one").fault(FaultKind.LINE_GROUND)).isEmpty();
    assertThat(point(plan, "P").fault(FaultKind.LINE_NEUTRAL)).isPresent();
  }
}
