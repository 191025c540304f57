package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;
import wattle.trials.Danger;
import wattle.trials.NeutralReading;
import wattle.trials.TrialResult;
import wattle.trials.WorstCases;

/** What a shared neutral carries, how warm it gets, and which breakers may stand before it. */
class SharedNeutralTest {
  private static Compilation plan(String supply, String breakers, String more) {
    String text = "plan \"T\"\nuse code us-2023\nservice main " + supply
        + " 200 A { source available 10 kA   run 20 m of 4/0 Al triplex }\n"
        + "panel P from main { bus 200 A   slots 40   bonded\n main breaker 200 A 22 kA\n " + breakers + " counter\n}\n"
        + "branch counter by 12/3 NM-B { P --9 m-- kitchen.c1 on black --1.2 m-- kitchen.c2 on red }\n"
        + "room kitchen { c1: receptacle 2000 W   c2: receptacle 1900 W   oops: receptacle }\n" + more;
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("t.wattle", text), Path.of("t.wattle"));
  }

  private static List<String> rules(Compilation plan) {
    return plan.findings().stream().map(Finding::rule).toList();
  }

  /**
   * NFPA 70 table 310.16: 12 AWG copper of 90 °C carries 30 A at 30 °C of air, so 40 A in it give (40/30)² of the heat: 60 K × 1.78 with
   * the growth of its resistance comes to 130 K above the air.
   */
  @Test
  void bothHotsOnOneLeg() {
    Compilation plan = plan("120/240 V", "1+5 20 A handle-tied", "");
    assertThat(plan.findings()).filteredOn(f -> f.rule().equals("shared-neutral-same-leg")).singleElement()
        .satisfies(f -> assertThat(f.reason())
            .contains("up to 40 A", "12 AWG copper would settle near 160 °C; its insulation is rated 90 °C."));
    WorstCases.HeatCase first = plan.figures().worst().heat().get(0);
    assertThat(first.run()).isEqualTo("P to kitchen.c1, its neutral");
    assertThat(first.current().si()).isEqualTo(40, within(0.01));
    assertThat(first.temperature().orElseThrow().si() - 273.15).isEqualTo(160, within(1.0));
    assertThat(rules(plan)).doesNotContain("neutral-below-load");
  }

  /** On legs of their own the neutral carries no more than one hot, also on two legs of a wye, where it carries all of that. */
  @Test
  void hotsOnTheirOwnLegs() {
    for (String supply : List.of("120/240 V", "120/208 V")) {
      Compilation plan = plan(supply, "1+3 20 A two-pole", "");
      assertThat(plan.figures().worst().neutrals()).singleElement().satisfies(c -> assertThat(c.worst().si()).isEqualTo(20, within(0.01)));
      assertThat(plan.figures().worst().heat()).noneMatch(h -> h.run().endsWith("its neutral"));
      assertThat(plan.figures().trials().stated().neutrals()).isEmpty();
      assertThat(rules(plan)).doesNotContain("shared-neutral-same-leg", "neutral-below-load", "ground-fault-poles-apart");
    }
  }

  /** A trial that moves a hot tells what the neutral can carry then, whether anything draws in it or not. */
  @Test
  void movedInTrial() {
    Compilation plan = plan("120/240 V", "1+3 20 A handle-tied", "trial moved { move counter to 1+5 }\n");
    TrialResult result = plan.figures().trials().result(plan.house().trials().get("moved")).value();
    assertThat(result.neutrals()).singleElement().satisfies((NeutralReading n) -> {
      assertThat(n.legs()).containsExactly("A", "A");
      assertThat(n.most().si()).isEqualTo(40, within(0.01));
      assertThat(n.temperature().orElseThrow().si() - 273.15).isEqualTo(160, within(1.0));
    });
    assertThat(result.dangers()).filteredOn(d -> d.kind() == Danger.Kind.NEUTRAL_OVER).singleElement()
        .satisfies(d -> assertThat(d.words()).contains("may carry up to 40 A", "160 °C"));
    assertThat(plan.figures().trials().stated().neutrals()).isEmpty();
  }

  /** se.com, FA109025: two single-pole GFCI breakers on a shared neutral trip; a two-pole one does not. */
  @Test
  void singlePoleGroundFaultBreakers() {
    assertThat(rules(plan("120/240 V", "1+3 20 A handle-tied ground-fault", ""))).contains("ground-fault-poles-apart");
    assertThat(rules(plan("120/208 V", "1+3 20 A handle-tied ground-fault", ""))).contains("ground-fault-poles-apart");
    assertThat(rules(plan("120/240 V", "1+3 20 A two-pole ground-fault", ""))).doesNotContain("ground-fault-poles-apart");
    assertThat(rules(plan("120/240 V", "1+3 20 A handle-tied", ""))).doesNotContain("ground-fault-poles-apart");
  }

  /** On two legs of a wye 16.7 A and 15.8 A at 120° make 16.3 A on the neutral; 14 AWG at 60 °C has 15 A (NFPA 70 table 310.16). */
  @Test
  void thinNeutralByStatedLoads() {
    String text = "plan \"T\"\nuse code us-2023\nservice main %s 200 A { source available 10 kA   run 20 m of 4/0 Al triplex }\n"
        + "panel P from main { bus 200 A   slots 40   bonded\n main breaker 200 A 22 kA\n 1+3 20 A two-pole counter\n}\n"
        + "branch counter by 1/2 in EMT with 2 x 12 Cu THWN-2 hot, 14 Cu THWN-2 neutral, 12 Cu THWN-2 ground {"
        + " P --9 m-- kitchen.c1 on black --1.2 m-- kitchen.c2 on red }\nroom kitchen { c1: receptacle 2000 W   c2: receptacle 1900 W }\n";
    for (String supply : List.of("120/240 V", "120/208 V")) {
      Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(new Source("t.wattle", text.formatted(supply)), Path.of("t.wattle"));
      List<String> found = plan.findings().stream().filter(f -> f.rule().equals("neutral-below-load")).map(Finding::headline).toList();
      if (supply.equals("120/208 V")) {
        // The run beyond the first outlet carries the second one's load alone.
        assertThat(found).contains("neutral of circuit 'counter' is overloaded: carries 16.3 A, good for 15 A");
      } else {
        assertThat(found).noneMatch(h -> h.contains("16.3 A"));
      }
    }
  }
}
