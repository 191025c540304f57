package wattle.conductors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import wattle.conductors.RacewayFill.Conductor;
import wattle.library.StandardLibrary;
import wattle.model.Metal;
import wattle.model.Race;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/** How full raceways are, against published examples and the printed columns of NFPA 70 Chapter 9 Table 4. */
class RacewayFillTest {
  private final RacewayFill fill = new RacewayFill(StandardLibrary.library(List.of("us-2023")));

  private static List<Conductor> wires(Object... countSizeType) {
    List<Conductor> wires = new ArrayList<>();
    for (int i = 0; i < countSizeType.length; i += 3) {
      for (int n = 0; n < (int) countSizeType[i]; n++) {
        wires.add(new Conductor((String) countSizeType[i + 2], WireSize.parse((String) countSizeType[i + 1]).orElseThrow(), Metal.COPPER));
      }
    }
    return wires;
  }

  private RacewayFill.Fill in(double inches, String kind, double lengthInches, List<Conductor> wires) {
    Race race = new Race("", kind, Quantity.of(inches, Units.INCH));
    return fill.of(race, Optional.of(Quantity.of(lengthInches, Units.INCH)), wires).orElseThrow();
  }

  private String least(String kind, boolean nipple, List<Conductor> wires) {
    return fill.smallest(kind, nipple, wires).orElseThrow().value().text();
  }

  /** steeltubeinstitute.org, NEC Conduit and EMT Fill Tables: 0.4171 in² goes into 1-1/4 EMT, which may hold 0.598 in². */
  @Test
  void mixedSizesTakeTheRacewayOfThePublishedExample() {
    List<Conductor> wires = wires(3, "12", "THWN", 4, "10", "THWN", 8, "8", "THWN");
    RacewayFill.Fill inOneAndAQuarter = in(1.25, "EMT", 120, wires);
    assertThat(inOneAndAQuarter.needs().value().text()).isEqualTo("0.4171 in²");
    assertThat(inOneAndAQuarter.room().value().text()).isEqualTo("0.598 in²");
    assertThat(inOneAndAQuarter.over()).isFalse();
    assertThat(in(1, "EMT", 120, wires).over()).isTrue();
    assertThat(least("EMT", false, wires)).isEqualTo("1-1/4 in EMT");
  }

  /** NFPA 70 Annex C, Tables C.1 and C.11: the most of one size; one more is too many. */
  @Test
  void alikeConductorsAreCountedAsAnnexCDoes() {
    for (Object[] row : new Object[][]{{0.5, "EMT", "14", 12}, {0.5, "EMT", "12", 9}, {0.5, "EMT", "10", 5}, {0.75, "EMT", "12", 16},
        {0.75, "EMT", "10", 10}, {1.0, "EMT", "8", 9}, {1.0, "EMT", "6", 7}, {2.0, "EMT", "4/0", 4}}) {
      int most = (int) row[3];
      assertThat(in((double) row[0], (String) row[1], 120, wires(most, row[2], "THHN")).over()).as("%s %s", row[0], row[2]).isFalse();
      assertThat(in((double) row[0], (String) row[1], 120, wires(most + 1, row[2], "THHN")).over()).as("%s %s", row[0], row[2]).isTrue();
    }
  }

  /** NFPA 70 Chapter 9 Table 1, and note 4: 53 % for one, 31 % for two, 40 % for more, 60 % up to 24 in. */
  @Test
  void thePartDependsOnHowManyAndOnTheLength() {
    assertThat(in(0.5, "EMT", 120, wires(1, "12", "THHN")).most().si()).isEqualTo(0.53);
    assertThat(in(0.5, "EMT", 120, wires(2, "12", "THHN")).most().si()).isEqualTo(0.31);
    assertThat(in(0.5, "EMT", 120, wires(3, "12", "THHN")).most().si()).isEqualTo(0.40);
    assertThat(in(0.5, "EMT", 24, wires(3, "12", "THHN")).most().si()).isEqualTo(0.60);
    assertThat(in(0.5, "EMT", 25, wires(3, "12", "THHN")).most().si()).isEqualTo(0.40);
    // 3 × 0.0507 + 0.0211 = 0.1732 in² of 0.304: more than 0.122 in², not more than 0.182.
    List<Conductor> charger = wires(3, "6", "THHN", 1, "10", "THHN");
    assertThat(in(0.5, "EMT", 120, charger).over()).isTrue();
    assertThat(in(0.5, "EMT", 20, charger).over()).isFalse();
    assertThat(in(0.5, "EMT", 20, charger).fill().si()).isCloseTo(0.57, within(0.001));
  }

