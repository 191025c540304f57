package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** A computation that could not be done is a finding that says why and what to state; where a lower bound will do, it is judged by that. */
class UnknownIsSaidTest {
  private static final String SHOP = """
      plan "Larch Yard" revision "A"
      use code us-2023
      dwelling { storeys 1 }
      service main 120/240 V 200 A { source transformer 50 kVA 2 %   run 20 m of 4/0 Al triplex   earth rods by 6 Cu 20 ohm }
      panel P from main { bus 200 A   slots 20   bonded   main breaker 200 A 22 kA
        1+3  60 A 10 kA two-pole  S  "Shop"
        2    15 A arc-fault  hall  "Hall" }
      panel S from P/1 by 20 m of 6/3 NM-B { bus 100 A   slots 8   main breaker 60 A 10 kA
        1+3  50 A two-pole  charger  "Charger"
        2+4  30 A two-pole  saw      "Saw"
        5    15 A           lights   "Lights" }
      branch hall    by 14/2 NM-B { P --5 m-- hall.lamp }
      branch charger by 6/2 NM-B  { S --5 m-- shop.charger }
      branch saw     by 10/2 NM-B { S --5 m-- shop.saw }
      branch lights  by 14/2 NM-B { S --5 m-- shop.lamp }
      room hall "Hall" is hall area 8 m2 { lamp: light 40 W }
      room shop "Shop" is workshop { charger: vehicle charger 40 A   saw: table saw 16 A 240 V   lamp: light 100 W }
      """;

  private static final Pattern BOUND = Pattern
      .compile("; by UL 248 it may take up to ([0-9.]+) s over ([0-9.]+) A, which the 14 AWG wire withstands for ([0-9.]+) s");

