package wattle.balance;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Plans of one small panel, with loads in whole amperes at 120 V, so that equal differences are equal exactly. */
final class SmallPanels {
  private SmallPanels() {}

  /**
   * A way of the panel.
   *
   * @param slots one number, or two in the order of the poles
   * @param half {@code a} or {@code b}, or empty
   * @param amperes of each pole
   */
  record Way(List<Integer> slots, String half, List<Integer> amperes, boolean pinned) {
    boolean twoPole() {
      return slots.size() == 2;
    }
  }

  /** A panel with its ways, in the usual order of slots. */
  record Small(int slots, List<Way> ways) {
    String text() {
      StringBuilder panel = new StringBuilder("service main 120/240 V 200 A { }\npanel P from main {\n  bus 200 A slots " + slots + "\n");
      StringBuilder branches = new StringBuilder();
      StringBuilder rooms = new StringBuilder();
      for (int i = 0; i < ways.size(); i++) {
        Way way = ways.get(i);
        panel.append("  ").append(way.slots.get(0)).append(way.half);
        if (way.twoPole()) {
          panel.append('+').append(way.slots.get(1));
        }
        panel.append(" 100 A ").append(way.twoPole() ? "two-pole " : "").append(way.pinned ? "pinned " : "").append("b" + i).append('\n');
        branches.append("branch b" + i + " by 2-2-2-2 Cu SER { P");
        rooms.append("room r" + i + " {");
        for (int pole = 0; pole < way.amperes.size(); pole++) {
          branches.append(" --1 m-- r" + i + ".d" + pole).append(way.twoPole() ? pole == 0 ? " on black" : " on red" : "");
          rooms.append(" d" + pole + ": baseboard heater " + 120 * way.amperes.get(pole) + " W 120 V ");
        }
        branches.append(" }\n");
        rooms.append("}\n");
      }
      return panel.append("}\n").append(branches).append(rooms).toString();
    }
  }

  /** Panels of 2 to 8 slots, full or not, some ways pinned, some slots with two half-size breakers. */
  static Arbitrary<Small> any() {
    Arbitrary<Integer> slots = Arbitraries.integers().between(1, 4).map(n -> 2 * n);
    return slots.flatMap(
        count -> Combinators.combine(
            Arbitraries.integers().between(0, 5).list().ofSize(count),
            Arbitraries.integers().between(0, 12).list().ofSize(2 * count),
            Arbitraries.integers().between(0, 7).list().ofSize(count))
            .as((kinds, amperes, pins) -> small(count, kinds, amperes, pins)));
  }

  /** Kinds by slot: 0 leaves it free, 1 begins a two-pole breaker, 2 is a half-size pair, others are one pole. */
  private static Small small(int count, List<Integer> kinds, List<Integer> amperes, List<Integer> pins) {
    List<Way> ways = new ArrayList<>();
    boolean[] taken = new boolean[count + 3];
    for (int slot = 1; slot <= count; slot++) {
      int kind = kinds.get(slot - 1);
      boolean pinned = pins.get(slot - 1) == 0;
      int first = amperes.get(2 * slot - 2);
      int second = amperes.get(2 * slot - 1);
      if (taken[slot] || kind == 0) {
        continue;
      }
      if (kind == 1 && slot + 2 <= count) {
        taken[slot + 2] = true;
        ways.add(new Way(List.of(slot, slot + 2), "", List.of(first, second), pinned));
      } else if (kind == 2) {
        ways.add(new Way(List.of(slot), "a", List.of(first), pinned));
        ways.add(new Way(List.of(slot), "b", List.of(second), false));
      } else {
        ways.add(new Way(List.of(slot), "", List.of(first), pinned));
      }
    }
    return new Small(count, ways);
  }
}
