package wattle.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.Completeness;
import wattle.emit.document.changes.Changes;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** What a change comes to, held against figures worked out by hand and by published tables. */
class ConsequencesTest {
  private static final String HOUSE = """
      plan "Two rooms" revision "A"
      use code us-2023
      dwelling { floor-area 100 m2 }
      service main 120/240 V 100 A {
        source available 10 kA
        run 20 m of 2 Al triplex
      }
      panel P from main {
        bus 125 A   slots 12   bonded
        main breaker 100 A 22 kA
        1    20 A           front
        2+4  20 A two-pole  counter
        5+7  50 A two-pole  range
      }
      branch front   by 12/2 NM-B { P --10 m-- hall.o }
      branch counter by 12/3 NM-B { P --9 m-- kitchen.c1 }
      branch range   by 6/3 NM-B  { P --5 m-- kitchen.range }
      room hall    { o: receptacle }
      room kitchen { c1: split receptacle at counter   range: range 12 kW }
      """;

  private static Plan plan(String text, Path path) {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(new Source(path.toString(), text), path);
    return new Plan(plan.figures(), plan.findings(), plan.completeness() != Completeness.IN_PIECES, plan.undecided());
  }

  private static Plan plan(String text) {
    return plan(text, Path.of("house.wattle"));
  }

  private static Comparison compare(String before, String after) {
    return Comparison.of(plan(before), plan(after));
  }

  private static Map<String, Consequence> figures(Comparison comparison) {
    Map<String, Consequence> figures = new HashMap<>();
    comparison.consequences().figures().forEach(c -> figures.put(c.measure().toString(), c));
    return figures;
  }

  private static double difference(Comparison comparison, String measure) {
    return figures(comparison).get(measure).difference().orElseThrow();
  }

  /** NFPA 70-2023 Table 220.55: column C, one range up to 12 kW, 8 kW; note 1, 5 % more for each kW above. */
  @Test
  void aLargerRangeLoadsTheServiceByTheDemandOfTheTableAndTheLegsByHalves() {
    Comparison comparison = compare(HOUSE, HOUSE.replace("range 12 kW", "range 14 kW"));
    assertThat(difference(comparison, "calculated load of service main")).isCloseTo(8000 * 0.10 / 240, within(0.1));
    assertThat(difference(comparison, "connected load of panel P")).isEqualTo(2000);
    // The lamp and the clock of a range are on one leg: a twentieth of it, which the library says.
    assertThat(difference(comparison, "connected load on leg A of panel P")).isEqualTo(1000 + 0.05 * 1000);
    assertThat(difference(comparison, "connected load on leg B of panel P")).isEqualTo(1000 - 0.05 * 1000);
    assertThat(figures(comparison)).doesNotContainKeys("largest neutral current of branch counter", "available fault current of panel P");
  }

  /** Two hots of 20 A on opposite legs: the most is one of them alone; on one leg they add. Common practice. */
  @Test
  void bothHotsOnOneLegDoubleTheNeutral() {
    Comparison comparison = compare(HOUSE, HOUSE.replace("2+4  20 A", "2+6  20 A"));
    assertThat(difference(comparison, "largest neutral current of branch counter")).isEqualTo(20);
    assertThat(Changes.text(comparison)).contains("20.0 A -> 40.0 A  +20.0 A  legs A+B -> legs A+A");
    Comparison smaller = compare(HOUSE, HOUSE.replace("2+4  20 A", "2+4  15 A"));
    assertThat(difference(smaller, "largest neutral current of branch counter")).isEqualTo(-5);
  }

  /**
   * NFPA 70-2023 chapter 9, table 8: 12 AWG solid copper, 6.34 Ω/km at 75 °C uncoated solid (1.93 Ω/kFT); table 9 gives
   * the same within 5 %. Ten meters more there and back, 20 A: 20 × 2 × 10 m × 6.34 Ω/km = 2.54 V, 2.1 % of 120 V.
   */
  @Test
  void aLongerRunDropsMoreAndIsBought() {
    Comparison comparison = compare(HOUSE, HOUSE.replace("--10 m-- hall.o", "--20 m-- hall.o"));
    assertThat(difference(comparison, "largest drop at full load of branch front")).isCloseTo(100 * 20 * 2 * 0.0634 / 120, within(0.12));
    assertThat(figures(comparison).get("largest drop at full load").after()).isInstanceOfSatisfying(Figure.Known.class,
        f -> assertThat(f.note()).isEqualTo("at hall.o of front"));
    // Ten meters and what is wasted of them: a tenth, common practice.
    assertThat(difference(comparison, "cable: 12/2 NM-B")).isCloseTo(11, within(0.11));
    assertThat(difference(comparison, "least fault current")).isNegative();
    assertThat(figures(comparison)).doesNotContainKeys("cable: 12/3 NM-B", "calculated load of service main",
        "available fault current of panel P");
  }

  /** 22 kA at the source of 240 V is 10.9 mΩ, 10 kA is 24 mΩ; 20 m of aluminum lie between it and the panel. */
  @Test
  void aStrongerSourceRaisesThePanelsFaultCurrentByLessThanItself() {
    Comparison comparison = compare(HOUSE, HOUSE.replace("available 10 kA", "available 22 kA"));
    double rise = difference(comparison, "available fault current of panel P");
    assertThat(rise).isBetween(200.0, 12000.0);
  }

  @Test
  void whatIsNotKnownInOnePlanSaysWhichAndWhy() {
    Comparison comparison = compare(HOUSE, HOUSE.replace("dwelling { floor-area 100 m2 }\n", ""));
    Consequence load = figures(comparison).get("calculated load of service main");
    assertThat(load.before()).isInstanceOf(Figure.Known.class);
    assertThat(load.after()).isInstanceOf(Figure.Unknown.class);
    assertThat(load.difference()).isEmpty();
    assertThat(Changes.text(comparison))
        .containsPattern("service main: calculated load +[0-9.]+ A -> not known .*after: the plan does not describe the dwelling");
    Comparison pieces = compare(HOUSE, HOUSE.replace("--9 m-- kitchen.c1", "--9 m-- kitchen.c9"));
    assertThat(pieces.consequences().isEmpty()).isTrue();
    assertThat(Changes.text(pieces))
        .contains("not compared\n  after: loads, currents, voltages, faults and materials: the plan has errors");
  }

  @Test
  void everyFigureOfTheRenovationMirrorsAndUnfolds() {
    Path folder = Path.of("examples/kitchen-renovation");
    Plan before = read(folder.resolve("before.wattle"));
    Plan after = read(folder.resolve("after.wattle"));
    Comparison there = Comparison.of(before, after);
    assertThat(there.consequences().figures()).hasSizeGreaterThan(20);
    assertThat(Comparison.of(after, before)).isEqualTo(there.mirrored());
    for (Consequence consequence : there.consequences().figures()) {
      for (Figure figure : List.of(consequence.before(), consequence.after())) {
        if (figure instanceof Figure.Known known) {
          assertThat(known.derivation().toString()).isNotBlank();
        }
      }
      assertThat(Consequence.differ(consequence.measure(), consequence.before(), consequence.after())).isTrue();
    }
  }

  private static Plan read(Path path) {
    try {
      return plan(Files.readString(path), path);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
