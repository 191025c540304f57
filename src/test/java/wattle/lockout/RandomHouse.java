package wattle.lockout;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Plans made at random: shared boxes, shared neutrals on one or two breakers, switches, a sub-panel, and sources: solar,
 * storage, a generator behind an interlock or a transfer switch, with or without a neutral that goes over.
 */
public final class RandomHouse {
  private static final List<String> SOURCES = List.of("storage battery 5 kW", "generator inlet 4 kW", "solar inverter 3.8 kW");

  private final Random random;
  private final StringBuilder slots = new StringBuilder();
  private final StringBuilder subSlots = new StringBuilder();
  private final StringBuilder branches = new StringBuilder();
  private final StringBuilder room = new StringBuilder();
  private final List<String> sharedBoxes = new ArrayList<>();
  private int box;

  private RandomHouse(long seed) {
    this.random = new Random(seed);
  }

  public static String plan(long seed) {
    return new RandomHouse(seed).text();
  }

  private String text() {
    int count = 2 + random.nextInt(6);
    int[] next = {3, 1};
    for (int i = 0; i < count; i++) {
      int panel = random.nextInt(4) == 0 ? 1 : 0;
      int slot = next[panel];
      next[panel] += 4;
      branch("b" + i, panel, slot);
    }
    return "service main 120/240 V 200 A { source available 10 kA }\n"
        + "panel P from main {\n bus 200 A slots 60 bonded\n main breaker 200 A\n 1+3 60 A two-pole G\n" + slots + "}\n"
        + "panel G from P by 10 m of 6/3 NM-B {\n bus 100 A slots 60\n"
        + (subSlots.indexOf("interlocked") >= 0 ? " main transfer 60 A\n" : "") + subSlots + "}\n" + branches
        + "room hall {\n" + room + "}\n";
  }

  /** Odd slots stand on alternating legs downwards, so {@code s} and {@code s + 2} are on two legs. */
  private void branch(String name, int panel, int from) {
    String panelName = panel == 0 ? "P" : "G";
    int slot = panel == 0 ? from + 2 : from;
    StringBuilder to = panel == 0 ? slots : subSlots;
    int kind = random.nextInt(8);
    boolean two = kind >= 2;
    if (!two) {
      to.append(" " + slot + " 15 A " + name + "\n");
    } else if (kind == 2) {
      to.append(" " + slot + " 20 A " + name + "\n " + (slot + 2) + " 20 A " + name + "\n");
    } else {
      String handle = kind == 3 ? "handle-tied" : "two-pole";
      String source = switch (kind) {
        case 5, 7 -> " back-fed";
        case 6 -> " back-fed interlocked" + (random.nextBoolean() ? " switched-neutral" : "");
        default -> "";
      };
      to.append(" " + slot + "+" + (slot + 2) + " 20 A " + handle + source + " " + name + "\n");
    }
    branches.append("branch " + name + " by " + (two ? "12/3" : "12/2") + " NM-B {\n " + panelName);
    int boxes = 1 + random.nextInt(3);
    List<String> reached = new ArrayList<>();
    List<String> used = new ArrayList<>();
    for (int i = 0; i < boxes; i++) {
      boolean last = i == boxes - 1;
      String device = "d" + box++;
      String line = device + ": "
          + (kind >= 5 && last
              ? SOURCES.get(kind - 5) + (kind == 6 && random.nextBoolean() ? " bonded" : "")
              : kind == 4 && last ? "range 4 kW" : two ? "split receptacle" : i == 0 && random.nextBoolean() ? "switch" : "receptacle");
      List<String> free = sharedBoxes.stream().filter(b -> !used.contains(b)).toList();
      if (!free.isEmpty() && random.nextInt(3) == 0) {
        String shared = free.get(random.nextInt(free.size()));
        used.add(shared);
        int at = room.indexOf("box " + shared + " {") + ("box " + shared + " {").length();
        room.insert(at, " " + line + "\n");
      } else if (random.nextInt(3) == 0) {
        sharedBoxes.add("x" + device);
        used.add("x" + device);
        room.append(" box x" + device + " {" + " " + line + "\n }\n");
      } else {
        room.append(" " + line + "\n");
      }
      branches.append(" --" + (1 + random.nextInt(9)) + " m-- hall." + device);
      reached.add(device);
    }
    if (reached.size() > 1 && random.nextBoolean()) {
      String device = "d" + box++;
      room.append(" " + device + ": " + (two ? "split receptacle" : "receptacle") + "\n");
      branches.append("\n hall." + reached.get(0) + " --2 m-- hall." + device);
    }
    branches.append("\n}\n");
  }
}
