package wattle.compare;

import java.util.Comparator;

/**
 * Figures that a revision should have and that could not be worked out, or not wholly.
 *
 * @param what in the trade's words
 * @param later whether it is the later revision that lacks them
 * @param why it does
 */
public record Gap(String what, boolean later, String why) {
  static final Comparator<Gap> ORDER = Comparator.comparing(Gap::later).thenComparing(Gap::what).thenComparing(Gap::why);

  Gap mirrored() {
    return new Gap(what, !later, why);
  }
}
