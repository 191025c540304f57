package wattle.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** What solar, storage and generators add to fault currents. */
class ContributionsTest {
  private static final String HOUSE = """
      plan "Test" use code us-2023
      service main 120/240 V 200 A { source transformer 50 kVA 2 % ratio 1.5   run 20 m of 4/0 Al triplex }
      panel P from main {
        bus 225 A slots 30 bonded
        main breaker 200 A 22 kA
        1      15 A  far
        27+29  40 A  two-pole back-fed  sun
      }
      branch far by 14/2 NM-B { P --5 m-- r.one }
      branch sun by 8/3 NM-B { P --9 m-- r.source }
      room r { one: receptacle   source: SOURCE }
      """;

  private static double most(String source, String ways) {
    return fault(source, ways).mostAmperes();
  }

  private static Fault fault(String source, String ways) {
    return Plans.faults(HOUSE.replace("SOURCE", source).replace("two-pole back-fed", ways)).panel("P").fault(FaultKind.LINE_LINE)
        .orElseThrow();
  }

  private static double supply() {
    return most("junction", "two-pole");
  }

  /** 7.6 kW at 240 V is 31.67 A; twice that, the upper end of the rule of thumb in NREL/TP-550-46698, is 63.3 A. */
  @Test
  void anInverterAddsAMultipleOfItsRatedCurrent() {
    assertThat(most("solar inverter 7.6 kW", "two-pole back-fed") - supply()).isCloseTo(63.33, within(0.01));
    assertThat(most("solar inverter 7.6 kW fault-factor 1.2", "two-pole back-fed") - supply()).isCloseTo(38.0, within(0.01));
  }

  /** Rated current over subtransient reactance, the per-unit method of IEEE 141: 6.5 kVA, 240 V, 12 %: 225.7 A. */
  @Test
  void aGeneratorAddsItsSubtransientCurrentUnlessItIsKeptApart() {
    String generator = "generator inlet 6.5 kW reactance 12 %";
    assertThat(most(generator, "two-pole back-fed") - supply()).isCloseTo(225.69, within(0.01));
    assertThat(most(generator, "two-pole back-fed interlocked") - supply()).isCloseTo(0, within(1e-9));
  }

  @Test
  void theLeastCurrentIsThatOfTheSupplyAlone() {
    Fault with = fault("solar inverter 7.6 kW", "two-pole back-fed");
    assertThat(with.leastAmperes()).isCloseTo(fault("junction", "two-pole").leastAmperes(), within(1e-9));
  }

  @Test
  void theSumUnfoldsToItsSources() {
    Fault with = fault("solar inverter 7.6 kW", "two-pole back-fed");
    assertThat(with.most().si()).isCloseTo(with.mostAmperes(), within(1e-9));
    assertThat(with.most().inputs()).extracting(i -> i.name()).anyMatch(n -> n.contains("r.source"));
  }
}
