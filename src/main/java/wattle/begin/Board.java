package wattle.begin;

import java.util.List;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Slots for circuits: loads between two hots first, then each of one hot on the leg that carries less. A fuse box and a board of one leg
 * have one column; slots of a fuse box say nothing of its legs, so that its lines do.
 */
final class Board {
  private static final int[] SIZES = {6, 8, 12, 16, 20, 30, 40, 42, 54, 60, 66, 84};
  /** Slots left for what comes later, common practice. */
  private static final double SPARE = 0.15;
  private static final String[] LETTERS = {"A", "B", "C"};

  private final int legs;
  private final boolean legsAreStated;
  private final int slots;
  private final boolean[] taken;
  private final int[] load;
  private final TreeMap<Integer, String> lines = new TreeMap<>();

  /**
   * @param legs hots that come to it, from 1 to 3
   * @param legsAreStated whether each line says its legs, as those of a fuse box do; slots tell them otherwise
   */
  Board(List<Circuit> circuits, int legs, boolean legsAreStated) {
    this.legs = legs;
    this.legsAreStated = legsAreStated;
    this.load = new int[legs];
    int needed = circuits.stream().mapToInt(Circuit::poles).sum();
    slots = legsAreStated ? needed : size(Math.max(oneColumn() ? 0 : SIZES[4], (int) Math.ceil(needed * (1 + SPARE))));
    taken = new boolean[slots + 3];
    circuits.stream().filter(c -> c.poles() == 2).forEach(this::placeTwo);
    circuits.stream().filter(c -> c.poles() == 1).forEach(this::placeOne);
  }

  /** The least board that is made for so many slots. */
  static int size(int needed) {
    return IntStream.of(SIZES).filter(s -> s >= needed).findFirst().orElseThrow(() -> new IllegalArgumentException(needed + " slots"));
  }

  int slots() {
    return slots;
  }

  boolean oneColumn() {
    return legsAreStated || legs == 1;
  }

  /** Slot lines from the top. */
  List<String> lines() {
    return List.copyOf(lines.values());
  }

  private int leg(int slot) {
    return (slot - 1) / 2 % legs;
  }

  private void placeTwo(Circuit circuit) {
    int first = IntStream.rangeClosed(1, slots - 1)
        .filter(s -> !taken[s] && s + step() <= slots && !taken[s + step()])
        .boxed().min(java.util.Comparator.comparingInt(s -> legsAreStated ? 0 : load[leg(s)] + load[leg(s + 2)])).orElseThrow();
    int on = legsAreStated ? lightest() : leg(first);
    int other = legsAreStated && legs == 2 ? 1 - on : (on + 1) % legs;
    taken[first] = true;
    taken[first + step()] = true;
    load[on] += circuit.voltAmperes() / 2;
    load[other] += circuit.voltAmperes() / 2;
    String marks = LETTERS[Math.min(on, other)] + "+" + LETTERS[Math.max(on, other)];
    lines.put(first, line(first + "+" + (first + step()), marks, circuit));
  }

  /** From a slot to the next one of the same breaker. */
  private int step() {
    return oneColumn() ? 1 : 2;
  }

  private int lightest() {
    return IntStream.range(0, legs).boxed().min(java.util.Comparator.comparingInt(i -> load[i])).orElseThrow();
  }

  private void placeOne(Circuit circuit) {
    int lightest = lightest();
    int slot = IntStream.rangeClosed(1, slots).filter(s -> !taken[s] && (oneColumn() || leg(s) == lightest)).findFirst()
        .orElseGet(() -> IntStream.rangeClosed(1, slots).filter(s -> !taken[s]).findFirst().orElseThrow());
    taken[slot] = true;
    int leg = oneColumn() ? lightest : leg(slot);
    load[leg] += circuit.voltAmperes();
    lines.put(slot, line(Integer.toString(slot), LETTERS[leg], circuit));
  }

  private String line(String span, String marks, Circuit circuit) {
    return span + "  " + circuit.amperes() + " A  " + circuit.traits() + (legsAreStated && legs > 1 ? " leg " + marks : "") + "  "
        + circuit.name()
        + "  \"" + circuit.label() + "\"";
  }
}
