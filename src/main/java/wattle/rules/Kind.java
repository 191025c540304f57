package wattle.rules;

import java.util.Optional;

/** The kinds of things that rules are about. */
public enum Kind {
  HOUSE("house", "the whole plan"),
  DWELLING("dwelling", "the building"),
  SERVICE("service", "where the supply enters"),
  ELECTRODE("electrode", "an earth electrode with its conductor"),
  PANEL("panel", "a panelboard or fuse box"),
  BREAKER("breaker", "a breaker or fuse in a panel"),
  FEEDER("feeder", "the run from a breaker or service to a panel"),
  BRANCH("branch", "a branch circuit"),
  RUN("run", "one run of a branch, from box to box"),
  WIRING("wiring", "what a run is made with"),
  BOX("box", "a box"),
  DEVICE("device", "a device in a box"),
  ROOM("room", "a room or place");

  private final String word;
  private final String meaning;

  Kind(String word, String meaning) {
    this.word = word;
    this.meaning = meaning;
  }

  /** As rules write it. */
  public String word() {
    return word;
  }

  /** For readers. */
  public String meaning() {
    return meaning;
  }

  static Optional<Kind> of(String word) {
    for (Kind kind : values()) {
      if (kind.word.equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }
}
