package wattle.finding;

/**
 * Where a rule or a figure comes from.
 *
 * @param work the published work with its edition, or {@code common practice}
 * @param place article, table or page in it; may be empty
 * @param verify true for a figure written from memory, to be verified before it is trusted
 */
public record Citation(String work, String place, boolean verify) {
  public static final Citation COMMON_PRACTICE = new Citation("common practice", "", false);

  @Override
  public String toString() {
    return (place.isEmpty() ? work : work + " " + place) + (verify ? " (from memory, verify)" : "");
  }
}
