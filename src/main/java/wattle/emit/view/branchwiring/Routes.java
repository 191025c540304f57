package wattle.emit.view.branchwiring;

import java.util.ArrayList;
import java.util.List;
import wattle.emit.media.drawing.Insulation;
import wattle.emit.media.drawing.Shape;

/** The ways of the wires in a box. */
final class Routes {
  /** A wire of a net; loose ones belong to none, and then {@code net} is unlike every other. */
  record Way(Object net, Shape.Wire wire) {}

  /** A wire connector, drawn as a bar as long as its wires need; {@code countAt} is where their number is written. */
  record Bar(Net net, double left, double right, double y, double countAt) {}

  private final List<Way> ways = new ArrayList<>();
  private final List<Bar> bars = new ArrayList<>();

  void wire(Object net, Insulation insulation, double... xy) {
    List<Shape.Corner> corners = new ArrayList<>();
    for (int i = 0; i < xy.length; i += 2) {
      Shape.Corner next = new Shape.Corner(xy[i], xy[i + 1]);
      if (corners.isEmpty() || !corners.get(corners.size() - 1).equals(next)) {
        corners.add(next);
      }
    }
    if (corners.size() > 1) {
      ways.add(new Way(net, new Shape.Wire(corners, insulation)));
    }
  }

  void bar(Bar bar) {
    bars.add(bar);
  }

  List<Way> ways() {
    return ways;
  }

  List<Bar> bars() {
    return bars;
  }

  /** How often wires of different nets cross. */
  int crossings() {
    List<Object> owners = new ArrayList<>();
    List<Shape.Line> lines = new ArrayList<>();
    for (Way way : ways) {
      for (Shape.Line piece : way.wire().pieces()) {
        owners.add(way.net());
        lines.add(piece);
      }
    }
    for (Bar bar : bars) {
      owners.add(bar.net());
      lines.add(new Shape.Line(bar.left(), bar.y(), bar.right(), bar.y(), Shape.Stroke.THIN));
    }
    int count = 0;
    for (int i = 0; i < lines.size(); i++) {
      for (int j = i + 1; j < lines.size(); j++) {
        if (!owners.get(i).equals(owners.get(j)) && cross(lines.get(i), lines.get(j))) {
          count++;
        }
      }
    }
    return count;
  }

  private static boolean cross(Shape.Line a, Shape.Line b) {
    boolean aLevel = a.y1() == a.y2();
    boolean bLevel = b.y1() == b.y2();
    if (aLevel == bLevel) {
      return false;
    }
    Shape.Line level = aLevel ? a : b;
    Shape.Line upright = aLevel ? b : a;
    return level.bounds().left() < upright.x1() && upright.x1() < level.bounds().right()
        && upright.bounds().top() < level.y1() && level.y1() < upright.bounds().bottom();
  }
}
