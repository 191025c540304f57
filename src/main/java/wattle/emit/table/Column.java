package wattle.emit.table;

/**
 * A column of a sheet.
 *
 * @param key for programs: the heading in CSV and the member in JSON, such as {@code load-a-va}
 * @param title for people, without the unit
 * @param unit symbol of the unit of its figures; empty for words and counts
 * @param decimals digits shown after the point; negative for a column of words
 */
public record Column(String key, String title, String unit, int decimals) {
  public static Column words(String key, String title) {
    return new Column(key, title, "", -1);
  }

  public static Column figures(String key, String title, String unit, int decimals) {
    return new Column(key, title, unit, decimals);
  }

  /** Whether it holds figures, which are set flush right. */
  public boolean isFigures() {
    return decimals >= 0;
  }

  /** Title with the unit: {@code length (m)}. */
  public String heading() {
    return unit.isEmpty() ? title : title + " (" + unit + ")";
  }
}
