package wattle.conductors;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.derivation.Derivation;
import wattle.model.Metal;
import wattle.quantity.WireSize;
import wattle.reference.Reference;

class SizesTest {
  private final Ampacities ampacities = new Ampacities(Tables.US);
  private final BreakerSizes breakers = new BreakerSizes(Tables.US);
  private final ConductorSizes sizes = new ConductorSizes(ampacities, breakers);
  private final GroundSizes grounds = new GroundSizes(Tables.US);

  private static Conditions cable(Metal metal) {
    return new Conditions(Tables.size("14"), metal, 90, 60, Tables.celsius(30), Tables.count(2));
  }

  private String largest(double ampacity, String size, boolean roundUp) {
    return breakers
        .largestFor(Tables.amperes(ampacity), Tables.size(size), Metal.COPPER, roundUp)
        .map(d -> d.value().text())
        .orElse("none");
  }

  /** NFPA 70 table 240.6(A). */
  @Test
  void everyStandardRatingIsItsOwnNext() {
    int seen = 0;
    for (Map<String, String> row : Reference.rows("overcurrent.csv")) {
      if (row.get("kind").equals("standard_rating")) {
        double rating = Double.parseDouble(row.get("value"));
        assertThat(breakers.notBelow(Tables.amperes(rating)).orElseThrow().si()).isEqualTo(rating);
        assertThat(breakers.notAbove(Tables.amperes(rating)).orElseThrow().si()).isEqualTo(rating);
        assertThat(breakers.notAbove(Tables.amperes(rating + 0.5)).orElseThrow().si()).isEqualTo(rating);
        assertThat(breakers.notBelow(Tables.amperes(rating - 0.5)).orElseThrow().si()).isEqualTo(rating);
        seen++;
      }
    }
    assertThat(seen).isGreaterThan(25);
    double[] above = {600, 700, 800, 1000, 1200, 1600, 2000, 2500, 3000, 4000, 5000, 6000};
    for (int i = 1; i < above.length; i++) {
      assertThat(breakers.notBelow(Tables.amperes(above[i - 1] + 0.5)).orElseThrow().si()).isEqualTo(above[i]);
      assertThat(breakers.notBelow(Tables.amperes(above[i])).orElseThrow().si()).isEqualTo(above[i]);
      assertThat(breakers.notAbove(Tables.amperes(above[i] - 0.5)).orElseThrow().si()).isEqualTo(above[i - 1]);
    }
    assertThat(breakers.notBelow(Tables.amperes(6001))).isEmpty();
    assertThat(breakers.notAbove(Tables.amperes(9))).isEmpty();
  }

  /** diychatroom.com 20038: 6 AWG cable has 55 A, and 60 A by the next size up; NFPA 70 240.4(B). */
  @Test
  void theNextRatingUpOnlyWhereItIsAllowed() {
    assertThat(largest(55, "6", true)).isEqualTo("60 A");
    assertThat(largest(55, "6", false)).isEqualTo("50 A");
    assertThat(largest(50, "6", true)).isEqualTo("50 A");
  }

