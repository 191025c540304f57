package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;

/**
 * Conductors against what they carry under CSA C22.1: branches, feeders and services, heating, motors and compressors. Ampacities by hand
 * from Tables 2 and 4 as celtex.ca, copper and aluminum wire ampacity charts.
 */
class CanadianConductorsTest {
  private static final List<String> OWN = List.of("overcurrent-above-conductor", "branch-conductor-below-load",
      "feeder-overcurrent-above-conductor", "feeder-conductor-below-calculated", "service-conductor-below-rating",
      "service-conductor-below-calculated", "overhead-service-thin", "continuous-above-eighty");

  private static List<Finding> findings(String plan) {
    return new Compiler(SourceReader.FROM_DISK)
        .compile(new Source("t.wattle", "plan \"T\"\nuse code ca-2021\n" + plan), Path.of("t.wattle")).facts().stream()
        .flatMap(f -> f.each().stream()).filter(f -> OWN.contains(f.rule())).toList();
  }

  private static List<String> headlines(String plan) {
    return findings(plan).stream().map(Finding::headline).toList();
  }

  private static String branch(String supply, String slot, String cable, String device) {
    return "service main " + supply + " 200 A { source available 10 kA   run 20 m of 4/0 Al triplex   earth rods by 6 Cu }\n"
        + "panel P from main { bus 200 A   slots 42   bonded\n main breaker 200 A 22 kA\n " + slot + " x\n}\nbranch x by " + cable
        + " { P --4 m-- shop.x }\nroom shop is workshop { x: " + device + " }\n";
  }

