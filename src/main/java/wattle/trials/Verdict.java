package wattle.trials;

import java.util.List;

/** A trial in one line: what is dangerous in it, the deadliest first, or what was looked for and not found. Never that it is harmless. */
final class Verdict {
  /** What the dangers of a trial are looked for in. */
  private static final String LOOKED_FOR = "live metal, volts on metal that animals touch, exchanged and hidden live conductors, faults,"
      + " voltages too high or too low, conductors above their ampacity, breakers, bus bars and sources above their rating, power into a"
      + " generator, loads that do not get their power, loose joints";

  private Verdict() {}

  static String of(TrialResult result) {
    List<Danger> dangers = result.dangers();
    if (dangers.isEmpty()) {
      return "none of the dangers that are checked (" + LOOKED_FOR + ")";
    }
    long others = dangers.stream().map(Danger::kind).distinct().count() - 1;
    String more = dangers.size() == 1
        ? ""
        : "; " + (dangers.size() - 1) + " more" + (others == 0
            ? " of this kind"
            : others == 1
                ? ", of one other kind"
                : ", of " + others
                    + " other kinds");
    return heading(dangers.get(0).kind()) + dangers.get(0).words() + more;
  }

  private static String heading(Danger.Kind kind) {
    return switch (kind) {
      case PROTECTION -> "protection acts: ";
      case FLOATING, UNDERVOLTAGE, NOT_SERVED, ANIMALS -> "attention: ";
      default -> "DANGER: ";
    };
  }
}
