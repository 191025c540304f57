package wattle.emit.media.paper;

import wattle.emit.media.drawing.Bounds;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.View;

/** What every sheet of a view has in common: the border, the legend, and the room that they leave. */
final class SheetFrame {
  /** 10 mm, as ISO 5457 has it on three sides; it is also what printers cannot reach. */
  private static final double MARGIN = 38;

  private static final double PAD = 14;

  /** Legends are made for screens; on paper their type has nine points. */
  static final double LEGEND_SCALE = Sheets.READABLE_TYPE * Sheets.PIXELS_PER_POINT / Legend.SMALLEST;

  private final double width;
  private final double height;
  private final Legend legend;
  private final double blockWidth;
  private final double leastBlockHeight;
  private final boolean beside;
  private final double legendWidth;
  private final double legendHeight;

  /** @param width of the sheet, in pixels */
  SheetFrame(double width, double height, Legend legend, TitleBlock block, String view) {
    this.width = width;
    this.height = height;
    this.legend = legend;
    double inner = width - 2 * MARGIN;
    blockWidth = Math.min(TitleBlock.WIDEST, inner);
    leastBlockHeight = block.height(blockWidth, view);
    double left = inner - blockWidth - 2 * PAD;
    double above = height(legend, inner - 2 * PAD);
    // Beside the title block where that is wide enough to be read in lines, and saves height.
    beside = left > Math.max(240, legend.widestItem() * LEGEND_SCALE)
        && Math.max(leastBlockHeight, height(legend, left)) < leastBlockHeight + above;
    legendWidth = beside ? left : inner - 2 * PAD;
    legendHeight = height(legend, legendWidth);
  }

  private static double height(Legend legend, double width) {
    return sketch(legend, width).bounds().bottom() + 2 * PAD;
  }

  private static Sketch sketch(Legend legend, double width) {
    return legend.sketch(width / LEGEND_SCALE).scaled(LEGEND_SCALE);
  }

  double width() {
    return width;
  }

  double height() {
    return height;
  }

  private double stripTop() {
    double strip = beside ? Math.max(leastBlockHeight, legendHeight) : leastBlockHeight + legendHeight;
    return height - MARGIN - strip;
  }

  /** Where the view goes. */
  Bounds room() {
    return new Bounds(MARGIN + PAD, MARGIN + PAD, width - MARGIN - PAD, stripTop() - PAD);
  }

  /** The border, the legend and the title block. */
  Sketch sketch(TitleBlock block, View view, int sheet, int sheets) {
    Sketch sketch = new Sketch();
    double blockHeight = beside ? Math.max(leastBlockHeight, legendHeight) : leastBlockHeight;
    sketch.box(MARGIN, MARGIN, width - 2 * MARGIN, height - 2 * MARGIN, Stroke.THICK, Fill.NONE);
    sketch.line(MARGIN, stripTop(), width - MARGIN, stripTop());
    sketch.add(sketch(legend, legendWidth), MARGIN + PAD, stripTop() + PAD);
    sketch.add(
        block.sketch(blockWidth, blockHeight, view.title(), view.scale(), sheet, sheets),
        width - MARGIN - blockWidth, height - MARGIN - blockHeight);
    return sketch;
  }
}
