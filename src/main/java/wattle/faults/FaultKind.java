package wattle.faults;

/** Between what a bolted fault lies. */
public enum FaultKind {
  /** All three hots of a three-phase supply at once. */
  THREE_PHASE("three-phase"), LINE_LINE("line to line"), LINE_NEUTRAL("line to neutral"),
  /** Over the equipment ground, and from where it is bonded to the neutral over that. */
  LINE_GROUND("line to ground");

  private final String words;

  FaultKind(String words) {
    this.words = words;
  }

  /** How many hots it lies on, and so how many poles see it. */
  public int hots() {
    return this == THREE_PHASE ? 3 : this == LINE_LINE ? 2 : 1;
  }

  /** As output shows it. */
  public String words() {
    return words;
  }
}
