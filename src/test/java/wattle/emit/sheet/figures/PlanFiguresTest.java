package wattle.emit.sheet.figures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.emit.media.table.SheetFigure;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.quantity.UnitSystem;
import wattle.read.SourceReader;

/** Every figure of every table has a name and unfolds down to what is stated, assumed or looked up. */
class PlanFiguresTest {
  private static final Pattern TWO_TERMS = Pattern.compile("([\\p{L}_][\\p{L}\\d_]*) ([×/]) ([\\p{L}_][\\p{L}\\d_]*)");

  private static Compilation compile(Path plan) {
    try {
      return new Compiler(SourceReader.FROM_DISK).compile(plan);
    } catch (SourceReader.Unreadable e) {
      throw new AssertionError(e);
    }
  }

  private static Stream<Path> houses() {
    return Golden.plans("examples").stream().filter(p -> !p.toString().contains("broken"));
  }

  private static List<PlanFigures> all(Compilation plan) {
    List<PlanFigures> all = new ArrayList<>(List.of(PlanFigures.of(plan, UnitSystem.METRIC)));
    plan.house().trials().values().forEach(t -> all.add(PlanFigures.of(plan, t, UnitSystem.METRIC)));
    return all;
  }

  @TestFactory
  Stream<DynamicTest> everyFigureUnfolds() {
    return houses().map(
        path -> DynamicTest.dynamicTest(
            path.toString(),
            () -> {
              for (PlanFigures figures : all(compile(path))) {
                assertThat(figures.all()).isNotEmpty();
                figures.all().forEach(f -> check(f.derivation().orElseThrow(() -> new AssertionError(f.name() + " does not unfold"))));
              }
            }));
  }

  /** In feet the sums come out as they do in meters, which they would not if a length had changed and what is measured for it had not. */
  @Test
  void figuresInFeetComeOutTheSame() {
    Compilation plan = compile(Path.of("src/test/resources/units/quarry-rise.wattle"));
    List<SheetFigure> feet = PlanFigures.of(plan, UnitSystem.CUSTOMARY).all();
    List<SheetFigure> meters = PlanFigures.of(plan, UnitSystem.METRIC).all();
    assertThat(feet).hasSameSizeAs(meters).hasSizeGreaterThan(100);
    for (int i = 0; i < feet.size(); i++) {
      Derivation shown = feet.get(i).derivation().orElseThrow();
      check(shown);
      assertThat(shown.si()).as(shown.toString()).isCloseTo(meters.get(i).derivation().orElseThrow().si(),
          within(1e-9 * Math.max(1, Math.abs(shown.si()))));
      assertThat(feet.get(i).name()).isEqualTo(meters.get(i).name());
    }
    assertThat(feet).anySatisfy(f -> assertThat(f.shown()).endsWith(" ft")).anySatisfy(f -> assertThat(f.shown()).endsWith(" °F"));
  }

  private static void check(Derivation figure) {
    assertThat(figure.name()).isNotBlank();
    assertThat(figure.value().text()).doesNotContain("NaN").doesNotContain("Infinity");
    if (figure.basis() == Derivation.Basis.LOOKED_UP) {
      assertThat(figure.formula()).as(figure.name()).isNotBlank();
      assertThat(figure.sources()).as(figure.name()).isNotEmpty();
    }
    if (figure.basis() == Derivation.Basis.COMPUTED && figure.inputs().isEmpty()) {
      // What only the solution of the network gives says so; a sum of nothing is nothing.
      boolean nothing = figure.quantity().isPresent() && Math.abs(figure.si()) < 1e-6;
      assertThat(nothing || !figure.remark().isEmpty()).as(figure.name() + " rests on nothing").isTrue();
    }
    recomputed(figure);
    figure.inputs().forEach(PlanFiguresTest::check);
  }

