package wattle.emit.media.picture;

import java.util.List;

/**
 * A picture whose texts no longer need a font.
 *
 * @param svg the picture, its texts replaced by their outlines in the shipped faces, or taken out
 * @param width in CSS pixels
 * @param height in CSS pixels
 * @param texts the texts that were taken out and are still to be drawn, over the picture
 */
record OutlinedSvg(String svg, double width, double height, List<PlacedText> texts) {
  OutlinedSvg {
    texts = List.copyOf(texts);
  }

  /** Every text as outlines, in its place between the shapes. */
  static OutlinedSvg outlined(String svg) throws UnreadablePictureException {
    return new SvgOutliner(false).read(svg);
  }

  /**
   * Texts in one plain color taken out, so that they can be drawn as text; the others as outlines. A text that lies
   * under a shape comes to lie above it.
   */
  static OutlinedSvg lifted(String svg) throws UnreadablePictureException {
    return new SvgOutliner(true).read(svg);
  }
}
