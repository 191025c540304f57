package wattle.evaluate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.syntax.PlanParser;
import wattle.syntax.Tree;

/** Expressions by hand figures, and one finding for each mistake in one. */
class EvaluatorTest {
  private final List<Finding> findings = new ArrayList<>();
  private final Evaluator evaluator = new Evaluator(Map.of("n", Quantity.of(8, Units.ONE)), findings::add);

  private static Tree.Expression read(String text) {
    return ((Tree.Let) PlanParser.parse(new Source("x.wattle", "let x = " + text + "\n")).value().items().get(0)).value();
  }

  /** Arithmetic by hand: P = U I, R = U / I, 1 ft = 0.3048 m. */
  @ParameterizedTest
  @CsvSource({"1500 W / 120 V, 12.5, CURRENT", "240 V * 20 A, 4800, POWER", "120 V / 10 A, 12, RESISTANCE", "2 m + 30 cm, 2.3, LENGTH",
      "12 ft 6 in, 3.81, LENGTH", "3 m - 1 ft, 2.6952, LENGTH", "1 + 2 * 3, 7, NONE", "(1 + 2) * 3, 9, NONE", "10 - 4 - 3, 3, NONE",
      "-2 m, -2, LENGTH", "n * 180 VA, 1440, POWER", "1/2 hp, 372.849936, POWER", "1-1/2 hp, 1118.549807, POWER",
      "1 1/2 in, 0.0381, LENGTH",
      "3/4 in, 0.01905, LENGTH", "1 / 2 * 4 m, 2, LENGTH", "2 m - 1/2 m, 1.5, LENGTH"})
  void valuesAndDimensions(String text, double si, String dimension) throws ReflectiveOperationException {
    Quantity value = evaluator.valueOf(read(text)).orElseThrow();
    assertThat(value.si()).isCloseTo(si, within(1e-6));
    assertThat(value.dimension()).isEqualTo(Dimension.class.getField(dimension).get(null));
    assertThat(findings).isEmpty();
  }

  /** What is wrong, and the words at which it is shown. */
  @ParameterizedTest
  @CsvSource({"3 m + 2 A, dimension-mismatch, 2 A", "10 - 1/2 m, dimension-mismatch, 1/2 m", "1 / 0, division-by-zero, 1 / 0",
      "unheard * 2, name-unknown, unheard", "n-3, name-unknown, n-3"})
  void oneMistakeIsOneFindingAtItsPlace(String text, String rule, String at) {
    assertThat(evaluator.valueOf(read(text))).isEmpty();
    assertThat(findings).hasSize(1);
    assertThat(findings.get(0).rule()).isEqualTo(rule);
    assertThat(findings.get(0).place().orElseThrow().span().text()).isEqualTo(at);
  }

  @Test
  void aHyphenThatWasMeantAsAMinusIsOfferedAsOne() {
    evaluator.valueOf(read("n-3"));
    assertThat(findings.get(0).fixes()).extracting(f -> f.order()).anySatisfy(o -> assertThat(o).contains("n - 3"));
  }

  @Test
  void aFigureOfAnotherDimensionAndOneWithoutAUnitAreToldApart() {
    assertThat(evaluator.valueOf(read("15 V"), Dimension.CURRENT, "a rating")).isEmpty();
    assertThat(evaluator.valueOf(read("15"), Dimension.CURRENT, "a rating")).isEmpty();
    assertThat(findings).extracting(Finding::rule).containsExactly("dimension-mismatch", "unit-missing");
    assertThat(findings.get(1).headline()).isEqualTo("a rating needs a unit");
  }

  /** No load is 0 W and no run below 0 m; a run of 0 m is one that joins two boxes. */
  @ParameterizedTest
  @CsvSource({"0 A, CURRENT, false", "0 W, POWER, false", "5 A, CURRENT, true", "0 m, LENGTH, true", "-1 m, LENGTH, false"})
  void aThingCannotHaveEveryFigure(String text, String dimension, boolean can) throws ReflectiveOperationException {
    Dimension expected = (Dimension) Dimension.class.getField(dimension).get(null);
    assertThat(evaluator.statedOf(read(text), expected, "it").isPresent()).isEqualTo(can);
    assertThat(findings).extracting(Finding::rule).isEqualTo(can ? List.of() : List.of("figure-not-positive"));
  }

  @Test
  void aCountIsWholeAndWithinItsBounds() {
    assertThat(evaluator.countOf(read("n / 2"), "slots", 1, 84)).contains(4);
    assertThat(evaluator.countOf(read("84"), "slots", 1, 84)).contains(84);
    assertThat(evaluator.countOf(read("85"), "slots", 1, 84)).isEmpty();
    assertThat(evaluator.countOf(read("2.5"), "slots", 1, 84)).isEmpty();
    assertThat(evaluator.countOf(read("0"), "slots", 1, 84)).isEmpty();
    assertThat(findings).hasSize(3).allSatisfy(f -> assertThat(f.rule()).isEqualTo("count-out-of-range"));
  }

  /** A constant without a value was told where it is written. */
  @Test
  void aConstantWithoutAValueIsNotToldAgain() {
    Evaluator other = new Evaluator(Map.of("lost", Evaluator.WITHOUT_VALUE), findings::add);
    assertThat(other.valueOf(read("lost + 2"))).isEqualTo(Optional.empty());
    assertThat(findings).isEmpty();
  }
}