  private static List<Finding> facts(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("plan", text), Path.of("plan.wattle")).facts();
  }

  private static Optional<Finding> found(String rule, String text) {
    return facts(text).stream().filter(f -> f.rule().equals(rule)).findFirst();
  }

  private static Optional<Finding> ofFeeder(String text) {
    return facts(text).stream().filter(f -> f.rule().equals("calculated-load-unknown") && f.subject().equals(Optional.of("S"))).findFirst();
  }

  /** 40 A at 125 % (NFPA 70 625.42, 215.2(A)(1)) and the saw with a quarter more (430.24) are 50 A + 20 A on each leg. */
  @Test
  void aFeederIsHeldAgainstWhatIsStatedWhereAnAreaIsMissing() {
    Finding finding = found("feeder-below-load", SHOP).orElseThrow();
    assertThat(finding.severity()).isEqualTo(Severity.ERROR);
    assertThat(finding.headline()).contains("rated 60 A and its calculated load is at least 70 A");
    assertThat(finding.reason()).contains("The area of room 'shop' is not stated");
    assertThat(finding.fixes()).extracting(f -> f.order()).anyMatch(o -> o.startsWith("write area 14 m2"));
  }

  /** A charger counts for 7200 VA at least (NFPA 70-2023 220.57), the saw 1920 VA with a quarter more (430.24). */
  @Test
  void whereTheLeastWillDoTheGapIsSaidAsAdvice() {
    String small = SHOP.replace("vehicle charger 40 A", "vehicle charger 16 A").replace("table saw 16 A", "table saw 8 A");
    assertThat(found("feeder-below-load", small)).isEmpty();
    Finding finding = ofFeeder(small).orElseThrow();
    assertThat(finding.severity()).isEqualTo(Severity.ADVICE);
    assertThat(finding.headline()).isEqualTo("the calculated load of the feeder of 'S' is not known");
    assertThat(finding.reason()).contains("The area of room 'shop' is not stated").contains("9600 VA, 40 A of 60 A");
  }

  @Test
  void anAreaThatIsStatedEndsIt() {
    assertThat(ofFeeder(SHOP.replace("is workshop {", "is workshop area 30 m2 {"))).isEmpty();
    assertThat(facts(SHOP.replace("storeys 1", "storeys 1   floor-area 120 m2"))).extracting(Finding::rule)
        .doesNotContain("calculated-load-unknown");
  }

  @Test
  void aServiceOfADwellingWithoutFloorAreaIsHeldAgainstTheRest() {
    String bare = SHOP.replace("120/240 V 200 A", "120/240 V 60 A");
    Finding finding = found("service-below-load", bare).orElseThrow();
    assertThat(finding.headline()).contains("rated 60 A and its calculated load is at least ");
    assertThat(finding.reason()).contains("The floor area of");
  }

  @Test
  void aServiceWithoutASourceOrARunSaysWhatWasNotChecked() {
    Finding source = found("fault-current-unknown", SHOP.replace("source transformer 50 kVA 2 %", "")).orElseThrow();
    assertThat(source.reason()).contains("whether breakers and fuses can interrupt a fault");
    assertThat(found("service-run-unstated", SHOP.replace("run 20 m of 4/0 Al triplex", ""))).isPresent();
    String available = SHOP.replace("source transformer 50 kVA 2 %   run 20 m of 4/0 Al triplex", "source available 8 kA");
    assertThat(found("service-run-unstated", available)).as("the fault current at the service itself needs no run").isEmpty();
    assertThat(facts(SHOP)).extracting(Finding::rule).doesNotContain("fault-current-unknown", "service-run-unstated");
  }

  @Test
  void aFuseWithoutACurveIsSaidWithTheLeastFaultItMustOpen() {
    Finding fuse = found("clearing-time-unknown", SHOP.replace("2    15 A arc-fault", "2    15 A fuse")).orElseThrow();
    assertThat(fuse.subject()).contains("P/2");
    assertThat(fuse.place().orElseThrow().words()).startsWith("least fault ").contains("as far as hall.lamp");
    assertThat(found("clearing-time-unknown", SHOP)).isEmpty();
  }

  /** UL 248-14: 200 % within 120 s up to 30 A, so that a 15 A fuse lets through at most 120 s × (30 A)² = 108,000 A²s. */
  @Test
  void whatTheStandardOfAFuseBoundsIsHeldAgainstTheWire() {
    String fuse = SHOP.replace("2    15 A arc-fault", "2    15 A fuse");
    Finding open = found("clearing-time-unknown", fuse).orElseThrow();
    assertThat(open.reason()).contains("UL 248 alone lets through more than the wire withstands");
    Matcher words = BOUND.matcher(open.place().orElseThrow().words());
    assertThat(words.find()).isTrue();
    double amperes = Double.parseDouble(words.group(2));
    assertThat(Double.parseDouble(words.group(1)) * amperes * amperes).isCloseTo(108_000, Percentage.withPercentage(8));
    // 14 AWG, 2.08 mm², with thermoplastic insulation of 90 °C: k = 100 (IEC 60364-4-43 Table 43A), 43,300 A²s; 12 AWG 109,600 A²s.
    assertThat(Double.parseDouble(words.group(3)) * amperes * amperes).isCloseTo(43_300, Percentage.withPercentage(8));
    assertThat(found("clearing-time-unknown", fuse.replace("branch hall    by 14/2", "branch hall    by 12/2")))
        .as("12 AWG withstands all that UL 248 lets a 15 A fuse take").isEmpty();
    // A fault below 1.1 times its rating need never be opened.
    Finding never = found("clearing-time-unknown",
        fuse.replace("branch hall    by 14/2", "branch hall    by 12/2").replace("P --5 m-- hall",
            "P --900 m-- hall"))
        .orElseThrow();
    assertThat(never.place().orElseThrow().words()).contains("; by UL 248 it may hold ");
  }

  @Test
  void aCodeWithoutALoadCalculationSaysSo() {
    Finding finding = found("calculated-load-unknown", SHOP.replace("use code us-2023", "use code common")).orElseThrow();
    assertThat(finding.subject()).contains("main");
    assertThat(finding.reason()).contains("Code pack common has no method of load calculation");
    assertThat(found("calculated-load-unknown", SHOP.replace("use code us-2023", ""))).as("no code is named").isEmpty();
  }

  /** A table of the plan's own that has a method for one dwelling alone. */
  @Test
  void dwellingsThatNoMethodIsForAreSaid() {
    String own = SHOP.replace("dwelling { storeys 1 }", """
        table worksheet-methods "Methods" { source "invented" "1"
          columns method mechanism place title
          single dwelling-standard "1" "Single dwelling" }
        dwelling { floor-area 100 m2   dwellings 3 }""");
    Finding finding = found("calculated-load-unknown", own).orElseThrow();
    assertThat(finding.reason()).contains("No method of the code is for what is on 'main', 3 dwellings");
  }

  @Test
  void aPlanWithoutADwellingSaysWhatIsMissingAndIsHeldAgainstTheRest() {
    String none = SHOP.replace("dwelling { storeys 1 }", "");
    Finding finding = found("calculated-load-unknown", none).orElseThrow();
    assertThat(finding.reason()).contains("No method here is for a workplace such as that on 'main'");
    // With a bedroom it is a dwelling that the plan does not describe.
    Finding dwelling = found("calculated-load-unknown", none + "\nroom bed is bedroom { j: junction }\n").orElseThrow();
    assertThat(dwelling.reason()).contains("The plan does not describe the dwelling on 'main'");
    assertThat(found("feeder-below-load", none)).as("a part of a building is calculated by what is stated").isPresent();
    assertThat(found("service-below-load", none.replace("120/240 V 200 A", "120/240 V 30 A")).orElseThrow().headline())
        .contains("its calculated load is at least ");
  }

  @Test
  void aServiceWithoutARatingSaysWhatItsLoadIs() {
    String unrated = SHOP.replace("120/240 V 200 A", "120/240 V").replace("main breaker 200 A 22 kA\n  1+3", "main lugs\n  1+3")
        .replace("storeys 1", "floor-area 100 m2").replace("is workshop {", "is workshop area 30 m2 {");
    Finding finding = found("supply-rating-unknown", unrated).orElseThrow();
    assertThat(finding.subject()).contains("main");
    assertThat(finding.figures()).containsKey("current");
    assertThat(found("supply-rating-unknown", unrated.replace("120/240 V {", "120/240 V 200 A {"))).isEmpty();
    Finding feeder = found("supply-rating-unknown", unrated.replace("1+3  60 A 10 kA two-pole  S", "1+3  later two-pole  S")
        .replace("120/240 V {", "120/240 V 200 A {")).orElseThrow();
    assertThat(feeder.subject()).contains("S");
  }

  /** No table lists odd gauges. */
  @Test
  void aWireWithoutAnAmpacityIsSaid() {
    assertThat(found("ampacity-unknown", SHOP.replace("branch saw     by 10/2", "branch saw     by 11/2"))).isPresent();
    assertThat(found("feeder-ampacity-unknown", SHOP.replace("6/3 NM-B {", "7/3 NM-B {"))).isPresent();
    assertThat(found("service-ampacity-unknown", SHOP.replace("4/0 Al triplex", "5 Al triplex"))).isPresent();
    assertThat(facts(SHOP)).extracting(Finding::rule)
        .doesNotContain("ampacity-unknown", "feeder-ampacity-unknown", "service-ampacity-unknown");
    String canadian = SHOP.replace("us-2023", "ca-2021");
    assertThat(found("ampacity-unknown", canadian.replace("branch saw     by 10/2", "branch saw     by 11/2"))).isPresent();
  }

  @Test
  void aMistakeThatHidesTheAreaIsNotAGapOfItsOwn() {
    String mistaken = SHOP.replace("is workshop {", "is workshop area 30 {");
    assertThat(facts(mistaken)).extracting(Finding::rule).contains("unit-missing");
    assertThat(ofFeeder(mistaken)).isEmpty();
  }
}
