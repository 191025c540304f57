package wattle.emit.view.oneline;

import java.util.ArrayList;
import java.util.List;
import wattle.compare.Comparison;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Piece;
import wattle.emit.media.drawing.Plate;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.View;
import wattle.figures.HouseFigures;
import wattle.model.House;
import wattle.words.Caution;

/**
 * The one-line diagrams of two revisions in one: what both have, what came, what went, and what changed with what it was.
 * On sheets it stands as a whole where it fits, else in {@link DifferencePieces}.
 */
public final class OneLineDifference implements View {
  private final House before;
  private final House after;
  private final Revisions revisions;

  public OneLineDifference(HouseFigures before, HouseFigures after, Comparison comparison) {
    this.before = before.house();
    this.after = after.house();
    revisions = new Revisions(before, after, comparison);
  }

  /** The whole diagram with its legend. */
  public Drawing drawing() {
    String plan = after.title().or(before::title).orElse("untitled plan");
    return new Plate(whole().shapes(), legend(), title(), plan, scale(), description()).drawing();
  }

  private Sketch whole() {
    return DifferenceLayout.of(revisions, DifferenceServices.of(revisions));
  }

  @Override
  public List<Piece> pieces(double width, double height) {
    Sketch whole = whole();
    if (whole.shapes().isEmpty()) {
      return List.of();
    }
    Piece one = new Piece("whole", whole.shapes());
    return one.bounds().width() <= width && one.bounds().height() <= height
        ? List.of(one)
        : new DifferencePieces(revisions, DifferenceServices.of(revisions), width, height).pieces();
  }

  @Override
  public String scale() {
    return Plate.NO_SCALE;
  }

  @Override
  public String title() {
    String was = before.revision().map(Object::toString).orElse("");
    String is = after.revision().map(Object::toString).orElse("");
    return "What changed"
        + (was.equals(is) ? "" : " from revision " + (was.isEmpty() ? "none" : was) + " to " + (is.isEmpty() ? "none" : is));
  }

  @Override
  public String description() {
    List<String> words = new ArrayList<>();
    revisions.panels().forEach(
        key -> revisions.rows(key).stream()
            .filter(r -> r.difference() != Difference.SAME)
            .forEach(r -> words.add("panel " + key + " " + r.row().slots() + " " + r.row().what() + ": "
                + r.difference().name().toLowerCase(java.util.Locale.ROOT)
                + (r.was().isEmpty() ? "" : ", " + r.was()))));
    return words.isEmpty() ? "No line of a panel differs." : String.join(". ", words) + ".";
  }

  @Override
  public Legend legend() {
    List<Legend.Item> items = new ArrayList<>();
    items.add(item(Difference.ADDED, "added: a square with a plus, whole outline"));
    items.add(item(Difference.REMOVED, "removed: a circle with a minus, dashed outline and line"));
    items.add(item(Difference.CHANGED, "changed: a triangle, with the earlier value below"));
    return new Legend(
        items,
        List.of(
            "Parts without a sign are the same in both. Figures are those of the later revision.",
            "Length: from the panel to the farthest box. A stroke across a line for each hot.",
            Caution.LONG));
  }

  private static Legend.Item item(Difference difference, String words) {
    Sketch sign = new Sketch();
    difference.ground(0, -9, 30, 18).forEach(sign::add);
    difference.sign(sign, 9.5, 0);
    List<Shape> shapes = sign.shapes();
    return new Legend.Item(shapes, 32, words);
  }
}
