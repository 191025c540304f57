package wattle.model;

/** What a breaker or receptacle guards against beyond too much current. */
public enum Protection {
  ARC_FAULT("arc-fault"), GROUND_FAULT("ground-fault");

  private final String word;

  Protection(String word) {
    this.word = word;
  }

  /** The word of the notation. */
  public String word() {
    return word;
  }
}
