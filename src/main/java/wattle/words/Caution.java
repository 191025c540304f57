package wattle.words;

/** What every figure, picture and page says of itself, in two lengths. */
public final class Caution {
  /** Beside figures that somebody reads. */
  public static final String SHORT = "Figures are an aid: the adopted local code and a licensed person decide.";

  /** Where somebody may open a box or a panel on the strength of what is shown. */
  public static final String LONG = SHORT + " Switch off, lock, and prove dead with a tester proved before and after.";

  private Caution() {}
}
