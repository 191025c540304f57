package wattle.emit.view.oneline;

import wattle.emit.media.text.Escape;

/** The label of a block in the graph: a table of fixed size, so that its ports lie where the block is drawn to have them. */
final class BlockLabel {
  private final StringBuilder rows = new StringBuilder();
  private final double width;
  private double height;

  BlockLabel(double width) {
    this.width = width;
  }

  /** A row whose lower edge lies at a height; text is cut by Graphviz where it is longer than the block is wide. */
  BlockLabel row(double lower, String port, String text) {
    long tall = Math.round(lower) - Math.round(height);
    rows.append("<TR><TD").append(port.isEmpty() ? "" : " PORT=\"" + port + "\"");
    rows.append(" ALIGN=\"LEFT\" FIXEDSIZE=\"TRUE\" WIDTH=\"").append(Math.round(width)).append("\" HEIGHT=\"");
    rows.append(Math.max(1, tall)).append("\">").append(Escape.xml(text)).append("</TD></TR>");
    height = lower;
    return this;
  }

  @Override
  public String toString() {
    return "<TABLE BORDER=\"0\" CELLBORDER=\"0\" CELLSPACING=\"0\" CELLPADDING=\"0\">" + rows + "</TABLE>";
  }
}
