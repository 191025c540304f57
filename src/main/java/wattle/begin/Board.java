package wattle.begin;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/** Slots for circuits: two-pole breakers first, then each one-pole breaker on the leg that carries less. */
final class Board {
  private static final int[] SIZES = {20, 30, 40, 42, 54, 60, 66, 84};
  /** Slots left for what comes later, common practice. */
  private static final double SPARE = 0.15;

  private final int slots;
  private final boolean[] taken;
  private final int[] load = new int[2];
  private final TreeMap<Integer, String> lines = new TreeMap<>();

  Board(List<Circuit> circuits) {
    int needed = circuits.stream().mapToInt(Circuit::poles).sum();
    slots = size((int) Math.ceil(needed * (1 + SPARE)));
    taken = new boolean[slots + 3];
    circuits.stream().filter(c -> c.poles() == 2).forEach(this::placeTwo);
    List<Circuit> single = new ArrayList<>(circuits.stream().filter(c -> c.poles() == 1).toList());
    single.forEach(this::placeOne);
  }

  private static int size(int needed) {
    for (int size : SIZES) {
      if (size >= needed) {
        return size;
      }
    }
    throw new IllegalArgumentException(needed + " slots");
  }

  int slots() {
    return slots;
  }

  /** Slot lines from the top. */
  List<String> lines() {
    return List.copyOf(lines.values());
  }

  private static int leg(int slot) {
    return (slot + 1) / 2 % 2 == 1 ? 0 : 1;
  }

  private void placeTwo(Circuit circuit) {
    int slot = 1;
    while (taken[slot] || slot + 2 > slots || taken[slot + 2]) {
      slot++;
    }
    taken[slot] = true;
    taken[slot + 2] = true;
    load[0] += circuit.voltAmperes() / 2;
    load[1] += circuit.voltAmperes() / 2;
    lines.put(slot, line(slot + "+" + (slot + 2), circuit));
  }

  private void placeOne(Circuit circuit) {
    int lighter = load[0] <= load[1] ? 0 : 1;
    int slot = free(lighter);
    slot = slot > slots ? free(1 - lighter) : slot;
    taken[slot] = true;
    load[leg(slot)] += circuit.voltAmperes();
    lines.put(slot, line(Integer.toString(slot), circuit));
  }

  private int free(int leg) {
    int slot = 1;
    while (slot <= slots && (taken[slot] || leg(slot) != leg)) {
      slot++;
    }
    return slot;
  }

  private static String line(String slots, Circuit circuit) {
    return slots + "  " + circuit.amperes() + " A  " + circuit.traits() + "  " + circuit.name() + "  \"" + circuit.label() + "\"";
  }
}
