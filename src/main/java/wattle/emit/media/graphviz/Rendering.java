package wattle.emit.media.graphviz;

import java.util.List;

/**
 * A graph that was laid out.
 *
 * @param text the picture or the layout, in the format that was asked for
 * @param warnings what Graphviz remarked about a graph that it drew all the same, such as a label that does not fit
 */
public record Rendering(String text, List<String> warnings) {
  public Rendering {
    warnings = List.copyOf(warnings);
  }
}
