package wattle.emit.media.paper;

import wattle.emit.media.picture.Paper;

/**
 * What a document leaves for a picture among its text, in CSS pixels of 1/96 inch.
 *
 * @param width between the margins
 * @param height beneath the heading of a part
 * @param turned whether the page lies on its longer side
 */
public record PageRoom(double width, double height, boolean turned) {
  /** Of the pages of our documents: 13 mm. */
  private static final double MARGIN = 13 / 25.4 * 96;

  /** What rounding of the layout may take. */
  private static final double SPARE = 2;

  private static final double HEADING = 70;

  static PageRoom upright(Paper upright) {
    return of(upright, false);
  }

  static PageRoom turned(Paper upright) {
    return of(upright.turned(), true);
  }

  private static PageRoom of(Paper paper, boolean turned) {
    return new PageRoom(
        paper.width() * Sheets.PIXELS_PER_POINT - 2 * MARGIN - SPARE, paper.height() * Sheets.PIXELS_PER_POINT - 2 * MARGIN - HEADING,
        turned);
  }
}
