package wattle.emit.media.drawing;

import java.util.ArrayList;
import java.util.List;
import wattle.emit.media.drawing.Shape.Corner;

/** A wire as SVG: the margin of paper, the outline, the core, the pattern, one over the other. */
final class WireSvg {
  private static final double MARGIN = 2.6;

  private static final double OUTLINE = 1;

  /** How far from its ends the margin begins, so that it does not cut into what the wire is joined to. */
  private static final double TRIMMED = 7;

  private WireSvg() {}

  static void write(StringBuilder out, Shape.Wire wire) {
    Insulation insulation = wire.insulation();
    double width = insulation.width();
    List<Corner> margin = trimmed(wire.corners());
    if (!margin.isEmpty()) {
      line(out, margin, "#ffffff", width + 2 * MARGIN, "");
    }
    if (insulation.isWhite()) {
      // As two lines: of a thin stroke over a thick one a screen at low resolution may show nothing, or only black.
      line(out, wire.corners(), insulation.core(), width, "");
      for (double side : new double[]{-1, 1}) {
        line(out, beside(wire.corners(), side * (width - OUTLINE) / 2), insulation.outline(), OUTLINE, "");
      }
    } else {
      line(out, wire.corners(), insulation.outline(), width, "");
      line(out, wire.corners(), insulation.core(), width - 2 * OUTLINE, "");
    }
    if (!insulation.mark().isEmpty()) {
      line(out, wire.corners(), insulation.mark(), insulation.markWidth(), insulation.pattern());
    }
  }

  /** Attributes that all strokes of wires share, so that a group of wires has them once. */
  static final String COMMON = " fill=\"none\" stroke-linejoin=\"round\"";

  private static void line(StringBuilder out, List<Corner> corners, String color, double width, String dashes) {
    out.append("<path d=\"");
    way(out, corners);
    out.append("\" stroke=\"").append(color).append("\" stroke-width=\"").append(DrawingSvg.number(width)).append('"');
    out.append(dashes.isEmpty() ? "" : " stroke-dasharray=\"" + dashes + "\"").append("/>\n");
  }

  /** Nearly all pieces are level or upright, and those take one number. */
  private static void way(StringBuilder out, List<Corner> corners) {
    String x = "";
    String y = "";
    for (Corner corner : corners) {
      String nextX = DrawingSvg.number(corner.x());
      String nextY = DrawingSvg.number(corner.y());
      if (x.isEmpty()) {
        out.append('M').append(nextX).append(' ').append(nextY);
      } else if (nextY.equals(y)) {
        out.append('H').append(nextX);
      } else if (nextX.equals(x)) {
        out.append('V').append(nextY);
      } else {
        out.append('L').append(nextX).append(' ').append(nextY);
      }
      x = nextX;
      y = nextY;
    }
  }

  /** The same way at a distance to its right, with its corners mitred. */
  private static List<Corner> beside(List<Corner> corners, double distance) {
    List<Corner> other = new ArrayList<>();
    for (int i = 0; i < corners.size(); i++) {
      double[] before = normal(corners, Math.max(1, i));
      double[] after = normal(corners, Math.min(corners.size() - 1, i + 1));
      double along = 1 + before[0] * after[0] + before[1] * after[1];
      double x = along < 0.1 ? before[0] : (before[0] + after[0]) / along;
      double y = along < 0.1 ? before[1] : (before[1] + after[1]) / along;
      other.add(new Corner(corners.get(i).x() + distance * x, corners.get(i).y() + distance * y));
    }
    return other;
  }

  /** Of the piece that ends at a corner, at right angles to it, one long. */
  private static double[] normal(List<Corner> corners, int end) {
    double x = corners.get(end).x() - corners.get(end - 1).x();
    double y = corners.get(end).y() - corners.get(end - 1).y();
    double length = Math.max(1e-9, Math.hypot(x, y));
    return new double[]{-y / length, x / length};
  }

  /** The same way, without a piece at each end; empty where nothing is left. */
  private static List<Corner> trimmed(List<Corner> corners) {
    List<Corner> shorter = new ArrayList<>(corners);
    for (int end = 0; end < 2; end++) {
      int at = end == 0 ? 0 : shorter.size() - 1;
      Corner from = shorter.get(at);
      Corner to = shorter.get(end == 0 ? 1 : at - 1);
      double length = Math.hypot(to.x() - from.x(), to.y() - from.y());
      if (length <= 2 * TRIMMED) {
        return List.of();
      }
      double part = TRIMMED / length;
      shorter.set(at, new Corner(from.x() + part * (to.x() - from.x()), from.y() + part * (to.y() - from.y())));
    }
    return shorter;
  }
}