  /** The 40 % column of NFPA 70-2023 Chapter 9 Table 4, in square inches, of the smallest, a middle and the largest size. */
  @Test
  void theRoomIsThatOfThePrintedTable() {
    for (Object[] row : new Object[][]{{"EMT", 0.5, 0.122}, {"EMT", 2.5, 2.343}, {"EMT", 4.0, 5.901}, {"ENT", 1.0, 0.333},
        {"FMC", 0.375, 0.046}, {"FMC", 1.25, 0.511}, {"IMC", 0.75, 0.235}, {"IMC", 3.0, 3.169}, {"LFMC", 0.5, 0.125}, {"LFNC", 2.0, 1.298},
        {"PVC", 0.5, 0.114}, {"PVC", 2.0, 1.316}, {"PVC", 6.0, 11.427}, {"PVC-80", 0.5, 0.087}, {"PVC-80", 2.0, 1.150},
        {"RMC", 1.5, 0.829}, {"RMC", 6.0, 11.663}, {"HDPE", 3.0, 2.907}}) {
      double room = in((double) row[1], (String) row[0], 120, wires(3, "14", "THHN")).room().quantity().orElseThrow().in(
          Units.find("in²").orElseThrow());
      assertThat(room).as("%s %s", row[0], row[1]).isCloseTo((double) row[2], within(1e-9));
    }
  }

  /** Areas of NFPA 70-2008 Chapter 9 Table 5. */
  @Test
  void insulationHasItsOwnThickness() {
    assertThat(in(2, "EMT", 120, wires(1, "6", "THW")).needs().value().text()).isEqualTo("0.0726 in²");
    assertThat(in(2, "EMT", 120, wires(1, "6", "XHHW-2")).needs().value().text()).isEqualTo("0.059 in²");
    assertThat(in(2, "EMT", 120, wires(1, "6", "THWN-2")).needs().value().text()).isEqualTo("0.0507 in²");
    assertThat(fill.of(new Race("", "EMT", Quantity.of(2, Units.INCH)), Optional.empty(), wires(1, "6", ""))).isEmpty();
  }

  @Test
  void metricDesignatorsNameTheSameRaceways() {
    Race metric = new Race("", "EMT", Quantity.of(21, Units.MILLIMETER));
    assertThat(fill.of(metric, Optional.empty(), wires(3, "12", "THHN")).orElseThrow().room().value().text()).isEqualTo("0.213 in²");
    assertThat(fill.isUnlisted(new Race("", "EMT", Quantity.of(0.625, Units.INCH)))).isTrue();
    assertThat(fill.isUnlisted(new Race("", "wireway", Quantity.of(4, Units.INCH)))).isFalse();
  }

  private static List<Conductor> in(Metal metal, List<Conductor> wires) {
    return wires.stream().map(w -> new Conductor(w.insulation(), w.size(), metal)).toList();
  }

  /**
   * Areas of NFPA 70 Chapter 9 Table 5A, from memory; each follows from its diameter: 3 × 0.2734 in² of 4/0 XHHW-2, printed as 0.2733,
   * where other wire takes 3 × 0.3197 in². A size that is not made compact is taken as other wire: 12 AWG 0.0181 in².
   */
  @Test
  void compactAluminumIsThinner() {
    List<Conductor> service = in(Metal.ALUMINUM, wires(3, "4/0", "XHHW-2"));
    assertThat(in(2, "EMT", 120, service).needs().value().text()).isEqualTo("0.8202 in²");
    assertThat(in(2, "EMT", 120, wires(3, "4/0", "XHHW-2")).needs().value().text()).isEqualTo("0.9591 in²");
    for (Object[] row : new Object[][]{{"8", "THW", 0.0510}, {"6", "THWN-2", 0.0452}, {"2", "XHHW-2", 0.1017}, {"2/0", "XHHW", 0.1885},
        {"250", "THHN", 0.3525}, {"500", "XHHW-2", 0.6082}, {"12", "XHHW-2", 0.0181}}) {
      double area = in(4, "EMT", 120, in(Metal.ALUMINUM, wires(1, row[0], row[1]))).needs().quantity().orElseThrow()
          .in(Units.find("in²").orElseThrow());
      assertThat(area).as("%s %s", row[0], row[1]).isCloseTo((double) row[2], within(0.00011));
    }
  }

