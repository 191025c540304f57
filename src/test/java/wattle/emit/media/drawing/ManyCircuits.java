package wattle.emit.media.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Plans of any number of circuits, with sub-panels and with names that mean harm, for what must hold for all drawings. */
public final class ManyCircuits {
  private static final List<String> NAMES = List.of(
      "<script>alert(1)</script>", "]]> & co", "say \\\"when\\\"", "=HYPERLINK(1)", "a\u202Eb\u200Fc", "\\\\N \\\\G \\\\l",
      "W".repeat(10_000), "Keller, Waschküche", "廊下の照明", "", "plain", "x | y { z }", "&amp; &#65;", "`code` *bold*");

  private ManyCircuits() {}

  /** @param circuits branches of the house panel; about one in ten of its slots feeds a sub-panel */
  public static String plan(int circuits, long seed) {
    Random random = new Random(seed);
    StringBuilder panel = new StringBuilder();
    StringBuilder rest = new StringBuilder();
    List<String> boxes = new ArrayList<>();
    int slot = 1;
    int subs = 0;
    for (int i = 0; i < circuits; i++) {
      String label = "\"" + NAMES.get(random.nextInt(NAMES.size())) + "\"";
      int kind = random.nextInt(10);
      if (kind == 0 && subs < 4) {
        String name = "S" + ++subs;
        panel.append("  ").append(slot).append('+').append(slot + 2).append(" 60 A two-pole ").append(name).append(' ').append(label)
            .append('\n');
        rest.append("panel ").append(name).append(' ').append(label).append(" from P/").append(slot).append('+').append(slot + 2)
            .append(" by 20 m of 6/3 NM-B {\n  bus 100 A\n  slots 12\n  main breaker 60 A 10 kA\n");
        int branches = 1 + random.nextInt(6);
        for (int b = 0; b < branches; b++) {
          rest.append("  ").append(b + 1).append(" 15 A arc-fault ").append(name.toLowerCase()).append('c').append(b).append('\n');
          boxes.add(name.toLowerCase() + "c" + b);
        }
        rest.append("}\n");
        slot += slot % 4 == 1 || slot % 4 == 2 ? 1 : 3;
        slot = next(slot, panel);
        continue;
      }
      String branch = "b" + i;
      boxes.add(branch);
      if (kind == 1) {
        panel.append("  ").append(slot).append("a 15 A arc-fault ").append(branch).append(' ').append(label).append('\n');
      } else {
        panel.append("  ").append(slot).append(" 20 A arc-fault ground-fault ").append(branch).append(' ').append(label).append('\n');
      }
      slot = next(slot + 1, panel);
    }
    StringBuilder room = new StringBuilder("room hall \"Hall\" {\n");
    for (String box : boxes) {
      room.append("  ").append(box).append(": receptacle 180 W\n");
      rest.append("branch ").append(box).append(" by 12/2 NM-B { P --5 m-- hall.").append(box).append(" }\n".replace("P", "P"));
    }
    String branches = rest.toString().replaceAll("branch (s(\\d)c\\d) by 12/2 NM-B \\{ P", "branch $1 by 12/2 NM-B { S$2");
    return "plan \"Many <circuits>\"\nservice main 120/240 V 400 A {\n  source transformer 75 kVA 2 %\n  run 20 m of 4/0 Al triplex\n"
        + "  earth rods by 6 Cu 25 ohm\n}\npanel P from main {\n  bus 400 A\n  slots " + Math.max(slot + 4, 8)
        + "\n  bonded\n  main breaker 400 A 22 kA\n" + panel + "}\n" + branches + room + "}\n";
  }

  /** The next slot that no two-pole breaker above it has taken. */
  private static int next(int slot, StringBuilder panel) {
    int free = slot;
    while (panel.toString().contains("+" + free + " ")) {
      free++;
    }
    return free;
  }
}
