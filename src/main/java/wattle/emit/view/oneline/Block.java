package wattle.emit.view.oneline;

import java.util.Map;
import wattle.emit.media.drawing.Sketch;

/**
 * One node of the diagram, drawn, to be placed by the layout.
 *
 * @param id in the graph
 * @param sketch with its upper left corner at the origin
 * @param entry height at which its supply comes in from the left
 * @param exits where the line to each panel that it feeds goes out to the right, by the name of the panel
 * @param label the same in words, as an HTML-like label of the graph with a port for each exit
 */
record Block(
    String id, Sketch sketch, double width, double height, double entry, Map<String, Exit> exits, String label) {
  Block {
    exits = Map.copyOf(exits);
  }

  /**
   * Where a line leaves.
   *
   * @param port its name in the label
   */
  record Exit(String port, double height) {}
}
