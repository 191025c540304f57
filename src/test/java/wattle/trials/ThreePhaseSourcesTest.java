package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compiler;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** Generators and solar on three phases: in trials and in the rules for them. */
class ThreePhaseSourcesTest {
  private static final String SHOP = """
      plan "Invented shop" use code us-2023
      service main 120/208 V 200 A three-phase {
        source available 10 kA ratio 1
        run 20 m of 4/0-4/0-4/0-4/0 Al SER
        earth rods by 6 Cu 25 ohm
      }
      panel P from main { bus 400 A   slots 42   bonded
        main breaker 200 A 22 kA
        37+39+41  150 A  three-pole  E
      }
      panel E from P/37 by 5 m of 1/0-1/0-1/0-1/0-6 Cu SER { bus 400 A   slots 42
        main transfer 200 A TRAITS
        1+3+5     100 A  three-pole  heat
        2         20 A  ground-fault  bench
        37+39+41  125 A  three-pole back-fed  pv
        32+34+36  BREAKER A  three-pole back-fed interlocked  g
      }
      branch heat by 1-1/2 in PVC with 3 x 3 Cu THWN-2 hot, 8 Cu ground { E --5 m-- shop.heat }
      branch bench by 12/2 NM-B { E --5 m-- shop.bench }
      branch pv by 1-1/2 in PVC with 3 x 1 Cu THWN-2 hot, 6 Cu ground { E --5 m-- shop.pv }
      branch g by 2 in PVC with 4 x SIZE Cu THWN-2, 6 Cu ground { E --5 m-- yard.g }
      room shop is workshop area 60 m2 { heat: three-phase heater 24 kW   bench: receptacle   pv: three-phase solar inverter 36 kW }
      room yard is outdoors { g: three-phase standby generator RATING reactance 12 % }
      """;

  private static String shop(String rating, String breaker, String size, String traits) {
    return SHOP.replace("RATING", rating).replace("BREAKER", breaker).replace("SIZE", size).replace("TRAITS", traits);
  }

  private static TrialResult run(String events) {
    Checked<TrialResult> run = Plans.runIn(shop("36 kVA", "125", "1", ""), events);
    assertThat(run.findings()).isEmpty();
    return run.value();
  }

  private static SourceReading source(TrialResult result, String name) {
    return result.sources().stream().filter(s -> s.name().equals(name)).findFirst().orElseThrow();
  }

  /** 24 kW over √3 × 208 V: 66.6 A on each leg; the generator of 36 kVA is rated for 99.9 A. Bench 12 A more on its leg: 78.6 A. */
  @Test
  void aGeneratorCarriesTheShop() {
    TrialResult result = run("lose main\n transfer E to yard.g\n yard.g on\n shop.heat on\n shop.bench draws 1440 W");
    SourceReading generator = source(result, "yard.g");
    assertThat(generator.volts().si()).isCloseTo(208, within(0.5));
    assertThat(generator.rating().orElseThrow().si()).isCloseTo(99.93, within(0.01));
    assertThat(generator.amps().si()).isCloseTo(66.6 + 12, within(0.6));
    assertThat(Plans.volts(result, "shop.bench")).isCloseTo(119, within(1.5));
  }

  /** Solar follows on all three legs: 30 kW over √3 × 208 V are 83.3 A on each, less as the voltage rises, and flow to the street. */
  @Test
  void solarFollowsOnThreeLegs() {
    TrialResult result = run("shop.pv gives 30 kW");
    SourceReading sun = source(result, "shop.pv");
    assertThat(sun.amps().si()).isCloseTo(30000 / Math.sqrt(3) / sun.volts().si(), within(0.1));
    assertThat(sun.watts().si()).isCloseTo(30000, within(1.0));
    assertThat(source(result, "main").watts().si()).isBetween(-30000.0, -29400.0);
    assertThat(sun.rating().orElseThrow().si()).isCloseTo(99.93, within(0.01));
  }

  /** The per-unit method of IEEE 141: I = S / (√3 × U × x″d) = 36 kVA / (√3 × 208 V × 0.12) = 832.7 A; √3 / 2 of it between two legs. */
  @Test
  void aGeneratorIntoAFault() {
    TrialResult result = run("lose main\n transfer E to yard.g\n yard.g on\n fault hot to neutral at yard.g");
    assertThat(result.faults().get(0).amps().si()).isCloseTo(832.7, within(2.0));
    TrialResult lines = run("lose main\n transfer E to yard.g\n yard.g on\n fault hot to other-hot at yard.g");
    assertThat(lines.faults().get(0).amps().si()).isCloseTo(832.7 * Math.sqrt(3) / 2, within(2.0));
  }

  @Test
  void pushedAboveItsRating() {
    TrialResult result = Plans.runIn(shop("20 kVA", "125", "1", ""), "lose main\n transfer E to yard.g\n yard.g on\n shop.heat on").value();
    assertThat(source(result, "yard.g").share().orElseThrow().si()).isCloseTo(66.6 / 55.5, within(0.01));
    assertThat(result.dangers()).anyMatch(d -> d.toString().contains("yard.g"));
  }

  private static List<String> found(String rating, String breaker, String size, String traits) {
    return new Compiler(SourceReader.FROM_DISK)
        .compile(new Source("shop.wattle", shop(rating, breaker, size, traits)), java.nio.file.Path.of("shop.wattle")).findings().stream()
        .map(Finding::rule)
        .filter(r -> r.startsWith("standby") || r.startsWith("source") || r.startsWith("generator") || r.startsWith("load-"))
        .distinct().toList();
  }

  /**
   * NFPA 70 702.4(A)(2): 24 kW of heat and 180 VA are 66.7 A on a leg; by 445.13(A) conductors of 115 % of 99.9 A are 114.9 A: 2 AWG (115 A
   * at 75 °C) has them and 3 AWG (100 A) has not. By 705.28 the inverter of 99.9 A needs 125 A.
   */
  @ParameterizedTest
  @CsvSource({"36 kVA, 125, 1, automatic, ''", "20 kVA, 70, 1, automatic, standby-below-load", "20 kVA, 70, 1, automatic load-managed, ''",
      "20 kVA, 70, 1, '', standby-chosen-by-hand", "36 kVA, 125, 3, automatic, standby-conductors-thin"})
  void theRulesForIt(String rating, String breaker, String size, String traits, String expected) {
    assertThat(found(rating, breaker, size, traits)).containsExactly(expected.isEmpty() ? new String[0] : new String[]{expected});
  }

  /** 705.28: 36 kW over √3 × 208 V are 99.9 A on each hot, and 124.9 A with a quarter more: 125 A carries it, 110 A does not. */
  @Test
  void theBreakerOfAThreePhaseInverter() {
    String small = shop("36 kVA", "125", "1", "automatic").replace("37+39+41  125 A  three-pole back-fed  pv",
        "37+39+41  110 A  three-pole back-fed  pv");
    List<String> rules = new Compiler(SourceReader.FROM_DISK)
        .compile(new Source("shop.wattle", small), java.nio.file.Path.of("shop.wattle"))
        .findings().stream().map(Finding::rule).toList();
    assertThat(rules).contains("source-breaker-small");
    assertThat(found("36 kVA", "125", "1", "automatic")).isEmpty();
  }
}
