package wattle.emit.view.branchwiring;

/**
 * How far apart things in a box stand. What is printed at arm's length has large type for the width of a page, and so less between.
 *
 * @param pad between the words at a wall and what is inside
 * @param beside between fixtures, and before the first
 * @param column between wires that go down to further cables
 * @param head of the box, with its name and facts
 * @param pitch from one conductor to the next
 * @param wall from a wall to the words of a conductor, and after them
 */
record Spacing(double pad, double beside, double column, double head, double pitch, double wall) {
  static final Spacing USUAL = new Spacing(24, 20, 18, 50, 26, 8.5);

  static final Spacing CLOSE = new Spacing(7, 9, 11, 38, 23, 7);
}
