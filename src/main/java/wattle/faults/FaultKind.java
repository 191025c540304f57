package wattle.faults;

/** Between what a bolted fault lies. */
public enum FaultKind {
  LINE_LINE("line to line"), LINE_NEUTRAL("line to neutral"),
  /** Over the equipment ground, and from where it is bonded to the neutral over that. */
  LINE_GROUND("line to ground");

  private final String words;

  FaultKind(String words) {
    this.words = words;
  }

  /** As output shows it. */
  public String words() {
    return words;
  }
}
