package wattle.worksheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.nio.file.Path;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.faults.FaultKind;
import wattle.loads.LegLoads;
import wattle.model.Leg;
import wattle.read.SourceReader;

/** Invented houses on two legs and on three, against figures by hand; vectors by I² = a² + b² + ab for two currents 60° apart. */
class ThreePhaseHousesTest {
  private static final Path HOUSES = Path.of("src/test/resources/plans/legs");
  private static final Offset<Double> TENTH = within(0.05);
  private static final double ROOT = Math.sqrt(3);

  private static Compilation compile(String name) throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).compile(HOUSES.resolve(name + ".wattle"));
  }

  private static Worksheet service(Compilation plan) {
    HouseWorksheets sheets = plan.figures().worksheets();
    return sheets.least(sheets.services().get(0)).orElseThrow();
  }

  private static double line(Worksheet sheet, String name) {
    return sheet.lines().stream().filter(l -> l.name().startsWith(name)).flatMap(l -> l.result().stream()).mapToDouble(r -> r.si()).sum();
  }

  /**
   * A deck oven and a mixer on three legs, shop lights on leg A, a flat on legs B and C. By hand: oven 12 kW / (√3 × 208 V) = 33.3 A,
   * mixer of 5 hp 16.7 A (table 430.250) and a quarter more, lights 10 A. The flat: 3000 VA + 35 % of 3810 VA, heater 3 kW, range 8 kW, all
   * between B and C.
   */
  @Test
  void eachLineOfABakeryStandsOnItsOwnLegs() throws Exception {
    Worksheet sheet = service(compile("bakery"));
    double everywhere = 12000 / (ROOT * 208) + 1.25 * 16.7;
    assertThat(sheet.legs().get(Leg.A).si()).isEqualTo(everywhere + 10, TENTH);
    double flat = (3000 + 0.35 * 3810 + 3000 + 8000) / 208;
    double onB = Math.hypot(everywhere + flat * ROOT / 2, flat / 2);
    assertThat(sheet.legs().get(Leg.B).si()).isEqualTo(onB, TENTH);
    assertThat(sheet.legs().get(Leg.C).si()).isEqualTo(onB, TENTH);
    // Continuous: the oven and, on leg A, the lights; a quarter more of each, 215.2(A)(1), 230.42(A).
    assertThat(sheet.sized().si()).isEqualTo(onB + 0.25 * 12000 / (ROOT * 208), TENTH);
    // 220.61(A) and (B)(1): lights on A; general load and 70 % of the range on B and C.
    assertThat(sheet.neutralTotal().si()).isEqualTo(4333.5 + 1200 + 5600, within(0.5));
    assertThat(sheet.neutralCurrent().si()).isEqualTo((4333.5 + 5600) / 208, TENTH);
  }

  /** The fault at the board of the bakery: 75 kVA at 2 % and X/R 2, and 10 m of 3/0 (0.207 and 0.171 Ω/km, NFPA 70 chapter 9 table 9). */
  @Test
  void theFaultAtTheBoardOfTheBakery() throws Exception {
    double source = 0.02 * 208 * 208 / 75000;
    double resistance = source / Math.sqrt(5) + 0.010 * 0.207;
    double reactance = 2 * source / Math.sqrt(5) + 0.010 * 0.171;
    double amperes = 208 / ROOT / Math.hypot(resistance, reactance);
    assertThat(compile("bakery").figures().faults().panel("M").fault(FaultKind.THREE_PHASE).orElseThrow().mostAmperes())
        .isCloseTo(amperes, withinPercentage(1));
  }

  /**
   * Four flats, two of them between A and B: 220.55 and 220.54 by twice two, 220.55 column B 4 × 8 kW × 50 % = 16 kW and 20 kW of dryers,
   * half of each on every phase. General load: 3000 VA + 35 % of 25,080 VA, half of it between A and B.
   */
  @Test
  void aRowOfFourFlats() throws Exception {
    Worksheet sheet = service(compile("row"));
    assertThat(line(sheet, "cooking equipment")).isEqualTo(24000, within(0.5));
    assertThat(line(sheet, "clothes dryers")).isEqualTo(30000, within(0.5));
    double general = (3000 + 0.35 * 25080) / 208;
    double even = 54000 / (ROOT * 208);
    double onA = even + Math.sqrt(0.25 + 0.0625 + 0.125) * general;
    double onC = even + ROOT / 4 * general;
    assertThat(sheet.legs().get(Leg.A).si()).isEqualTo(onA, TENTH);
    assertThat(sheet.legs().get(Leg.B).si()).isEqualTo(onA, TENTH);
    assertThat(sheet.legs().get(Leg.C).si()).isEqualTo(onC, TENTH);
    assertThat(sheet.neutralCurrent().si()).isEqualTo(0.7 * even + onA - even, TENTH);
  }

  /** Two legs of a wye: 5436 VA to the neutral, 10,900 VA between the legs; by 208 V the whole is 78.5 A. No factor on the neutral. */
  @Test
  void aWalkUpWithFuses() throws Exception {
    Compilation plan = compile("walkup");
    Worksheet sheet = service(plan);
    assertThat(sheet.legs().get(Leg.A).si()).isEqualTo(5436 / 240.0 + 10900 / 208.0, TENTH);
    assertThat(sheet.current().si()).isEqualTo(16336 / 208.0, TENTH);
    assertThat(sheet.neutralCurrent().si()).isEqualTo(11836 / 208.0, TENTH);
    // 4.5 kW at 240 V: 4.5 × (208/240)² = 3.38 kW, 16.25 A, and 0.83 A of light on one leg, 30° from it.
    LegLoads up = plan.figures().loads().panel("U");
    double volts = plan.house().panels().get("U").system().legToLegVolts();
    assertThat(volts).isEqualTo(208, within(0.2));
    double heater = 4500 * Math.pow(208 / 240.0, 2) / 208;
    assertThat(up.amperes(Leg.A, plan.house().panels().get("U").system()))
        .isEqualTo(Math.hypot(heater * ROOT / 2 + 100 / 120.0, heater / 2), TENTH);
  }

  /** 9 kW and 2.75 kVA at a power factor of 0.8 between three legs of 400 V, 2.3 kW on leg A: 13.0 + 3.97 ∠ 36.9° + 10 A. */
  @Test
  void aHouseOnTwoHundredThirtyVolts() throws Exception {
    Compilation plan = compile("metric");
    LegLoads load = plan.figures().loads().panel("P");
    double pump = 2750 / (ROOT * 400);
    double onA = Math.hypot(9000 / (ROOT * 400) + 0.8 * pump + 10, 0.6 * pump);
    assertThat(load.amperes(Leg.A, plan.house().panels().get("P").system())).isCloseTo(onA, withinPercentage(0.5));
    // 10, 5 and 1 A to the neutral: √(A² + B² + C² − AB − BC − CA).
    assertThat(load.neutralAmperes(plan.house().panels().get("P").system()))
        .isCloseTo(Math.sqrt(100 + 25 + 1 - 50 - 5 - 10), withinPercentage(1));
  }
}
