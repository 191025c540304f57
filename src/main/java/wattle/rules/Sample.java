package wattle.rules;

/**
 * A plan within a rule. It says what matters to the rule; what every plan has, it may leave out: a title, the code pack, a
 * service named {@code main}, and the bus, slots and main of the panel {@code P}.
 */
public final class Sample {
  private static final String SERVICE = "service main 120/240 V 200 A { source transformer 25 kVA 2 %   run 20 m of 4/0 Al triplex  "
      + " earth water-pipe by 4 Cu   earth rods by 6 Cu }\n";
  private static final String PANEL = "panel P from main {";
  private static final String PANEL_SETTINGS = " bus 200 A   slots 40   bonded\n  main breaker 200 A 22 kA\n";

  private Sample() {}

  /**
   * The whole plan.
   *
   * @param pack of the rule; a local file stands for no code
   */
  public static String complete(String text, String pack) {
    StringBuilder plan = new StringBuilder();
    if (!text.contains("plan \"")) {
      plan.append("plan \"Sample\"\n");
    }
    if (!text.contains("use code") && !pack.contains(".") && !pack.contains("/")) {
      plan.append("use code ").append(pack.equals("common") ? "us-2023" : pack).append('\n');
    }
    if (!text.contains("dwelling")) {
      plan.append("dwelling { }\n");
    }
    if (!text.contains("service main")) {
      plan.append(SERVICE);
    }
    int panel = text.indexOf(PANEL);
    int end = panel < 0 ? -1 : text.indexOf('\n', panel);
    boolean bare = end > 0 && !text.substring(panel, end).contains("bus ");
    plan.append(bare ? text.substring(0, panel + PANEL.length()) + PANEL_SETTINGS + text.substring(panel + PANEL.length()) : text);
    return plan.append('\n').toString();
  }
}