  /** NFPA 70 240.4(D); CSA C22.1 14-104: whatever the ampacity. */
  @TestFactory
  List<DynamicTest> smallConductorsHaveACeiling() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("overcurrent.csv")) {
      if (row.get("kind").equals("max_breaker")) {
        String[] conductor = row.get("applies_to").split(" ");
        Metal metal = conductor[2].equals("copper") ? Metal.COPPER : Metal.ALUMINUM;
        BreakerSizes code = new BreakerSizes(row.get("table").startsWith("CSA") ? Tables.CA : Tables.US);
        tests.add(
            DynamicTest.dynamicTest(
                row.get("table") + " " + row.get("applies_to"),
                () -> assertThat(code.largestFor(Tables.amperes(40), Tables.size(conductor[0]), metal, true).orElseThrow().si())
                    .isEqualTo(Double.parseDouble(row.get("value")))));
      }
    }
    return tests;
  }

  @Test
  void aCeilingLowersAndNeverRaises() {
    assertThat(largest(12, "14", false)).isEqualTo("10 A");
    assertThat(largest(25, "14", true)).isEqualTo("15 A");
    assertThat(largest(25, "8", true)).isEqualTo("25 A");
  }

  /** NFPA 70 240.4(D) and table 310.16, 60 °C: 15 A 14, 20 A 12, 30 A 10, 40 A 8, 50 A 6 AWG copper; common practice. */
  @Test
  void theUsualCableForEachBreaker() {
    Map<Double, String> usual = Map.of(15.0, "14", 20.0, "12", 30.0, "10", 40.0, "8", 50.0, "6", 70.0, "4");
    usual.forEach(
        (rating, size) -> assertThat(sizes.forBreaker(Tables.amperes(rating), cable(Metal.COPPER), Optional.empty(), false))
            .as("%s A", rating)
            .hasValueSatisfying(d -> assertThat(d.value().text()).isEqualTo(size + " AWG")));
    assertThat(sizes.forBreaker(Tables.amperes(60), cable(Metal.COPPER), Optional.empty(), true).orElseThrow().value().text())
        .isEqualTo("6 AWG");
  }

  /** Technical Safety BC bulletin IB-EL 2016-07: 1 AWG aluminum for 100 A, by the 75 °C column of CSA table 4. */
  @Test
  void aluminumForOneHundredAmperes() {
    Ampacities ca = new Ampacities(Tables.CA);
    Conditions conditions = new Conditions(Tables.size("4"), Metal.ALUMINUM, 90, 90, Tables.celsius(30), Tables.count(3));
    Derivation found = new ConductorSizes(ca, new BreakerSizes(Tables.CA))
        .forCurrent(Tables.amperes(100), conditions, Optional.of(Tables.celsius(75)))
        .orElseThrow();
    assertThat(found.value().text()).isEqualTo("1 AWG");
  }

  @Test
  void theLeastSizeIsTheThinnestThatWillDo() {
    for (double amperes = 1; amperes <= 300; amperes += 3.5) {
      WireSize least = size(sizes.forCurrent(Tables.amperes(amperes), cable(Metal.COPPER), Optional.empty()).orElseThrow());
      for (WireSize size : ampacities.sizes(Metal.COPPER)) {
        double carried = ampacities.between(cable(Metal.COPPER).with(size), Tables.amperes(amperes), Optional.empty()).orElseThrow().si();
        assertThat(carried >= amperes).as("%s at %s A", size, amperes).isEqualTo(size.compareTo(least) >= 0);
      }
    }
    assertThat(sizes.forCurrent(Tables.amperes(5000), cable(Metal.COPPER), Optional.empty())).isEmpty();
  }

  private static WireSize size(Derivation derivation) {
    return Tables.size(derivation.value().text());
  }

  private String enlarged(String ground, String needed, String used) {
    List<WireSize> listed = ampacities.sizes(Metal.COPPER);
    return GroundSizes.enlarged(
        Derivation.stated("ground", "S_g", Tables.size(ground)), Tables.size(needed), Tables.size(used), listed)
        .map(d -> d.value().text())
        .orElse("none");
  }

  /**
   * NFPA 70 250.122(B). inwindustrialtraining.com, episode 32: hots 250 to 350 kcmil, ground 4 to 2 AWG. mepanet.com 287:
   * 3/0 to 500 kcmil, 6 to 1 AWG; 12 AWG to 1/0, 12 to 1/0; 8 to 1 AWG, 10 to 3 AWG.
   */
  @Test
  void theGroundGrowsWithTheHots() {
    assertThat(enlarged("4", "250", "350")).isEqualTo("2 AWG");
    assertThat(enlarged("6", "3/0", "500")).isEqualTo("1 AWG");
    assertThat(enlarged("12", "12", "1/0")).isEqualTo("1/0 AWG");
    assertThat(enlarged("10", "8", "1")).isEqualTo("3 AWG");
    // ecmag.com, equipment grounding controls: a 20 A circuit from 12 to 6 AWG has a ground of 6 AWG.
    assertThat(enlarged("12", "12", "6")).isEqualTo("6 AWG");
    // forums.mikeholt.com 47718: hots from 8 to 4 AWG, a ground of 10 AWG; the exact areas of four sizes more come to 6 AWG.
    assertThat(enlarged("10", "8", "4")).isEqualTo("6 AWG");
    assertThat(enlarged("10", "8", "8")).isEqualTo("10 AWG");
    assertThat(enlarged("10", "6", "8")).isEqualTo("10 AWG");
  }

  /** NFPA 70 250.66(A): a rod alone needs no more than 6 AWG; table 250.66 asks 4 AWG for 2/0, and 8 AWG for 2 AWG. */
  @Test
  void anElectrodeAloneHasItsOwnLimit() {
    assertThat(electrode("2/0", "rod")).isEqualTo("6 AWG");
    assertThat(electrode("2/0", "water-pipe")).isEqualTo("4 AWG");
    assertThat(electrode("2", "rod")).isEqualTo("8 AWG");
    assertThat(electrode("250", "concrete")).isEqualTo("4 AWG");
    assertThat(electrode("350", "ring")).isEqualTo("2 AWG");
    assertThat(electrode("500", "ring")).isEqualTo("2 AWG");
    assertThat(electrode("2/0", "ring")).isEqualTo("4 AWG");
    assertThat(electrode("500", "steel")).isEqualTo("1/0 AWG");
    assertThat(electrode("500", "plate")).isEqualTo("6 AWG");
  }

  /**
   * NFPA 70 table 250.66, note 1, by the whole area of sets in parallel. mikeholt.com, videodisplaynew 4152: three of 600 kcmil, 3/0.
   * forums.mikeholt.com, showthread 153038: two of 3/0, 335.6 kcmil, in the row to 350 kcmil, 2 AWG. dakotaprep.com, grounding electrode
   * conductor sizing: four of 250 kcmil and four of 500 kcmil, 2/0 and 3/0. The last row has no end: four of 600 kcmil have 3/0 too.
   */
  @Test
  void electrodeConductorsByTheWholeAreaOfSets() {
    assertThat(electrode("1800", "water-pipe")).isEqualTo("3/0 AWG");
    assertThat(electrode("335.6", "water-pipe")).isEqualTo("2 AWG");
    assertThat(electrode("1000", "water-pipe")).isEqualTo("2/0 AWG");
    assertThat(electrode("2000", "water-pipe")).isEqualTo("3/0 AWG");
    WireSize fourOfSixHundred = new WireSize(WireSize.Kind.KCMIL, 2400);
    assertThat(grounds.forElectrode(fourOfSixHundred, Metal.COPPER, "water-pipe", Metal.COPPER).orElseThrow().value().text())
        .isEqualTo("3/0 AWG");
  }

  private String electrode(String service, String kind) {
    return grounds.forElectrode(Tables.size(service), Metal.COPPER, kind, Metal.COPPER).orElseThrow().value().text();
  }

  /** NFPA 70-2020 table 310.12: 200 A takes 2/0 copper or 4/0 aluminum. NFPA 70 table 250.122: 60 A takes 10 AWG. */
  @Test
  void servicesAndGrounds() {
    assertThat(grounds.forService(Tables.amperes(200), Metal.COPPER).orElseThrow().value().text()).isEqualTo("2/0 AWG");
    assertThat(grounds.forService(Tables.amperes(200), Metal.ALUMINUM).orElseThrow().value().text()).isEqualTo("4/0 AWG");
    assertThat(grounds.forBreaker(Tables.amperes(60), Metal.COPPER).orElseThrow().value().text()).isEqualTo("10 AWG");
    assertThat(grounds.forBreaker(Tables.amperes(25), Metal.COPPER).orElseThrow().value().text()).isEqualTo("10 AWG");
    assertThat(grounds.forBreaker(Tables.amperes(1201), Metal.COPPER)).isEmpty();
  }
}
