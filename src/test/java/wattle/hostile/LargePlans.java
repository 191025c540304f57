package wattle.hostile;

import java.util.Random;
import java.util.function.IntFunction;

/** Texts of any size that are hard on memory: sound, broken in each line, never closed, and none at all. */
enum LargePlans {
  ROOMS(i -> "room r" + i + " \"Room " + i + "\" { l: light 10 W  c: receptacle  s: switch for l }\n"), WRONG_LINES(
      i -> "room r" + i + " 10 \"Room " + i + "\" { l light ++ c: receptacle }\n"), NEVER_CLOSED(
          i -> i == 0 ? "room a {\n" : " l" + i + ": light 10 W \"lamp " + i + "\"\n"), ONE_BRANCH(
              i -> i == 0 ? "branch a by 14/2 NM-B { P" : " --1 m-- k.c" + i + "\n"), WORDS(i -> words(i) + " "), LINES_OF_WORDS(
                  i -> words(i) + (i % 8 == 0 ? "\n" : " ")), CLOSING_BRACES(i -> "}"), OPENING_BRACES(
                      i -> "a{"), SIGNS(i -> "" + "#$%&?!;^~`@\\|".charAt(Math.floorMod(i * 31, 13))), QUOTES(i -> "\""), PANELS_IN_A_ROW(
                          i -> "panel p" + i + " by 5 m of 6/3 NM-B { bus 60 A  slots 4\n  1+3 60 A two-pole p" + (i + 1)
                              + " \"next\"\n}\n"), SWITCHES_OF_ONE_LAMP(
                                  i -> i == 0 ? "room a {\n  l: light 10 W\n" : "  s" + i + ": three-way switch for l\n"), ONE_RACEWAY(
                                      i -> i == 0
                                          ? "raceway r 2 in EMT 30 m\nbranch a by r with 2 x 12 Cu THHN, 12 Cu ground { P"
                                          : " --1 m-- k.c" + i + "\n"), TRIALS(
                                              i -> "trial t" + i + " { k.l draws " + i % 100
                                                  + " W }\nexpect voltage at k.l is at least 110 V in t" + i + "\n");

  private static final String[] WORDS_OF_PLANS = {"light", "room", "10", "W", "\"x\"", "{", "}", "--", "m", "branch", "by", "14/2",
      "NM-B", ":", "a", "+", "main", "panel", "slots"};

  private final IntFunction<String> piece;

  LargePlans(IntFunction<String> piece) {
    this.piece = piece;
  }

  private static String words(int i) {
    return WORDS_OF_PLANS[new Random(i).nextInt(WORDS_OF_PLANS.length)];
  }

  /** A text of so many bytes, or a few fewer where it ends with a line. */
  String ofSize(int bytes) {
    StringBuilder text = new StringBuilder(bytes);
    for (int i = 0;; i++) {
      String next = piece.apply(i);
      if (text.length() + next.length() > bytes) {
        return text.toString();
      }
      text.append(next);
    }
  }
}
