package wattle.emit.view.oneline;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wattle.compare.Thing;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Sketch;
import wattle.model.Service;

/** The services of two revisions, each with its sign, and beneath a changed one what it was. */
final class DifferenceServices {
  private static final double SIZE = 10;

  private DifferenceServices() {}

  /** By the keys of {@link Revisions#services}. */
  static Map<String, Block> of(Revisions revisions) {
    Map<String, Block> blocks = new LinkedHashMap<>();
    int number = 0;
    for (String key : revisions.services()) {
      Service service = revisions.service(key);
      Block block = ServiceBlock.of(service, List.of(), revisions.isMetered(key), "n" + number++, revisions.units());
      Difference difference = revisions.ofService(key);
      String was = revisions.was(Thing.Kind.SERVICE, key);
      Sketch marked = new Sketch();
      double height = block.height() + (was.isEmpty() ? 0 : 16);
      difference.ground(-30, -6, block.width() + 30, height + 8).forEach(marked::add);
      difference.sign(marked, -24, 8);
      marked.add(block.sketch(), 0, 0);
      if (!was.isEmpty()) {
        marked.fitted(0, block.height() + 10, was, SIZE, false, Anchor.START, block.width() - 4);
      }
      blocks.put(key, new Block(block.id(), marked, block.width(), height, block.entry(), block.exits(), block.label()));
    }
    return blocks;
  }
}