  private final RacewayFill canadian = new RacewayFill(StandardLibrary.library(List.of("ca-2021")));

  private String canadianLeast(String kind, List<Conductor> wires) {
    return canadian.smallest(kind, false, wires).orElseThrow().value().text();
  }

  private RacewayFill.Fill canadianIn(double designator, String kind, List<Conductor> wires) {
    return canadian.of(new Race("", kind, Quantity.of(designator, Units.MILLIMETER)), Optional.empty(), wires).orElseThrow();
  }

  /**
   * CSA C22.1 12-910 with Tables 6, 8 and 9. ebmag.com, Code File December 2022: four 10 AWG RW90 go into EMT of 16, of 15.69 mm² each, as
   * 47.08 mm² for three. dakotaprep.com, conduit fill: three 6 AWG RW90 of 38 mm² go into rigid metal of 21, eight 3 AWG TW of 73 mm² into
   * EMT of 53, and six 12 AWG take 69.50 mm². iaeimagazine.org: ten 14 AWG take 88.67 mm².
   */
  @Test
  void canadianRaceways() {
    assertThat(canadianIn(16, "EMT", wires(3, "10", "RW90")).needs().quantity().orElseThrow().in(Units.SQUARE_MILLIMETER))
        .isCloseTo(47.08, within(0.011));
    assertThat(canadianIn(16, "EMT", wires(4, "10", "RW90")).over()).isFalse();
    assertThat(canadianIn(16, "EMT", wires(5, "10", "RW90")).over()).isTrue();
    assertThat(canadianIn(27, "EMT", wires(6, "12", "RW90")).needs().quantity().orElseThrow().in(Units.SQUARE_MILLIMETER))
        .isCloseTo(69.50, within(0.03));
    assertThat(canadianIn(27, "EMT", wires(10, "14", "RW90")).needs().quantity().orElseThrow().in(Units.SQUARE_MILLIMETER))
        .isCloseTo(88.67, within(0.04));
    assertThat(canadianLeast("RMC", wires(3, "6", "RW90"))).isEqualTo("21 mm RMC");
    assertThat(canadianLeast("EMT", wires(8, "3", "TW"))).isEqualTo("53 mm EMT");
    assertThat(canadianIn(16, "EMT", wires(2, "12", "RW90")).most().si()).isEqualTo(0.31);
    assertThat(canadianIn(16, "EMT", wires(1, "12", "RW90")).most().si()).isEqualTo(0.53);
    assertThat(canadian.isNipple(Optional.of(Quantity.of(1, Units.INCH)))).isFalse();
    Race inInches = new Race("", "EMT", Quantity.of(0.5, Units.INCH));
    assertThat(canadian.of(inInches, Optional.empty(), wires(3, "10", "RW90")).orElseThrow().room().value().text()).isEqualTo("74.51 mm²");
  }

  /**
   * A diameter is that of the strand, NFPA 70 Chapter 9 Table 8, and twice the insulation of CSA C22.2 No. 38: 0.76 mm, from 8 AWG 1.14 mm,
   * from 1 AWG 1.40 mm, from 250 kcmil 1.65 mm, from 600 kcmil 2.03 mm.
   */
  @Test
  void canadianDiametersFollowFromStrandAndInsulation() {
    Object[][] strands = {{"14", 0.073, 0.76}, {"10", 0.116, 0.76}, {"8", 0.146, 1.14}, {"6", 0.184, 1.14}, {"4", 0.232, 1.14},
        {"3", 0.260, 1.14}, {"2", 0.292, 1.14}, {"1", 0.332, 1.40}, {"1/0", 0.372, 1.40}, {"2/0", 0.418, 1.40}, {"3/0", 0.470, 1.40},
        {"4/0", 0.528, 1.40}, {"250", 0.575, 1.65}, {"300", 0.630, 1.65}, {"400", 0.728, 1.65}, {"500", 0.813, 1.65}, {"600", 0.893, 2.03},
        {"750", 0.998, 2.03}};
    for (Object[] strand : strands) {
      double diameter = 25.4 * (double) strand[1] + 2 * (double) strand[2];
      double area = canadianIn(103, "EMT", wires(1, strand[0], "RW90")).needs().quantity().orElseThrow().in(Units.SQUARE_MILLIMETER);
      assertThat(2 * Math.sqrt(area / Math.PI)).as("%s", strand[0]).isCloseTo(diameter, within(0.03));
    }
  }
}
