package wattle.emit.view.oneline;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** How the rows of a panel are shared between its parts; the expected figures are counted by hand. */
class PanelPartsTest {
  @Test
  void whatFitsIsOnePart() {
    PanelParts parts = new PanelParts(12, 12, 20);
    assertThat(parts.count()).isEqualTo(1);
    assertThat(parts.from(0)).isZero();
    assertThat(parts.to(0)).isEqualTo(12);
  }

  @Test
  void partsAreOfOneLengthWhereTheFirstHasRoom() {
    PanelParts parts = new PanelParts(28, 18, 26);
    assertThat(parts.count()).isEqualTo(2);
    assertThat(parts.to(0)).isEqualTo(14);
    assertThat(parts.to(1)).isEqualTo(28);
  }

  @Test
  void theFirstHasFewerWhereSomethingStandsOverIt() {
    PanelParts parts = new PanelParts(28, 4, 12);
    assertThat(parts.count()).isEqualTo(3);
    assertThat(parts.to(0)).isEqualTo(4);
    assertThat(parts.to(1)).isEqualTo(16);
    assertThat(parts.to(2)).isEqualTo(28);
  }

  /** Each row is in one part, none of which holds more than it can. */
  @Test
  void everyRowIsInOnePart() {
    for (int rows = 0; rows < 60; rows++) {
      for (int first = 1; first < 20; first++) {
        for (int most = first; most < 20; most++) {
          PanelParts parts = new PanelParts(rows, first, most);
          int next = 0;
          for (int part = 0; part < parts.count(); part++) {
            assertThat(parts.from(part)).isEqualTo(next);
            next = parts.to(part);
            assertThat(next - parts.from(part)).as(parts + ", part " + part).isBetween(rows == 0 ? 0 : 1, part == 0 ? first : most);
            for (int row = parts.from(part); row < next; row++) {
              assertThat(parts.of(row)).isEqualTo(part);
            }
          }
          assertThat(next).isEqualTo(rows);
        }
      }
    }
  }
}
