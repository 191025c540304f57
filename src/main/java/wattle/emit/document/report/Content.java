package wattle.emit.document.report;

import java.util.List;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.table.Sheet;

/** What a part of the report shows. */
public sealed interface Content {
  /** @param onPaper the same in the shape of a sheet, or in parts that leave no sheet half empty; the drawing where that will do */
  record Picture(String title, Drawing drawing, List<Drawing> onPaper) implements Content {
    public Picture {
      onPaper = List.copyOf(onPaper);
    }

    Picture(String title, Drawing drawing) {
      this(title, drawing, List.of(drawing));
    }
  }

  /**
   * A picture that stands folded on a screen, one of many.
   *
   * @param title what it shows
   * @param drawing for the screen
   * @param strips the same for paper, one beneath the other
   */
  record Folded(String title, Drawing drawing, List<Drawing> strips) implements Content {
    public Folded {
      strips = List.copyOf(strips);
    }
  }

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