  /**
   * 8-104 1), 5) and 6), as ebmag.com, Code File October 2023: a continuous load takes 80 % of the lesser of breaker and ampacity: 40 A on
   * 40 A, 48 A on the 55 A of 6 AWG. 62-114 7) and 8), as diychatroom.com, 14-2 gauge wire for baseboard heaters: 3600 W on 14 AWG and 20
   * A. 28-106 and 28-706, as dakotaprep.com, cold motors: 125 %. 28-708, as electriciantalk.com, a/c breaker sizing: an air conditioner
   * of 14.5 A at least on 12 AWG and 30 A is lawful. Table 29, as electriciantalk.com, rules concerning motors: 250 %.
   */
  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "120/240 V | 1+3 40 A two-pole | 8/2 NMD90  | vehicle charger 32 A |",
      "120/240 V | 1+3 40 A two-pole | 6/2 NMD90  | vehicle charger 40 A | circuit 'x' is overloaded: 40 A continuous on 40 A",
      "120/208 V | 1+3 40 A two-pole | 6/2 NMD90  | vehicle charger 40 A | circuit 'x' is overloaded: 40 A continuous on 40 A",
      "120/240 V | 1+3 60 A two-pole | 6/2 NMD90  | vehicle charger 48 A | circuit 'x' is too small for its load: 6 AWG copper is good for"
          + " 55 A, needs 60 A",
      "120/240 V | 1+3 60 A two-pole | 4/2 NMD90  | vehicle charger 48 A |",
      "120/240 V | 1+3 20 A two-pole | 14/2 NMD90 | baseboard heater 3.6 kW |",
      "120/208 V | 1+3 20 A two-pole | 14/2 NMD90 | baseboard heater 3 kW |",
      "120/240 V | 1+3 20 A two-pole | 14/2 NMD90 | baseboard heater 3.8 kW | circuit 'x' is too small for its load: 14 AWG copper is good"
          + " for 15 A, needs 15.8 A",
      "120/240 V | 1+3 25 A two-pole | 14/2 NMD90 | baseboard heater 3 kW | circuit 'x' is too small for its breaker: 14 AWG"
          + " copper on 25 A",
      "120/240 V | 1+3 25 A two-pole | 12/2 NMD90 | baseboard heater 4.8 kW |",
      "120/240 V | 1+3 40 A two-pole | 10/2 NMD90 | baseboard heater 7.2 kW |",
      "120/240 V | 1+3 15 A two-pole | 14/2 NMD90 | baseboard heater 3.6 kW | circuit 'x' is overloaded: 15 A continuous on 15 A",
      "120/240 V | 1+3 20 A two-pole | 12/2 NMD90 | water heater 3.8 kW |",
      "120/240 V | 1+3 20 A two-pole | 12/2 NMD90 | water heater 4.5 kW | circuit 'x' is overloaded: 18.8 A continuous on 20 A",
      "120/240 V | 1+3 20 A two-pole | 14/2 NMD90 | water heater 3 kW | circuit 'x' is too small for its breaker: 14 AWG copper on 20 A",
      "120/240 V | 1+3 30 A two-pole | 12/2 NMD90 | air conditioner 11 A minimum-circuit 14.5 A maximum-breaker 30 A |",
      "120/240 V | 1+3 30 A two-pole | 12/2 NMD90 | air conditioner 11 A |",
      "120/240 V | 1+3 50 A two-pole | 12/2 NMD90 | air conditioner 11 A | circuit 'x' is too small for its breaker: 12 AWG copper on 50 A",
      "120/240 V | 1+3 30 A two-pole | 14/2 NMD90 | air conditioner 14 A | circuit 'x' is too small for its load: 14 AWG copper is good for"
          + " 15 A, needs 17.5 A",
      "120/240 V | 1+3 30 A two-pole | 14/2 NMD90 | motor 12 A 240 V |",
      "120/240 V | 1+3 35 A two-pole | 14/2 NMD90 | motor 12 A 240 V | circuit 'x' is too small for its breaker: 14 AWG copper on 35 A",
      "120/240 V | 1+3 40 A two-pole | 8/3 NMD90  | range 12 kW |",
      "120/208 V three-phase | 1+3+5 20 A three-pole | 14/3 NMD90 | three-phase heater 5 kW |",
      "120/208 V three-phase | 1+3+5 20 A three-pole | 14/3 NMD90 | three-phase heater 5.7 kW | circuit 'x' is too small for its load:"
          + " 14 AWG copper is good for 15 A, needs 15.8 A"})
  void branches(String supply, String slot, String cable, String device, String finding) {
    assertThat(headlines(branch(supply, slot, cable, device))).as(device)
        .containsExactlyElementsOf(finding == null ? List.of() : List.of(finding));
    String old = branch(supply, slot, cable, device).replace(" { P --4", " existing { P --4");
    assertThat(headlines(old)).as("existing " + device).containsExactlyElementsOf(finding == null ? List.of() : List.of(finding));
  }

  /** 8-104 1): the rating is no more than the ampacity after correction. 6 AWG at 60 °C: 75 A × 0.71 = 53.3 A; 44 A × 1.25 = 55 A. */
  @Test
  void continuousLoadsAreHeldToTheAmpacityAfterCorrection() {
    String hot = branch("120/240 V", "1+3 60 A two-pole", "27 mm EMT with 2 x 6 Cu RW90, 10 Cu RW90 ground", "vehicle charger 44 A")
        .replace("--4 m--", "--4 m in attic 60 degC--");
    assertThat(headlines(hot)).containsExactly("circuit 'x' is too small for its load: 6 AWG copper is good for 53.3 A, needs 55 A");
    assertThat(headlines(hot.replace("44 A", "42 A"))).isEmpty();
  }

  private static String feeder(String supply, String cable, String charger) {
    return "dwelling { floor-area 140 m2 }\nservice main " + supply
        + " 200 A { source available 10 kA   run 20 m of 4/0 Al triplex   earth rods by 6 Cu }\npanel P from main { bus 200 A   slots 40"
        + "   bonded\n main breaker 200 A 22 kA\n 1+3 60 A two-pole G\n 2 15 A hall\n}\npanel G from P/1 by 20 m of " + cable
        + " { bus 100 A slots 8\n main breaker 60 A 10 kA\n 1+3 20 A two-pole y\n 2+4 40 A two-pole z\n}\n"
        + "branch hall by 14/2 NMD90 { P --4 m-- hall.r }\nroom hall { r: receptacle }\nbranch y by 12/2 NMD90 { G --4 m-- shop.y }\n"
        + "branch z by 8/2 NMD90 { G --4 m-- shop.z }\nroom shop is workshop { y: baseboard heater 16 A   z: " + charger + " }\n";
  }

  /** A feeder to a part of a dwelling is not let off by 8-200 3): 32 A × 1.25 + 16 A = 56 A, which 6 AWG has not at 60 °C. */
  @Test
  void feedersCountWhatLasts() {
    for (String supply : List.of("120/240 V", "120/208 V")) {
      assertThat(headlines(feeder(supply, "6/3 NMD90", "vehicle charger 32 A")))
          .containsExactly("feeder of panel G is too small for its load: 6 AWG copper is good for 55 A, needs 56 A");
      assertThat(headlines(feeder(supply, "4/3 NMD90", "vehicle charger 32 A"))).isEmpty();
      assertThat(headlines(feeder(supply, "6/3 NMD90", "vehicle charger 24 A"))).isEmpty();
    }
  }

  private static String service(String rating, String run, String load) {
    return "dwelling { floor-area 140 m2 }\nservice main 120/240 V " + rating + " { source available 10 kA   run 20 m of " + run
        + "   earth rods by 6 Cu }\npanel P from main { bus 200 A   slots 40   bonded\n main breaker " + rating
        + " 22 kA\n 1+3 100 A two-pole h\n}\nbranch h by 27 mm EMT with 2 x 1 Cu RW90, 8 Cu RW90 ground { P --4 m-- store.h }\n"
        + "room store is utility { h: " + load + " }\n";
  }

  /**
   * technicalsafetybc.ca, IB-EL 2016-07, examples 1 and 2: at 75 °C 100 A asks for 1 AWG aluminum, and 180 A, the next rating 200 A, for
   * 3/0 copper. Table 39 (from memory) lets 2/0 copper carry 105 % of its 175 A, 183.8 A, in a service of 200 A.
   */
  @Test
  void services() {
    String gas = "light 100 W";
    assertThat(headlines(service("100 A", "53 mm PVC with 3 x 1 Al RW90", gas))).isEmpty();
    assertThat(headlines(service("100 A", "53 mm PVC with 3 x 2 Al RW90", gas)))
        .containsExactly("service conductors are too small for the load: 53 mm PVC with 3 x 2 Al RW90 is good for 94.5 A, needs 100 A");
    assertThat(headlines(service("200 A", "53 mm PVC with 3 x 3/0 Cu RW90", gas))).isEmpty();
    assertThat(headlines(service("200 A", "53 mm PVC with 3 x 2/0 Cu RW90", gas))).isEmpty();
    assertThat(headlines(service("200 A", "53 mm PVC with 3 x 1/0 Cu RW90", gas)))
        .containsExactly("service conductors are too small: 53 mm PVC with 3 x 1/0 Cu RW90 for 200 A");
    assertThat(headlines(service("200 A", "53 mm PVC with 3 x 6 Cu RW90", gas)))
        .containsExactly("service conductors are too small: 53 mm PVC with 3 x 6 Cu RW90 for 200 A");
    assertThat(headlines(service("200 A", "6 Al triplex", gas)))
        .containsExactly("overhead service conductors are too small: 6 Al triplex for 200 A");
    assertThat(headlines(service("200 A", "4/0 Al triplex", gas))).isEmpty();
  }
}
