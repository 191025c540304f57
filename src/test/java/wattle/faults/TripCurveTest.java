package wattle.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.model.Breaker;
import wattle.reference.Reference;

class TripCurveTest {
  private static TripCurve curve(String breaker) {
    Compilation plan = Plans.compile(Plans.house("source available 10 kA", breaker, "by 2 Al SER { P --1 m-- r.one }"));
    Breaker way = plan.house().panels().get("P").breakers().get(0);
    return new TripCurves(plan.library()).of(way, plan.house().panels().get("P").system()).orElseThrow();
  }

  /** Each trip point of UL 489 and IEC 60898-1 in the reference (overcurrent.csv, which names the page of each). */
  @TestFactory
  List<DynamicTest> everyPublishedPoint() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("overcurrent.csv")) {
      String kind = row.get("kind");
      if (List.of("must_hold", "must_trip", "thermal_band", "instantaneous_no_trip_at", "instantaneous_trip_by").contains(kind)) {
        String name = row.get("table") + " " + kind + " " + row.get("applies_to") + " " + row.get("value");
        tests.add(DynamicTest.dynamicTest(name, () -> holds(row, kind)));
      }
    }
    assertThat(tests).hasSize(19);
    return tests;
  }

  private static void holds(Map<String, String> row, String kind) {
    boolean iec = row.get("table").startsWith("IEC");
    String applies = row.get("applies_to");
    double rating = ratingIn(applies);
    String type = applies.startsWith("type ") ? " type-" + applies.substring(5).toLowerCase(java.util.Locale.ROOT) : iec ? " type-c" : "";
    TripCurve curve = curve((int) rating + " A" + type);
    double multiple = Double.parseDouble(row.get("value"));
    ClearingTime time = curve.at(multiple * rating);
    List<Double> seconds = numbersIn(row.get("condition"));
    switch (kind) {
      case "must_hold" -> assertThat(time.leastSeconds()).isGreaterThanOrEqualTo(iec ? 3600 : Double.POSITIVE_INFINITY);
      case "must_trip" -> assertThat(time.mostSeconds()).isCloseTo(seconds.get(0), within(1e-6));
      case "thermal_band" -> {
        assertThat(time.leastSeconds()).isEqualTo(seconds.get(0));
        assertThat(time.mostSeconds()).isCloseTo(seconds.get(1), within(1e-6));
      }
      case "instantaneous_no_trip_at" -> {
        assertThat(curve.at(0.999 * multiple * rating).leastSeconds()).isGreaterThanOrEqualTo(0.1);
        assertThat(curve.at(1.001 * multiple * rating).leastSeconds()).isLessThan(0.1);
      }
      default -> assertThat(time.mostSeconds()).isLessThanOrEqualTo(0.1);
    }
  }

  /** A rating that the words of the row mean. */
  private static double ratingIn(String applies) {
    List<Double> numbers = numbersIn(applies.replace("25 C", ""));
    if (applies.startsWith("rating > ")) {
      return numbers.get(0) == 50 ? 60 : 63;
    }
    return numbers.isEmpty() ? 20 : numbers.get(numbers.size() - 1);
  }

  private static List<Double> numbersIn(String text) {
    Matcher matcher = Pattern.compile("[0-9.]+").matcher(text);
    List<Double> numbers = new ArrayList<>();
    while (matcher.find()) {
      numbers.add(Double.parseDouble(matcher.group()));
    }
    return numbers;
  }

  /** Common practice, from memory: about 10 times the rating, makers vary from 5 to 20. */
  @Test
  void theInstantaneousBandOfAnUnstatedType() {
    TripCurve curve = curve("15 A");
    assertThat(curve.standard()).isEqualTo("UL 489");
    assertThat(curve.usualAmperes()).isEqualTo(150);
    assertThat(curve.at(74).leastSeconds()).isEqualTo(0.1);
    assertThat(curve.at(76).leastSeconds()).isZero();
    assertThat(curve.at(300).mostSeconds()).isEqualTo(0.1);
    assertThat(curve.at(299).mostSeconds()).isCloseTo(120 * 30 * 30 / 299.0 / 299, within(1e-9));
    assertThat(curve.bandCitations().get(0).verify()).isTrue();
    assertThat(curve.corners()).containsExactly(15.0, 20.25, 30.0, 75.0, 300.0);
  }

  @Test
  void aTimeIsARangeInWords() {
    assertThat(curve("20 A").at(20).text()).isEqualTo("never");
    assertThat(curve("20 A").at(40).text()).isEqualTo("0.1 to 120 s");
    assertThat(curve("20 A").at(500).text()).isEqualTo("0 to 0.1 s");
    assertThat(curve("20 A type-b").at(24).text()).isEqualTo("1 s to never");
    assertThat(curve("20 A").at(40).mostBound()).isEqualTo("UL 489: trips within 120 s at 2 × its rating, and for no more of I² × t above");
  }

  @Test
  void aFuseHasNoCurveOfABreakerButPointsOfItsStandard() {
    Compilation plan = Plans.compile(Plans.house("source available 10 kA", "15 A fuse", "by 14/2 NM-B { P --1 m-- r.one }"));
    var panel = plan.house().panels().get("P");
    assertThat(new TripCurves(plan.library()).of(panel.breakers().get(0), panel.system())).get()
        .satisfies(c -> assertThat(c.isFuse()).isTrue()).satisfies(c -> assertThat(c.standard()).isEqualTo("UL 248"));
  }

  private static final TripCurve TWENTY = curve("20 A");
  private static final TripCurve TYPE_D = curve("32 A type-d");

  @Property
  void moreCurrentNeverTakesLonger(@ForAll @DoubleRange(min = 0.1, max = 20000) double amperes,
      @ForAll @DoubleRange(min = 1, max = 50) double factor) {
    for (TripCurve curve : List.of(TWENTY, TYPE_D)) {
      ClearingTime slow = curve.at(amperes);
      ClearingTime fast = curve.at(amperes * factor);
      assertThat(fast.mostSeconds()).isLessThanOrEqualTo(slow.mostSeconds());
      assertThat(slow.leastSeconds()).isNotNaN().isLessThanOrEqualTo(slow.mostSeconds());
    }
  }
}
