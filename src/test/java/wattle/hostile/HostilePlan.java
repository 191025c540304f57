package wattle.hostile;

import java.util.List;

/** A plan that is right in all but its names, which do harm, or vanish, wherever a name is not taken as text. */
public final class HostilePlan {
  /** The names, as the plan means them. */
  public static final List<String> NAMES = List.of(
      "<script>window.harmed = 1</script>",
      "<img src=x onerror='window.harmed = 1'>",
      "]]></script></style></title><b>bold</b>",
      "&lt;&amp;\u00A0' \"quoted\"",
      "=HYPERLINK(\"http://example.org\";\"click\")",
      "\u202Eright to left\u202C",
      "| cell | `code` *bold* [link](http://example.org) \\N \\l {a|b}",
      "x".repeat(10_000));

  private HostilePlan() {}

  private static String quoted(int name) {
    return '"' + NAMES.get(name % NAMES.size()).replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }

  /** The plan: a panel whose every branch, room and device has one of the names; a trial, an expectation and a silence. */
  public static String text() {
    StringBuilder plan = new StringBuilder("plan ").append(quoted(0)).append(" revision ").append(quoted(4)).append('\n');
    plan.append("service main 120/240 V 100 A { source available 10 kA  run 10 m of 2/0 Al triplex  earth rods by 6 Cu 25 ohm }\n");
    plan.append("panel P ").append(quoted(2)).append(" from main {\n  bus 100 A  slots 12  bonded\n");
    for (int i = 0; i < NAMES.size(); i++) {
      plan.append("  ").append(i + 1).append("  15 A  b").append(i).append("  ").append(quoted(i)).append('\n');
    }
    plan.append("}\n");
    for (int i = 0; i < NAMES.size(); i++) {
      plan.append("branch b").append(i).append(" by 14/2 NM-B { P --5 m-- r").append(i).append(".c }\n");
    }
    for (int i = 0; i < NAMES.size(); i++) {
      plan.append("room r").append(i).append(' ').append(quoted(i + 1)).append(" { c: receptacle 100 W ").append(quoted(i)).append(" }\n");
    }
    plan.append("trial t ").append(quoted(3)).append(" { r1.c draws 2 A }\nexpect neutral of b1 is 2 A in t\n");
    return plan.append("silence many-outlets at b1 because ").append(quoted(2)).append('\n').toString();
  }
}
