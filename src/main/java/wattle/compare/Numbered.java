package wattle.compare;

import java.util.function.Predicate;

/**
 * Names of breakers that feed the same thing, such as the two fuses of a multiwire circuit: the first has the plain name, the others their
 * number in the order of their slots, so that each is still the same after a move.
 */
public final class Numbered {
  private Numbered() {}

  /** The name itself while nobody has it; else {@code of wet, 2nd breaker}, and on. */
  public static String among(String name, Predicate<String> taken) {
    String free = name;
    for (int number = 2; taken.test(free); number++) {
      free = name + ", " + ordinal(number) + " breaker";
    }
    return free;
  }

  private static String ordinal(int number) {
    boolean teen = number % 100 / 10 == 1;
    return number + (teen ? "th" : switch (number % 10) {
      case 1 -> "st";
      case 2 -> "nd";
      case 3 -> "rd";
      default -> "th";
    });
  }
}
