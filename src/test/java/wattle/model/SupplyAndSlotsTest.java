package wattle.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which leg a slot stands on, and the voltages of the usual supplies: common practice. */
class SupplyAndSlotsTest {
  private static final SupplySystem SPLIT = new SupplySystem(SupplySystem.Kind.SPLIT_PHASE, 120, 240);
  private static final SupplySystem WYE = new SupplySystem(SupplySystem.Kind.THREE_PHASE_WYE, 120, 208);
  private static final SupplySystem SINGLE = new SupplySystem(SupplySystem.Kind.SINGLE_PHASE, 230, 230);

  /** Odd numbers left and even right: slots 1 and 2 are one row and one leg, 1 and 3 the two legs of a two-pole breaker. */
  @ParameterizedTest
  @CsvSource({"1, A, A", "2, A, A", "3, B, B", "4, B, B", "5, A, C", "6, A, C", "7, B, A", "39, B, B", "40, B, B"})
  void rowsOfOddAndEvenTakeTheLegsInTurn(int slot, Leg ofTwo, Leg ofThree) {
    assertThat(SlotOrder.ODD_LEFT.legOf(slot, 40, SPLIT.legs())).isEqualTo(ofTwo);
    assertThat(SlotOrder.ODD_LEFT.legOf(slot, 40, WYE.legs())).isEqualTo(ofThree);
    assertThat(SlotOrder.ODD_LEFT.isLeft(slot, 40)).isEqualTo(slot % 2 == 1);
  }

  /** Numbered down the columns a panel of 8 has 1 beside 5, and one of 7 has 4 rows. */
  @ParameterizedTest
  @CsvSource({"1, 8, 1, true", "4, 8, 4, true", "5, 8, 1, false", "8, 8, 4, false", "4, 7, 4, true", "5, 7, 1, false"})
  void columnsAreNumberedDownwards(int slot, int slots, int row, boolean left) {
    assertThat(SlotOrder.DOWN_COLUMNS.rowOf(slot, slots)).isEqualTo(row);
    assertThat(SlotOrder.DOWN_COLUMNS.isLeft(slot, slots)).isEqualTo(left);
  }

  @Test
  void inOneColumnEachSlotIsARow() {
    assertThat(SlotOrder.ONE_COLUMN.legOf(1, 6, SPLIT.legs())).isEqualTo(Leg.A);
    assertThat(SlotOrder.ONE_COLUMN.legOf(2, 6, SPLIT.legs())).isEqualTo(Leg.B);
    assertThat(SlotOrder.ONE_COLUMN.legOf(5, 6, SINGLE.legs())).isEqualTo(Leg.A);
  }

  /** Legs of a split phase oppose each other; those of a wye are a third of a turn apart. */
  @Test
  void theVoltageBetweenLegsIsThatOfTheirAngle() {
    assertThat(between(SPLIT, Leg.A, Leg.B)).isCloseTo(240, within(1e-9));
    assertThat(between(WYE, Leg.A, Leg.B)).isCloseTo(207.85, within(0.01));
    assertThat(between(WYE, Leg.B, Leg.C)).isCloseTo(207.85, within(0.01));
    assertThat(between(WYE, Leg.C, Leg.A)).isCloseTo(207.85, within(0.01));
  }

  private static double between(SupplySystem system, Leg one, Leg other) {
    double degrees = system.degreesOf(one) - system.degreesOf(other);
    return 2 * system.legToNeutralVolts() * Math.abs(Math.sin(Math.toRadians(degrees / 2)));
  }

  @Test
  void aPanelOnSomeLegsHasASupplyOfItsOwn() {
    assertThat(SPLIT.on(List.of(Leg.B, Leg.A))).isSameAs(SPLIT);
    SupplySystem two = WYE.on(List.of(Leg.C, Leg.A));
    assertThat(two.kind()).isEqualTo(SupplySystem.Kind.TWO_LEGS_OF_WYE);
    assertThat(two.legs()).containsExactly(Leg.A, Leg.C);
    assertThat(two.isWye()).isTrue();
    assertThat(SPLIT.on(List.of(Leg.B)).kind()).isEqualTo(SupplySystem.Kind.ONE_LEG);
    assertThat(SPLIT.isWye()).isFalse();
    assertThat(SINGLE.isWye()).isFalse();
  }

  @Test
  void aSupplyIsNamedAsOnAPlan() {
    assertThat(SPLIT.words()).isEqualTo("120/240 V");
    assertThat(SINGLE.words()).isEqualTo("230 V");
    assertThat(WYE.words()).isEqualTo("120/208 V, three-phase, four wires");
    assertThat(WYE.on(List.of(Leg.A, Leg.B)).words()).isEqualTo("120/208 V, two legs of three-phase, three wires");
    assertThat(SPLIT.on(List.of(Leg.A)).words()).isEqualTo("120 V");
  }

  /** A doubt about one thing is none about another, and a doubt about a room leaves loads and currents as they are. */
  @Test
  void aDoubtReachesWhatItIsAbout() {
    Doubts room = new Doubts.Builder().add(Doubt.ROOM, "den").build();
    assertThat(room.has(Doubt.ROOM, "den")).isTrue();
    assertThat(room.has(Doubt.ROOM, "hall")).isFalse();
    assertThat(room.ofLoads()).isFalse();
    assertThat(room.ofCurrents()).isFalse();
    Doubts way = new Doubts.Builder().add(Doubt.WAY, "a").build();
    assertThat(way.ofLoads()).isTrue();
    assertThat(way.ofCurrents()).isTrue();
    Doubts length = new Doubts.Builder().add(Doubt.LENGTH, "a").build();
    assertThat(length.ofLoads()).as("a run of another length carries the same load").isFalse();
    assertThat(length.ofCurrents()).isTrue();
    assertThat(new Doubts.Builder().build().isEmpty()).isTrue();
  }
}
