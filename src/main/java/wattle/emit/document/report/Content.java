package wattle.emit.document.report;

import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.View;
import wattle.emit.media.table.Sheet;

/** What a part of the report shows. */
public sealed interface Content {
  /** @param onPaper the same for pages, which cut it where it does not fit */
  record Picture(String title, Drawing drawing, View onPaper) implements Content {}

  /**
   * A picture that stands folded on a screen, one of many.
   *
   * @param title what it shows
   * @param drawing for the screen
   * @param onPaper the same for pages, which cut it where it does not fit
   * @param signs the legend of its signs on paper; empty where one legend serves many pictures
   */
  record Folded(String title, Drawing drawing, View onPaper, Legend signs) implements Content {}

  /**
   * A table; a long one is cut on the page.
   *
   * @param command that prints all of it, such as {@code wattle table --of runs}
   * @param brief the same for the short edition on paper; equal to the sheet where that is short enough
   */
  record Table(Sheet sheet, String command, Sheet brief) implements Content {}

  /** Well-formed markup of our own making. */
  record Words(String markup) implements Content {}

  /** A sentence, such as why there is nothing. */
  record Remark(String sentence) implements Content {}
}
