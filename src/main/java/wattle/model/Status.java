package wattle.model;

/** Whether a thing is there already, is to be made, or is to go. Unless the plan says otherwise it is to be made. */
public enum Status {
  NEW("new"),
  EXISTING("existing"),
  TO_REMOVE("to-remove");

  private final String word;

  Status(String word) {
    this.word = word;
  }

  /** The word of the notation. */
  public String word() {
    return word;
  }
}
