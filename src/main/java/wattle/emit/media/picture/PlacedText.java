package wattle.emit.media.picture;

import java.awt.geom.AffineTransform;

/**
 * A line of text of a picture, ready to be drawn.
 *
 * @param text the characters in the order in which they are drawn, left to right
 * @param face the shipped face
 * @param size the size in the units of {@code placed}
 * @param rgb the color, as in 0xRRGGBB
 * @param placed from a system whose origin is the start of the baseline, y downwards, to pixels of the picture
 */
record PlacedText(String text, Face face, double size, int rgb, AffineTransform placed) {}
