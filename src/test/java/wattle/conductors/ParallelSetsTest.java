package wattle.conductors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import wattle.compare.Comparison;
import wattle.compare.Plan;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.Completeness;
import wattle.edit.Formatter;
import wattle.emit.document.changes.Changes;
import wattle.emit.media.drawing.Shape;
import wattle.emit.view.oneline.OneLine;
import wattle.finding.Source;
import wattle.read.SourceReader;
import wattle.materials.Material;
import wattle.model.Service;
import wattle.model.Wire;
import wattle.model.Wiring;

/** Conductors in parallel, against figures by hand from published tables. */
class ParallelSetsTest {
  private static Compilation plan(String system, String run, String more) {
    return new Compiler(SourceReader.FROM_DISK).compile(
        new Source(
            "plan.wattle", """
                plan "Parallel"
                use code us-2023
                service main %s { source available 40 kA   run 12 m of %s
                  earth water-pipe by 3/0 Cu }
                panel M "Switchboard" from main { bus 1200 A   slots 42   bonded
                  main breaker 1200 A 65 kA
                  %s
                }
                """
                .formatted(system, run, more)),
        Path.of("plan.wattle"));
  }

  private static Wiring run(Compilation plan) {
    return plan.house().services().get("main").run().orElseThrow().wiring();
  }

  private static List<String> names(Compilation plan) {
    return plan.findings().stream().map(f -> f.rule()).distinct().toList();
  }

  /** NFPA 70 Table 310.16: 350 kcmil copper, 75 °C column, 310 A; three of them in raceways apart 930 A. */
  @Test
  void ampacityIsThatOfAllSets() {
    Compilation plan = plan("120/208 V 1000 A three-phase", "3 sets of 3 in PVC with 4 x 350 kcmil Cu THWN", "1 20 A spare");
    Service service = plan.house().services().get("main");
    Conductors conductors = plan.figures().conductors();
    Conditions conditions = conductors.runs().of(service.run().orElseThrow(), service.system(), run(plan).hot());
    assertThat(conductors.ampacities().of(conditions).orElseThrow().amperes()).isCloseTo(930, within(1e-6));
    assertThat(run(plan).wires()).hasSize(4);
  }

  /** Three alike have a third of the resistance and reactance of one, and nine times the let-through. */
  @Test
  void impedanceIsShared() {
    Conductors conductors = plan("120/208 V 1000 A three-phase", "4 in PVC with 4 x 350 kcmil Cu THWN", "1 20 A spare").figures()
        .conductors();
    Wiring one = run(plan("120/208 V 1000 A three-phase", "3 in PVC with 4 x 350 kcmil Cu THWN", "1 20 A spare"));
    Wiring three = run(plan("120/208 V 1000 A three-phase", "3 sets of 3 in PVC with 4 x 350 kcmil Cu THWN", "1 20 A spare"));
    Impedance alone = conductors.impedances().of(one.hot(), one).orElseThrow();
    Impedance shared = conductors.impedances().of(three.hot(), three).orElseThrow();
    assertThat(shared.ohmsPerMeter(75)).isCloseTo(alone.ohmsPerMeter(75) / 3, within(1e-12));
    assertThat(shared.reactanceOhmsPerMeter(60)).isCloseTo(alone.reactanceOhmsPerMeter(60) / 3, within(1e-12));
  }

  /** NFPA 70 Table 250.66: 3 × 350 kcmil = 1050 kcmil of copper, in the row over 600 through 1100: 2/0 copper. */
  @Test
  void electrodesGoByTheWholeArea() {
    Compilation plan = plan("120/208 V 1000 A three-phase", "3 sets of 3 in PVC with 4 x 350 kcmil Cu THWN", "1 20 A spare");
    Wiring wiring = run(plan);
    assertThat(wiring.wholeSize().toString()).isEqualTo("1050 kcmil");
    assertThat(plan.figures().conductors().grounds()
        .forElectrode(wiring.wholeSize(), wiring.hot().metal(), "water-pipe", wiring.hot().metal()).orElseThrow().value().text())
        .isEqualTo("2/0 AWG");
  }

  /**
   * The same by the rule that judges a plan, NFPA 70 Table 250.66: 3 × 350 kcmil need 2/0, 4 × 350 kcmil are over 1100 kcmil and need 3/0;
   * for 350 kcmil alone 2 AWG does.
   */
  @Test
  void thinElectrodeConductorsAreFoundByTheWholeArea() {
    String conductor = "earth water-pipe by 3/0 Cu";
    for (int sets : List.of(1, 3, 4)) {
      for (String size : List.of("2 Cu", "2/0 Cu", "3/0 Cu")) {
        String text = plan("120/208 V 1000 A three-phase", (sets == 1 ? "" : sets + " sets of ") + "3 in PVC with 4 x 350 kcmil Cu THWN",
            "1 20 A spare").source().text().replace(conductor, "earth water-pipe by " + size);
        boolean thin = sets == 3 && size.equals("2 Cu") || sets == 4 && !size.equals("3/0 Cu");
        List<String> found = names(new Compiler(SourceReader.FROM_DISK).compile(new Source("plan.wattle", text), Path.of("plan.wattle")));
        assertThat(found.contains("electrode-conductor-thin")).as(sets + " sets, " + size + ": " + found).isEqualTo(thin);
      }
    }
  }

