package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import wattle.finding.Finding;
import wattle.read.SourceReader;

/**
 * Houses and shops as an inspector meets them, each figure of their conductors, breakers, grounds and boxes worked out by hand from the
 * articles that are named; what is silent here is lawful by the same hand.
 */
class HousesByHandTest {
  private static final Set<String> OWN = Set.of("breaker-above-conductor", "conductor-below-load", "feeder-breaker-above-conductor",
      "feeder-conductor-below-load", "service-conductor-thin", "service-above-conductors", "service-conductors-below-load", "ground-thin",
      "ground-not-enlarged", "feeder-ground-thin", "feeder-ground-not-enlarged", "feeder-ground-missing", "electrode-conductor-thin",
      "box-overfilled", "raceway-overfilled", "feeder-raceway-overfilled", "service-raceway-overfilled", "burial-shallow", "feeder-shallow",
      "nameplate-breaker-large", "nameplate-circuit-small", "voltage-drop-branch", "voltage-drop-feeder", "motor-start-dip",
      "continuous-overload", "space-heat-circuit-small", "feeder-below-load", "service-below-load", "overcurrent-above-conductor",
      "branch-conductor-below-load", "feeder-overcurrent-above-conductor", "feeder-conductor-below-calculated",
      "service-conductor-below-rating", "service-conductor-below-calculated", "continuous-above-eighty", "bond-thin", "feeder-bond-thin");

  private static List<String> headlines(String plan) throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).compile(Path.of("src/test/resources/plans/byhand/" + plan + ".wattle")).facts().stream()
        .flatMap(f -> f.each().stream()).filter(f -> OWN.contains(f.rule())).map(Finding::headline).toList();
  }

  /**
   * A 100 A subpanel in 2-2-2-4 aluminum is not the whole dwelling: 75 A at 60 °C, the next rating 80 A (110.14(C), 240.4(B)). The heat
   * pumps go by 22 A and 36 A of their nameplates on 10 and 8 AWG (440.4(B)); the compressor of 2 hp takes 12 A, 15 A with its quarter
   * (430.22), on 60 m of 2 AWG aluminum, whose ground of 4 AWG is 8 AWG enlarged (250.122(B)); 0.6 m is the depth of table 300.5 in
   * metric. The barn has neither ground nor bond, the worst there is (250.32(B)(1)).
   */
  @Test
  void farCompressor() throws SourceReader.Unreadable {
    assertThat(headlines("far-compressor")).containsExactlyInAnyOrder(
        "feeder of panel S is too small for its breaker: 2-2-2-4 Al SER on 100 A",
        "panel B has no ground and no bond: no return path for fault current");
  }

  /**
   * Two sets of 4/0 aluminum are 423 kcmil: 2 AWG copper to the water pipe, 6 and 4 AWG to rods and footing (250.66). 48 A × 1.25 is 60 A,
   * 6/2 has 55 A; 3 AWG at 60 °C has 85 A, so 90 A; the well pump's 10 A over 90 m of 12 AWG lose 11.4 V of 240 V. Lawful by hand: heat
   * of 10 kW on 6/2 and 60 A (52.1 A), 5 kW on 10/2 and 30 A (26 A), 30 A of air conditioning on 8/2 and 50 A, a range of 16 kW as 9.6 kW
   * on 6/3.
   */
  @Test
  void largeHouse() throws SourceReader.Unreadable {
    assertThat(headlines("large-house")).containsExactlyInAnyOrder(
        "grounding electrode conductor to the water-pipe is too small: 4 AWG, needs 2 AWG",
        "feeder of panel G is too small for its breaker: 2 in PVC with 3 x 3 Cu THWN-2, 8 Cu THWN-2 ground on 100 A",
        "circuit 'ev' is too small for its load: 6 AWG copper is good for 55 A, needs 60 A",
        "voltage drop of circuit 'pump' is 4.7 %");
  }

  /**
   * 208Y/120 V: 10 hp takes 30.8 A (table 430.250), 38.5 A on 8 AWG, its breaker of 60 A within 250 %; a welder of 40 A and 25 A
   * effective on 10 AWG and 50 A (630.11, 630.12); 3/4 hp at 120 V takes 13.8 A, 17.3 A, and loses 4.6 %; 20 A of compressor needs 25 A;
   * 9 kW of three-phase heat are 25 A, figured at 31.2 A (424.4(B)). The feeder of 1/0 aluminum has 100 A at 60 °C.
   */
  @Test
  void threePhaseShop() throws SourceReader.Unreadable {
    assertThat(headlines("three-phase-shop")).containsExactlyInAnyOrder(
        "circuit 'ac' is too small for its load: 12 AWG copper is good for 20 A, needs 25 A",
        "circuit 'pump' is too small for its load: 14 AWG copper is good for 15 A, needs 17.3 A",
        "voltage drop of circuit 'pump' is 4.6 %", "wire of heat is too small for its heat: needs 31.2 A, good for 30 A");
  }

  /**
   * 314.16(B): an FS box of 13.5 in³ with two 12/2 and a receptacle needs 7 × 2.25 = 15.75 in³, one with a single cable 11.25 in³; a square
   * box of 21 in³ with two 14/2, a 14/3 and two switches 12 × 2 = 24 in³; a device box of 14 in³ with two 10 AWG, their ground and a
   * receptacle 5 × 2.5 = 12.5 in³.
   */
  @Test
  void boxes() throws SourceReader.Unreadable {
    assertThat(headlines("boxes")).containsExactlyInAnyOrder(
        "box shop.fs1 is overfilled: needs 15.75 in³, has 13.5 in³", "box shop.sq is overfilled: needs 24 in³, has 21 in³");
  }

  /**
   * CSA C22.1: 12.5 A of stored hot water on 15 A and 40 A of charging on 40 A are above 80 % (8-104); 9 A of compressor allow 35.1 A
   * (28-708); 32 A × 1.25 + 16 A are 56 A on 55 A; 3.8 kW of heat are 15.8 A on the 15 A of 14 AWG (62-114 7)); 14 A × 1.25 are 17.5 A
   * (28-706).
   */
  @Test
  void canadianShop() throws SourceReader.Unreadable {
    assertThat(headlines("canadian-shop")).containsExactlyInAnyOrder(
        "circuit 'w' is overloaded: 12.5 A continuous on 15 A", "circuit 'c' is overloaded: 40 A continuous on 40 A",
        "circuit 'ac2' is too small for its breaker: 14 AWG copper on 40 A",
        "feeder of panel G is too small for its load: 6 AWG copper is good for 55 A, needs 56 A",
        "circuit 'heat' is too small for its load: 14 AWG copper is good for 15 A, needs 15.8 A",
        "circuit 'ac' is too small for its load: 14 AWG copper is good for 15 A, needs 17.5 A");
  }
}
