package wattle.words;

import wattle.model.Panel;

/** Whether neutral and ground are joined in a panel, in the trade's words. */
public final class BondWords {
  private BondWords() {}

  /** {@code neutral bonded here}, or {@code neutral isolated}. */
  public static String of(Panel panel) {
    return panel.bonded() ? "neutral bonded here" : "neutral isolated";
  }
}