  @Test
  void setsStayAsTheyAreWhenThePlanIsTidied() {
    String run = "3 sets of 3 in PVC with 4 x 350 kcmil Cu THWN, 1/0 Cu ground";
    String text = plan("120/208 V 1000 A three-phase", run, "1 20 A spare").source().text();
    String tidy = Formatter.format(new Source("plan.wattle", text)).value();
    assertThat(tidy).contains("of " + run);
    assertThat(Formatter.format(new Source("plan.wattle", tidy)).value()).isEqualTo(tidy);
  }

  /** One set more is a change of the service run, and of what is bought: 12 m are 12 m of raceway more. */
  @Test
  void anotherSetIsAChange() {
    Compilation three = plan("120/208 V 1000 A three-phase", "3 sets of 3 in PVC with 4 x 350 kcmil Cu THWN", "1 20 A spare");
    Compilation four = plan("120/208 V 1000 A three-phase", "4 sets of 3 in PVC with 4 x 350 kcmil Cu THWN", "1 20 A spare");
    String changes = Changes.text(Comparison.of(revision(three), revision(four)));
    assertThat(changes).contains("3 sets of 3 in PVC with 4 x 350 kcmil Cu THWN", "4 sets of 3 in PVC with 4 x 350 kcmil Cu THWN");
    assertThat(Comparison.of(revision(three), revision(three)).isEmpty()).isTrue();
  }

  private static Plan revision(Compilation plan) {
    return new Plan(plan.figures(), plan.findings(), plan.completeness() != Completeness.IN_PIECES, plan.undecided());
  }

  /** The one-line diagram names the sets in full, with their length, and has a stroke for each wire of one set. */
  @Test
  void setsAreDrawnInFull() {
    Compilation plan = plan("120/208 V 1000 A three-phase", "3 sets of 3 in PVC with 4 x 350 kcmil Cu THWN", "1 20 A spare");
    assertThat(new OneLine(plan.house(), plan.figures()).drawing().shapes())
        .filteredOn(Shape.Text.class::isInstance)
        .extracting(s -> ((Shape.Text) s).text())
        .contains("3 sets of 3 in PVC with 4 x 350 kcmil Cu THWN, 12 m");
  }

  /** Each set has its own raceway and each its own conductors to buy: 12 m are 36 m of raceway. */
  @Test
  void everySetIsBought() {
    Compilation plan = plan("120/208 V 1000 A three-phase", "3 sets of 3 in PVC with 4 x 350 kcmil Cu THWN", "1 20 A spare");
    Map<String, Double> bought = wattle.materials.Materials.of(plan.house(), plan.library()).items().stream()
        .filter(m -> m.category() == Material.Category.RACEWAY)
        .collect(Collectors.toMap(Material::what, Material::amount));
    assertThat(bought).containsOnlyKeys("3 in PVC");
    assertThat(bought.get("3 in PVC")).isBetween(36.0, 40.0);
  }

  /** 8 AWG behind 1,200 A, a hot for each leg and a neutral, on each supply: NFPA 70 230.90(A). */
  @Test
  void thinServiceConductorsAreFoundOnEverySupply() {
    Map<String, Integer> conductors = Map.of("120/240 V 1200 A", 3, "120/208 V 1200 A", 3, "120/208 V 1200 A three-phase", 4);
    conductors.forEach(
        (system, count) -> assertThat(names(plan(system, "2 in PVC with " + count + " x 8 Cu THWN", "1 20 A spare"))).as(system)
            .contains("service-above-conductors"));
    assertThat(names(plan("120/208 V 200 A", "2 in PVC with 3 x 4 Cu THWN", "1 20 A spare"))).contains("service-conductor-thin");
  }

  /** NFPA 70 Table 310.16, 240.4(C): 4 × 350 kcmil carry 1240 A, over 800 A nothing is rounded up. */
  @Test
  void fourSetsServeTwelveHundredAmperes() {
    assertThat(names(plan("120/208 V 1200 A three-phase", "4 sets of 3 in PVC with 4 x 350 kcmil Cu THWN", "1 20 A spare")))
        .doesNotContain("service-above-conductors", "parallel-service-thin");
    assertThat(names(plan("120/208 V 1200 A three-phase", "3 sets of 3 in PVC with 4 x 350 kcmil Cu THWN", "1 20 A spare")))
        .contains("service-above-conductors");
  }

  @Test
  void threeHotsNeedNoNeutral() {
    Compilation plan = plan("120/208 V 200 A three-phase", "3 in PVC with 3 x 3/0 Cu THWN hot, 4 Cu ground", "1 20 A spare");
    assertThat(run(plan).wires().stream().map(Wire::purpose)).containsExactly(
        Wire.Purpose.HOT, Wire.Purpose.HOT, Wire.Purpose.HOT, Wire.Purpose.GROUND);
  }

  @Test
  void aNumberOfSetsThatCannotBeIsRefused() {
    assertThat(names(plan("120/208 V 200 A three-phase", "0 sets of 3 in PVC with 4 x 3/0 Cu THWN", "1 20 A spare")))
        .contains("sets-unlikely");
    assertThat(names(plan("120/208 V 200 A three-phase", "2.5 sets of 3 in PVC with 4 x 3/0 Cu THWN", "1 20 A spare")))
        .contains("sets-unlikely");
  }
}
