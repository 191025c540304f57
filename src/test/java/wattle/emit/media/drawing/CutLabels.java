package wattle.emit.media.drawing;

import java.util.ArrayList;
import java.util.List;

/** Labels that were cut: each ends at a word, and none could have shown another word in the room that is left beside it. */
public final class CutLabels {
  /** From the next thing, in pixels. */
  private static final double APART = 4;

  /** Of a drawing, beyond its shapes. */
  private static final double MARGIN = 24;

  private CutLabels() {}

  /** Every fault in words. */
  public static List<String> faults(Drawing drawing) {
    List<String> faults = new ArrayList<>();
    Bounds sheet = new Bounds(0, 0, drawing.width() - MARGIN, drawing.height());
    for (Shape shape : drawing.shapes()) {
      if (shape instanceof Shape.Text text && !text.whole().isEmpty()) {
        String kept = text.text().substring(0, text.text().length() - 1);
        if (!text.text().endsWith("…") || !text.whole().startsWith(kept)) {
          faults.add("not the beginning of its words: " + text);
        } else if (kept.contains(" ") && !" ,;:(–-".contains(text.whole().substring(kept.length(), kept.length() + 1))) {
          faults.add("cut within a word: " + text);
        } else if (isFree(drawing, sheet, text, longer(text.whole(), kept))) {
          faults.add("cut where there is room for '" + longer(text.whole(), kept) + "': " + text);
        }
      }
    }
    return faults;
  }

  /** With one more word. */
  private static String longer(String whole, String kept) {
    int from = kept.length();
    while (from < whole.length() && whole.charAt(from) == ' ') {
      from++;
    }
    int end = whole.indexOf(' ', from + 1);
    return end < 0 ? whole : whole.substring(0, end) + "…";
  }

  private static boolean isFree(Drawing drawing, Bounds sheet, Shape.Text text, String words) {
    Shape.Text longer = new Shape.Text(text.x(), text.y(), words, text.size(), text.bold(), text.anchor(), text.whole());
    Bounds room = longer.bounds();
    Bounds wide = new Bounds(room.left() - APART, room.top(), room.right() + APART, room.bottom());
    if (!sheet.contains(room)) {
      return false;
    }
    Bounds own = text.bounds();
    for (Shape shape : drawing.shapes()) {
      boolean marks = shape instanceof Shape.Spot || shape instanceof Shape.Link || shape instanceof Shape.Target;
      if (shape == text || marks || shape instanceof Shape.Box box && box.bounds().contains(wide)) {
        continue;
      }
      Bounds other = shape.bounds().grown(0.5);
      if (other.overlaps(wide) && !(shape instanceof Shape.Area) && !isBeneath(shape, own)) {
        return false;
      }
    }
    return true;
  }

  /** A line that goes beneath all of a label does not end it. */
  private static boolean isBeneath(Shape shape, Bounds own) {
    return shape instanceof Shape.Line line && line.y1() == line.y2() && line.y1() > own.bottom();
  }
}
