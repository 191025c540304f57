package wattle.emit.drawing;

import java.util.ArrayList;
import java.util.List;
import wattle.emit.drawing.Shape.Corner;

/** A wire as SVG: the margin of paper, the outline, the core, the pattern, one over the other. */
final class WireSvg {
  private static final double MARGIN = 2.6;

  /** Thick enough that a white wire is seen on a screen that shows the whole sheet. */
  private static final double OUTLINE = 1.1;

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
    line(out, wire.corners(), insulation.outline(), width, "");
    line(out, wire.corners(), insulation.core(), width - 2 * OUTLINE, "");
    if (!insulation.mark().isEmpty()) {
      line(out, wire.corners(), insulation.mark(), insulation.markWidth(), insulation.pattern());
    }
  }

  private static void line(StringBuilder out, List<Corner> corners, String colour, double width, String dashes) {
    out.append("<polyline points=\"");
    for (int i = 0; i < corners.size(); i++) {
      out.append(i == 0 ? "" : " ").append(DrawingSvg.number(corners.get(i).x())).append(',');
      out.append(DrawingSvg.number(corners.get(i).y()));
    }
    out.append("\" fill=\"none\" stroke-linejoin=\"round\" stroke=\"").append(colour).append("\" stroke-width=\"");
    out.append(DrawingSvg.number(width)).append('"');
    out.append(dashes.isEmpty() ? "" : " stroke-dasharray=\"" + dashes + "\"").append("/>\n");
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
