package wattle.emit.media.table;

/**
 * A column of a sheet.
 *
 * @param key for programs: the heading in CSV and the member in JSON, such as {@code load-a-va}
 * @param title for people, without the unit
 * @param unit symbol of the unit of its figures; empty for words and counts
 * @param decimals digits shown after the point; negative for a column of words
 * @param naming how its figures are called, with {@code *} for the subject of the row, such as
 *     {@code voltage of * at full load}; empty where they have no names
 * @param aside whether the short report on paper leaves it out, where a line has less room than on a screen
 */
public record Column(String key, String title, String unit, int decimals, String naming, boolean aside) {
  public static Column words(String key, String title) {
    return new Column(key, title, "", -1, "", false);
  }

  public static Column figures(String key, String title, String unit, int decimals) {
    return new Column(key, title, unit, decimals, "", false);
  }

  /** The same with names for its figures. */
  public Column naming(String pattern) {
    return new Column(key, title, unit, decimals, pattern, aside);
  }

  /** The same, left out of the short report on paper. */
  public Column onTheSide() {
    return new Column(key, title, unit, decimals, naming, true);
  }

  /** The same in another unit. */
  Column in(String other) {
    return new Column(key, title, other, decimals, naming, aside);
  }

  /** Whether it holds figures, which are set flush right. */
  public boolean isFigures() {
    return decimals >= 0;
  }

  /** Title with the unit: {@code length (m)}. */
  public String heading() {
    return unit.isEmpty() ? title : title + " (" + unit + ")";
  }

  /** Name of its figure in a row; empty where it has none. */
  String nameIn(Row row) {
    return naming.isEmpty() || row.subject().isEmpty() ? "" : naming.replace("*", row.subject());
  }
}
