package wattle.emit.document.report;

/**
 * What of a report is put on paper besides what everybody reads.
 *
 * @param branches whether each branch, room and trial is drawn, runs and boxes are listed one by one, and long tables in full
 * @param workings whether each figure is unfolded, and the text of the plan printed
 */
public record PaperEdition(boolean branches, boolean workings) {
  /** Everything. */
  public static final PaperEdition WHOLE = new PaperEdition(true, true);

  /** What stands at the end of a report that is not whole; empty for one that is. */
  String leftOut() {
    if (branches && workings) {
      return "";
    }
    String drawn = branches
        ? ""
        : "each branch, room and trial drawn, runs and boxes one by one,"
            + " every column and more rows of tables, panel directories (report --pdf --branches)";
    String worked = workings ? "" : "how each figure is calculated and the text of the plan (report --pdf --workings)";
    return "Left out of this edition: " + drawn + (drawn.isEmpty() || worked.isEmpty() ? "" : "; ") + worked
        + ". report.html has all of it.";
  }
}
