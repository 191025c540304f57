package wattle.bench;

import java.nio.file.Path;
import java.util.Random;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.model.House;
import wattle.read.SourceReader;

/** Full panels, every slot taken: one in five breakers has two poles, loads from nothing to 1900 W, not round. */
final class Panels {
  private Panels() {}

  /** A house of one panel with so many slots. */
  static House full(int slots, long seed) {
    Random random = new Random(seed);
    StringBuilder panel = new StringBuilder("service main 120/240 V 400 A { }\npanel P from main {\n  bus 400 A slots " + slots + "\n");
    StringBuilder rest = new StringBuilder();
    boolean[] taken = new boolean[slots + 3];
    for (int slot = 1; slot <= slots; slot++) {
      if (taken[slot]) {
        continue;
      }
      boolean two = slot + 2 <= slots && random.nextInt(5) == 0;
      taken[slot + 2] |= two;
      panel.append("  ").append(slot).append(two ? "+" + (slot + 2) + " 20 A two-pole b" : " 20 A b").append(slot).append('\n');
      rest.append("branch b" + slot + " by 12/3 NM-B { P --5 m-- r" + slot + ".h1"
          + (two ? " on black --5 m-- r" + slot + ".h2 on red" : "") + " }\n");
      rest.append("room r" + slot + " { h1: baseboard heater " + random.nextInt(1900) + " W 120 V");
      rest.append(two ? "   h2: baseboard heater " + random.nextInt(1900) + " W 120 V }\n" : " }\n");
    }
    Source text = new Source("panel.wattle", panel + "}\n" + rest);
    return new Compiler(SourceReader.FROM_DISK).compile(text, Path.of("panel.wattle")).house();
  }
}
