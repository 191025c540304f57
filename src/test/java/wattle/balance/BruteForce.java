package wattle.balance;

import java.util.ArrayList;
import java.util.List;
import wattle.balance.SmallPanels.Small;
import wattle.balance.SmallPanels.Way;

/**
 * Every way to place the breakers of a small panel, tried one by one, as a person with a screwdriver could: one-pole
 * breakers in any free slot, two half-size ones together, two-pole ones in any two rows that follow each other, either
 * way round. Shares no code and no argument with the search.
 */
final class BruteForce {
  private final Small panel;
  private final List<List<Way>> together = new ArrayList<>();
  private final boolean[] taken;
  /** By number of moves: the least difference in amperes. */
  final int[] least;

  BruteForce(Small panel) {
    this.panel = panel;
    for (Way way : panel.ways()) {
      if (way.half().equals("b")) {
        together.get(together.size() - 1).add(way);
      } else {
        together.add(new ArrayList<>(List.of(way)));
      }
    }
    taken = new boolean[panel.slots() + 1];
    least = new int[together.size() + 1];
    java.util.Arrays.fill(least, Integer.MAX_VALUE);
    place(0, 0, 0);
  }

  private static int sign(int slot) {
    return (slot + 1) / 2 % 2 == 1 ? 1 : -1;
  }

  private void place(int next, int moves, int difference) {
    if (next == together.size()) {
      least[moves] = Math.min(least[moves], Math.abs(difference));
      return;
    }
    List<Way> ways = together.get(next);
    Way first = ways.get(0);
    boolean pinned = ways.stream().anyMatch(Way::pinned);
    for (int slot = 1; slot <= panel.slots(); slot++) {
      for (int turn = 0; turn < (first.twoPole() ? 2 : 1); turn++) {
        List<Integer> slots = first.twoPole() ? turn == 0 ? List.of(slot, slot + 2) : List.of(slot + 2, slot) : List.of(slot);
        boolean stays = slots.equals(first.slots());
        if (pinned && !stays || slots.stream().anyMatch(s -> s > panel.slots() || taken[s])) {
          continue;
        }
        int change = 0;
        for (Way way : ways) {
          for (int pole = 0; pole < slots.size(); pole++) {
            change += sign(slots.get(pole)) * way.amperes().get(pole);
          }
        }
        slots.forEach(s -> taken[s] = true);
        place(next + 1, moves + (stays ? 0 : 1), difference + change);
        slots.forEach(s -> taken[s] = false);
      }
    }
  }

  /** The least difference with at most so many moves. */
  int leastWith(int moves) {
    int most = Integer.MAX_VALUE;
    for (int m = 0; m <= Math.min(moves, least.length - 1); m++) {
      most = Math.min(most, least[m]);
    }
    return most;
  }

  /** The fewest moves that reach a difference. */
  int fewestFor(int difference) {
    int moves = 0;
    while (least[moves] != difference) {
      moves++;
    }
    return moves;
  }
}
