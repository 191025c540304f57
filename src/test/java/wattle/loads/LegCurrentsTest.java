package wattle.loads;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.ejml.simple.SimpleMatrix;
import org.junit.jupiter.api.Test;
import wattle.model.Leg;
import wattle.model.SupplySystem;
import wattle.network.Complex;

/** Currents of legs and neutral by vectors, against hand figures, an identity and a general linear solver. */
class LegCurrentsTest {
  private static final SupplySystem SPLIT = new SupplySystem(SupplySystem.Kind.SPLIT_PHASE, 120, 240);
  private static final SupplySystem WYE = new SupplySystem(SupplySystem.Kind.THREE_PHASE_WYE, 120, 208);
  private static final SupplySystem A_C = WYE.on(List.of(Leg.A, Leg.C));

  private static LegLoads one(Ends ends, double voltAmperes) {
    return new LegLoads(Map.of(ends, Flow.of(voltAmperes, 1)), 0);
  }

  /** Common practice: P / 208 in both legs, nothing in the neutral; half of the volt-amperes are counted on each. */
  @Test
  void aLoadBetweenTwoLegsOfAWyeCarriesItsOwnCurrentInBoth() {
    LegLoads heater = one(Ends.C_A, 4500);
    assertThat(heater.amperes(Leg.A, A_C)).isCloseTo(21.63, within(0.01));
    assertThat(heater.amperes(Leg.C, A_C)).isCloseTo(21.63, within(0.01));
    assertThat(heater.neutralAmperes(A_C)).isZero();
    assertThat(List.of(heater.on(Leg.A), heater.on(Leg.B), heater.on(Leg.C))).containsExactly(2250.0, 0.0, 2250.0);
  }

  /** Common practice: 120/240 V, a 4.5 kW heater is 18.75 A; and 10 A on one half come on top in its leg and in the neutral alone. */
  @Test
  void onThreeWiresAllCurrentsAreInOneLine() {
    LegLoads house = one(Ends.A_B, 4500).plus(one(Ends.A_N, 1200));
    assertThat(house.amperes(Leg.A, SPLIT)).isCloseTo(28.75, within(1e-9));
    assertThat(house.amperes(Leg.B, SPLIT)).isCloseTo(18.75, within(1e-9));
    assertThat(house.neutralAmperes(SPLIT)).isCloseTo(10, within(1e-9));
  }

  /** A panel on two legs of a wye has a three-wire supply: equal loads on both do not cancel in its neutral. NFPA 70 310.15(E)(2). */
  @Test
  void theNeutralOfTwoLegsOfAWyeCarriesAsMuchAsAHot() {
    assertThat(A_C.kind()).isEqualTo(SupplySystem.Kind.TWO_LEGS_OF_WYE);
    assertThat(A_C.legs()).containsExactly(Leg.A, Leg.C);
    LegLoads lights = one(Ends.A_N, 6000).plus(one(Ends.C_N, 6000));
    assertThat(lights.neutralAmperes(A_C)).isCloseTo(50, within(1e-9));
    assertThat(lights.amperes(Leg.A, A_C)).isCloseTo(50, within(1e-9));
    assertThat(lights.imbalance(A_C)).as("leg B is not there, and counts for nothing").isZero();
  }

  /** Common practice: 100 A between A and B and 100 A between B and C are 173 A in B. */
  @Test
  void twoPairsThatShareALegLoadItByTheRootOfThree() {
    LegLoads flats = one(Ends.A_B, 20800).plus(one(Ends.B_C, 20800));
    assertThat(flats.amperes(Leg.B, WYE)).isCloseTo(173.2, within(0.01));
    assertThat(flats.amperes(Leg.A, WYE)).isCloseTo(100, within(1e-9));
    assertThat(flats.heaviestAmperes(WYE)).isCloseTo(173.2, within(0.01));
  }

  @Test
  void oneLegOfASupplyStaysOneLegOfIt() {
    SupplySystem leg = SPLIT.on(List.of(Leg.B));
    assertThat(leg.kind()).isEqualTo(SupplySystem.Kind.ONE_LEG);
    assertThat(leg.text()).isEqualTo("120 V");
    assertThat(one(Ends.B_N, 1200).amperes(Leg.B, leg)).isCloseTo(10, within(1e-9));
    assertThat(SPLIT.on(List.of(Leg.A, Leg.B))).isEqualTo(SPLIT);
  }

