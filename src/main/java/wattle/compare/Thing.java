package wattle.compare;

/**
 * A thing of a plan.
 *
 * @param kind what sort of thing
 * @param name its name in its own plan
 */
public record Thing(Kind kind, String name) implements Comparable<Thing> {
  /** Sorts of things, in the order in which a reader meets them. */
  public enum Kind {
    PLAN("plan"), DWELLING("dwelling"), SERVICE("service"), PANEL("panel"), BREAKER("breaker"), BRANCH("branch"), RUN("run"), RACEWAY(
        "raceway"), ROOM("room"), BOX("box"), DEVICE("device"), TRIAL("trial"), EXPECTATION("expectation"), SILENCE("silence");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  @Override
  public int compareTo(Thing other) {
    int byKind = kind.compareTo(other.kind);
    return byKind != 0 ? byKind : name.compareTo(other.name);
  }

  @Override
  public String toString() {
    return name.isEmpty() ? kind.word : kind.word + " " + name;
  }
}
