package wattle.emit.media.drawing;

import java.util.Arrays;

/**
 * How a conductor is drawn. Each has a color near that of its insulation, an outline, and a pattern of its own along
 * the middle, so that it can be told apart in black and white and by those who do not see colors; its name stands
 * beside it in any case. White and green mean neutral and ground by NFPA 70 200.6 and 250.119; the shades and the
 * patterns are our own.
 */
public enum Insulation {
  BLACK("black", "#000000", "#1c1c1c", "", ""), RED("red", "#6d0f0f", "#d43a2f", "#ffffff", "9 4"), BLUE("blue", "#12315f", "#3b78c4",
      "#ffffff", "2 4"), BROWN("brown", "#3a2110", "#7a4a25", "#ffffff", "5 3 1 3"), YELLOW("yellow", "#5d4a00", "#f0c832", "#000000",
          "1 5"), WHITE("white", "#000000", "#ffffff", "", ""), GRAY("gray", "#303030", "#b0b0b0", "", ""), GREEN("green", "#0c3d1c",
              "#3f9a52", "#000000",
              "7 3 1 3"), BARE("bare", "#53300d", "#d8924a", "#000000", "1 2"), OTHER("", "#303030", "#d0d0d0", "#000000", "3 3"),
  /** A white conductor with marks of tape or paint: it is no neutral. */
  MARKED_WHITE("", "#000000", "#ffffff", "#000000", "9 15"),
  /** The jacket of a whole cable, or a raceway. */
  SHEATH("", "#555555", "#e6e6e6", "", "");

  private final String word;
  private final String outline;
  private final String core;
  private final String mark;
  private final String pattern;

  Insulation(String word, String outline, String core, String mark, String pattern) {
    this.word = word;
    this.outline = outline;
    this.core = core;
    this.mark = mark;
    this.pattern = pattern;
  }

  /** By the word that plans and libraries use for a color; {@link #OTHER} for one that is not known. */
  public static Insulation of(String color) {
    return Arrays.stream(values()).filter(i -> !i.word.isEmpty() && i.word.equals(color)).findFirst().orElse(OTHER);
  }

  String outline() {
    return outline;
  }

  String core() {
    return core;
  }

  /** Color of the pattern; empty for none. */
  String mark() {
    return mark;
  }

  /** Dashes of the pattern, as SVG writes them. */
  String pattern() {
    return pattern;
  }

  /** Thickness with the outline. */
  public double width() {
    return this == SHEATH ? 11 : 5;
  }

  /** Whether paper shows through, so that its outline alone is what is seen. */
  boolean isWhite() {
    return this == WHITE || this == MARKED_WHITE;
  }

  double markWidth() {
    return this == MARKED_WHITE ? width() - 1.6 : 1.4;
  }
}
