package wattle.model;

/**
 * Whether a thing is there already, is to be made, or is to go. What says nothing has the status of what it belongs to, and a
 * whole is to be made.
 */
public enum Status {
  NEW("new"), EXISTING("existing"), TO_REMOVE("to-remove");

  private final String word;

  Status(String word) {
    this.word = word;
  }

  /** The word of the notation. */
  public String word() {
    return word;
  }
}