  /** A product or quotient of two inputs is worked again from their figures. */
  private static void recomputed(Derivation figure) {
    Matcher terms = TWO_TERMS.matcher(figure.formula());
    if (figure.basis() == Derivation.Basis.COMPUTED && terms.matches()) {
      Optional<Derivation> one = input(figure, terms.group(1));
      Optional<Derivation> other = input(figure, terms.group(3));
      boolean nothingOfNothing = terms.group(2).equals("/") && other.map(o -> o.si() == 0).orElse(false);
      if (one.isPresent() && other.isPresent() && !nothingOfNothing) {
        double expected = terms.group(2).equals("×") ? one.get().si() * other.get().si() : one.get().si() / other.get().si();
        assertThat(figure.si()).as(figure.toString()).isCloseTo(expected, within(1e-9 * Math.max(1e-6, Math.abs(expected))));
      }
    }
  }

  private static Optional<Derivation> input(Derivation figure, String symbol) {
    return figure.inputs().stream()
        .filter(i -> i.symbol().equals(symbol) && (i.value() instanceof Value.Amount || i.value() instanceof Value.Converted)).findFirst();
  }

  @Test
  void everyNameFindsItsFigure() {
    PlanFigures figures = PlanFigures.of(compile(Path.of("examples/alder-court/house.wattle")), UnitSystem.METRIC);
    // Every tenth: to find one goes through all of them.
    for (int i = 0; i < figures.all().size(); i += 10) {
      SheetFigure figure = figures.all().get(i);
      assertThat(figures.find(figure.name()).figures()).extracting(SheetFigure::name).containsOnly(figure.name());
    }
  }

  @Test
  void wordsInOrderFindFigures() {
    PlanFigures figures = PlanFigures.of(compile(Path.of("examples/alder-court/house.wattle")), UnitSystem.METRIC);
    PlanFigures.Found halves = figures.find("voltage kitchen.c1 full load");
    assertThat(halves.figures()).extracting(SheetFigure::name).containsExactly("voltage of kitchen.c1.upper at full load");
    assertThat(halves.others()).extracting(SheetFigure::name).contains("voltage of kitchen.c1.lower at full load")
        .noneMatch(n -> n.contains("stated"));
    assertThat(figures.find("ampacity of hall").figures()).hasSize(1);
    assertThat(figures.find("ampacity of hall").others()).hasSize(7);
    assertThat(figures.find("AMPACITY  of the hall").others()).hasSize(7);
    assertThat(figures.find("neutral of counter at most").figures()).hasSize(1);
    assertThat(figures.find("ampacity of hal").figures()).isEmpty();
    assertThat(figures.near("ampacity of hal")).contains("ampacity of hall");
    assertThat(figures.near("voltage of kitchn.c1 at full load")).anyMatch(n -> n.contains("kitchen.c1"));
  }

  /** A figure too long for the table is unfolded when it is asked for: a branch of 130 boxes. */
  @Test
  void longFiguresUnfoldWhenAsked() {
    StringBuilder way = new StringBuilder("P");
    StringBuilder boxes = new StringBuilder();
    for (int i = 0; i < 130; i++) {
      way.append(" --1 m-- r.b").append(i);
      boxes.append(" b").append(i).append(": receptacle");
    }
    String text = "plan \"Long\" use code us-2023\nservice main 120/240 V 100 A { source available 10 kA }\n"
        + "panel P from main { bus 100 A slots 12 bonded main breaker 100 A 22 kA\n 1 15 A far }\n"
        + "branch far by 14/2 NM-B { " + way + " }\nroom r {" + boxes + " }\n";
    PlanFigures figures = PlanFigures
        .of(new Compiler(SourceReader.FROM_DISK).compile(new Source("long.wattle", text), Path.of("long.wattle")), UnitSystem.METRIC);
    SheetFigure last = figures.find("fault current of r.b129 line to neutral at most").figures().get(0);
    assertThat(figures.all()).filteredOn(f -> f.name().equals(last.name())).allMatch(f -> f.derivation().isEmpty());
    Derivation at = last.derivation().orElseThrow();
    int deep = 0;
    while (!at.inputs().isEmpty()) {
      at = at.inputs().get(at.inputs().size() > 1 && at.inputs().get(1).name().startsWith("impedance") ? 1 : 0);
      deep++;
    }
    assertThat(deep).isGreaterThan(130);
  }
}
