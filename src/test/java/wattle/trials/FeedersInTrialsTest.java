package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Checked;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** A feeder as a thing of its own in trials; the verdict on a trial; volts on metal that animals touch. */
class FeedersInTrialsTest {
  private static final String FARM = """
      plan "Invented farm"
      service main 120/240 V 200 A { source available 20 kA ratio 1   earth rods by 6 Cu 25 ohm }
      panel P from main { bus 225 A slots 30 bonded
        main breaker 200 A 22 kA
        1+3 60 A two-pole B
      }
      panel B from P/1 by 200 ft of 1 in PVC with 3 x 6 Cu THWN existing is outbuilding { bus 100 A slots 12 bonded
        earth rods by 6 Cu 25 ohm
        1 20 A stalls
        3 20 A other
      }
      branch stalls by 12/2 UF-B { B --10 ft-- stalls.o }
      branch other by 12/2 UF-B { B --10 ft-- stalls.p }
      room stalls is livestock { o: receptacle   p: receptacle }
      """;

  private static TrialResult run(String house, String events) {
    Compilation plan = new Compiler(SourceReader.FROM_DISK)
        .structure(new Source("farm.wattle", house + "trial t {\n" + events + "\n}\n"), Path.of("farm.wattle"));
    assertThat(plan.findings()).noneMatch(f -> f.severity() == Severity.ERROR);
    Checked<TrialResult> run = new Trials(plan.house(), plan.library()).run(plan.house().trials().get("t"));
    assertThat(run.findings()).isEmpty();
    return run.value();
  }

  private static TrialResult.FeederReading feeder(TrialResult result) {
    return result.feeders().stream().filter(f -> f.panel().equals("B")).findFirst().orElseThrow();
  }

  /** NFPA 70 chapter 9 table 8: 6 AWG copper, 0.491 Ω for 1000 ft. Out and back 200 ft carry 48 A: 9.43 V, 3.93 % of 240 V. */
  @Test
  void aPanelDraws() {
    TrialResult result = run(FARM, "B draws 48 A");
    assertThat(feeder(result).amps().si()).isCloseTo(48, within(0.01));
    assertThat(feeder(result).neutral().orElseThrow().si()).isCloseTo(0, within(0.01));
    assertThat(feeder(result).lost().si()).isCloseTo(0.0393, within(0.0006));
    assertThat(feeder(result).fall().si()).isGreaterThan(feeder(result).lost().si());
  }

  /** On two legs of a wye a balanced load leaves its own current on the neutral; a power is shared between the legs. By hand. */
  @ParameterizedTest
  @CsvSource({"120/208 V, 48 A, 48, 48", "120/240 V, 11.52 kW, 48, 0", "120/208 V, 11.52 kW, 48, 48"})
  void onEachSupply(String supply, String drawn, double hot, double neutral) {
    TrialResult result = run(FARM.replace("120/240 V", supply).replace("200 ft", "20 ft"), "B draws " + drawn + " current");
    assertThat(feeder(result).amps().si()).isCloseTo(hot, within(0.5));
    assertThat(feeder(result).neutral().orElseThrow().si()).isCloseTo(neutral, within(1.5));
  }

  @Test
  void theFiguresOfAFeederUnfold() {
    TrialResult result = run(FARM, "B draws 48 A");
    assertThat(feeder(result).amps().inputs()).extracting(i -> i.name()).anyMatch(n -> n.contains("everything downstream of panel B"));
    assertThat(result.feeders()).hasSize(1);
  }

  /**
   * 20 A on one leg return on 200 ft of 6 AWG, 0.0982 Ω: 1.96 V between the ends of the neutral, of which the metal of the barn has nearly
   * all: its rods of 25 Ω are many times what the supplier's network has. USDA handbook 696 tells of cattle that feel 1 V; people do not.
   */
  @Test
  void animalsFeelWhatTheNeutralLoses() {
    TrialResult result = run(FARM, "stalls.o draws 20 A current");
    assertThat(result.dangers()).anyMatch(d -> d.kind() == Danger.Kind.ANIMALS && d.words().contains("cattle"));
    double volts = result.metals().stream().filter(m -> m.name().equals("stalls.o")).findFirst().orElseThrow().volts().si();
    assertThat(volts).isBetween(1.0, 2.2);
    TrialResult balanced = run(FARM, "stalls.o draws 20 A current\n stalls.p draws 20 A current");
    assertThat(balanced.dangers()).noneMatch(d -> d.kind() == Danger.Kind.ANIMALS);
    assertThat(run(FARM.replace("is livestock", "is workshop"), "stalls.o draws 20 A current").dangers())
        .noneMatch(d -> d.kind() == Danger.Kind.ANIMALS);
  }

  @Test
  void theVerdictStandsInOneLine() {
    assertThat(run(FARM, "stalls.o draws 1 A").verdict()).startsWith("none of the dangers that are checked (live metal")
        .doesNotContain("\n").doesNotContainIgnoringCase("safe");
    assertThat(run(FARM, "fault hot to neutral at B").verdict()).startsWith("DANGER: ").doesNotContain("\n");
  }

  /** A lost neutral puts 10 A and 1 A in series: amperes are held and drive the voltages apart, heaters share them by their ohms. */
  @Test
  void aLostNeutralSaysHowLoadsAreHeld() {
    TrialResult watts = run(FARM, "open neutral of B\n stalls.o draws 1200 W\n stalls.p draws 120 W");
    assertThat(watts.dangers()).filteredOn(d -> d.kind() == Danger.Kind.OVERVOLTAGE)
        .anyMatch(d -> d.words().contains("all loads taken as heaters"));
    TrialResult amperes = run(FARM, "open neutral of B\n stalls.o draws 3 A\n stalls.p draws 120 W");
    assertThat(amperes.dangers()).filteredOn(d -> d.kind() == Danger.Kind.OVERVOLTAGE || d.kind() == Danger.Kind.UNDERVOLTAGE)
        .anyMatch(d -> d.words().contains("keep their current, which exaggerates"));
  }

  @Test
  void aLoadBehindALostNeutralIsToldToCloseItFirst() {
    TrialResult result = run(FARM, "open neutral of B\n stalls.o draws 15 A\n stalls.p draws 10 W");
    assertThat(result.dangers()).filteredOn(d -> d.kind() == Danger.Kind.NOT_SERVED).isNotEmpty()
        .allMatch(d -> d.words().contains("; close the neutral first"));
  }
}
