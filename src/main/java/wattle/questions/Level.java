package wattle.questions;

/** How much a question takes to answer. */
public enum Level {
  /** Read off the plan. */
  EASY("Read the plan"),
  /** One thing follows from another. */
  MEDIUM("Think it through"),
  /** Something is wrong, or several things act together. */
  HARD("Work it out");

  private final String title;

  Level(String title) {
    this.title = title;
  }

  /** Heading over the questions of the level. */
  public String title() {
    return title;
  }
}