  /** I_n² = A² + B² + C² − AB − BC − CA, for currents of one power factor: handbooks of unbalanced wye loads. */
  @Property(tries = 100, edgeCases = net.jqwik.api.EdgeCasesMode.NONE)
  void theNeutralIsThatOfTheIdentity(
      @ForAll @DoubleRange(min = 0, max = 400) double a, @ForAll @DoubleRange(min = 0, max = 400) double b,
      @ForAll @DoubleRange(min = 0, max = 400) double c, @ForAll @DoubleRange(min = 0.5, max = 1) double powerFactor) {
    Map<Ends, Flow> flows = new EnumMap<>(Ends.class);
    flows.put(Ends.A_N, Flow.of(120 * a, powerFactor));
    flows.put(Ends.B_N, Flow.of(120 * b, powerFactor));
    flows.put(Ends.C_N, Flow.of(120 * c, powerFactor));
    double identity = Math.sqrt(Math.max(0, a * a + b * b + c * c - a * b - b * c - c * a));
    assertThat(new LegLoads(flows, 0).neutralAmperes(WYE)).isCloseTo(identity, within(1e-6 + 1e-9 * identity));
  }

  /** The same loads as admittances behind a stiff source, solved as a full nodal matrix by a general linear solver. */
  @Property(tries = 60, edgeCases = net.jqwik.api.EdgeCasesMode.NONE)
  void aGeneralLinearSolverFindsTheSameCurrents(
      @ForAll @Size(6) List<@DoubleRange(min = 0, max = 20000) Double> loads,
      @ForAll @Size(6) List<@DoubleRange(min = 0.6, max = 1) Double> factors) {
    Map<Ends, Flow> flows = new EnumMap<>(Ends.class);
    for (Ends ends : Ends.values()) {
      flows.put(ends, Flow.of(loads.get(ends.ordinal()), factors.get(ends.ordinal())));
    }
    LegLoads all = new LegLoads(flows, 0);
    double line = 120 * Math.sqrt(3); // exact, so that both see one set of voltages
    SupplySystem exact = new SupplySystem(SupplySystem.Kind.THREE_PHASE_WYE, 120, line);
    Complex[] currents = solved(flows, line);
    for (Leg leg : Leg.values()) {
      assertThat(all.amperes(leg, exact)).isCloseTo(currents[leg.ordinal()].magnitude(), within(1e-3));
    }
    assertThat(all.neutralAmperes(exact)).isCloseTo(currents[3].magnitude(), within(1e-3));
  }

  private static final double STIFF = 1e6;

  /** Currents that come from the source over legs A, B, C and the neutral, nodes 0 to 3. */
  private static Complex[] solved(Map<Ends, Flow> flows, double line) {
    SimpleMatrix matrix = new SimpleMatrix(8, 8);
    SimpleMatrix right = new SimpleMatrix(8, 1);
    Complex[] source = {Complex.polar(120, 0), Complex.polar(120, -120), Complex.polar(120, 120), Complex.ZERO};
    for (int node = 0; node < 4; node++) {
      stamp(matrix, node, node, new Complex(STIFF, 0));
      right.set(2 * node, 0, source[node].re() * STIFF);
      right.set(2 * node + 1, 0, source[node].im() * STIFF);
    }
    flows.forEach((ends, flow) -> {
      double volts = ends.legs().size() == 1 ? 120 : line;
      Complex admittance = flow.power().conjugate().times(1 / (volts * volts));
      int from = ends.legs().get(0).ordinal();
      int to = ends.legs().size() == 1 ? 3 : ends.legs().get(1).ordinal();
      stamp(matrix, from, from, admittance);
      stamp(matrix, to, to, admittance);
      stamp(matrix, from, to, admittance.times(-1));
      stamp(matrix, to, from, admittance.times(-1));
    });
    SimpleMatrix volts = matrix.solve(right);
    Complex[] currents = new Complex[4];
    for (int node = 0; node < 4; node++) {
      currents[node] = source[node].minus(new Complex(volts.get(2 * node, 0), volts.get(2 * node + 1, 0))).times(STIFF);
    }
    return currents;
  }

  /** An admittance as the two by two block of its real and imaginary parts. */
  private static void stamp(SimpleMatrix matrix, int row, int column, Complex admittance) {
    add(matrix, 2 * row, 2 * column, admittance.re());
    add(matrix, 2 * row, 2 * column + 1, -admittance.im());
    add(matrix, 2 * row + 1, 2 * column, admittance.im());
    add(matrix, 2 * row + 1, 2 * column + 1, admittance.re());
  }

  private static void add(SimpleMatrix matrix, int row, int column, double value) {
    matrix.set(row, column, matrix.get(row, column) + value);
  }
}
