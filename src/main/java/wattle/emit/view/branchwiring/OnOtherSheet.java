package wattle.emit.view.branchwiring;

import java.util.List;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Sketch;
import wattle.model.Section;

/**
 * What is said beneath a box of a cable that goes on, or comes from, where another sheet may have it: as in
 * {@code 4 on sheet 2: 14/2 NM-B, 4 m, to hall.lamp}.
 *
 * @param mark the number at both ends of the cable
 * @param piece whose sheet is named
 * @param cable the words of the cable, and where it goes
 */
record OnOtherSheet(int mark, String piece, String cable) {
  private static final double LINE = 13;

  /** From the lower edge of the box to the first line, and after the last. */
  private static final double AROUND = 15;

  static OnOtherSheet onward(int mark, String piece, Section section, String to) {
    return new OnOtherSheet(mark, piece, CableWay.sentence(section, "to " + to));
  }

  static OnOtherSheet from(int mark, String piece, Section section, String from) {
    return new OnOtherSheet(mark, piece, CableWay.sentence(section, "from " + from));
  }

  private String before() {
    return mark + " on ";
  }

  private List<String> lines(double width) {
    return Fit.lines(before() + Shape.Continuation.WIDEST + ": " + cable, CableWay.SIZE, width);
  }

  /** The room that those take beneath a box of that width. */
  static double height(List<OnOtherSheet> all, double width) {
    return all.isEmpty() ? 0 : all.stream().mapToInt(o -> o.lines(width).size()).sum() * LINE + AROUND - LINE / 2;
  }

  /** @param y the lower edge of the box */
  static void draw(Sketch sketch, List<OnOtherSheet> all, double x, double y, double width) {
    double base = y + AROUND;
    for (OnOtherSheet one : all) {
      List<String> lines = one.lines(width);
      String head = one.before() + Shape.Continuation.WIDEST;
      String after = lines.get(0).length() > head.length() ? lines.get(0).substring(head.length()) : "";
      sketch.add(new Shape.Continuation(x, base, one.before(), one.piece, after, CableWay.SIZE, Anchor.START, width));
      for (String line : lines.subList(1, lines.size())) {
        base += LINE;
        sketch.fitted(x, base, line, CableWay.SIZE, false, Anchor.START, width);
      }
      base += LINE;
    }
  }
}
