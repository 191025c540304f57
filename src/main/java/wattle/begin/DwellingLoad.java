package wattle.begin;

import java.util.List;

/**
 * What the feeder of a dwelling must carry, from above: lighting and receptacles, two small-appliance circuits and a laundry by NFPA
 * 70-2023 220.41, 220.52 and table 220.45, and all appliances by their nameplates; in Canada the least that CSA C22.1-21 8-202 counts. What
 * the code lets out of it can only be less.
 */
final class DwellingLoad {
  private static final double PER_SQUARE_METER = 33;
  private static final double SMALL_APPLIANCE_CIRCUITS = 3 * 1500;
  private static final double WHOLE = 3000;
  private static final double OF_THE_REST = 0.35;
  /** 125 % of the largest motor and of continuous loads, as if all were. */
  private static final double CONTINUOUS = 1.25;

  /** CSA C22.1 8-202 1) b), a flat, and 8-200 1) b) ii), a small house. */
  private static final double LEAST_IN_CANADA = 14400;
  /** CSA C22.1 8-200 1) b) i), one of two units of such an area. */
  private static final double LEAST_OF_A_UNIT = 24000;
  private static final double AREA_OF_A_UNIT = 80;

  private DwellingLoad() {}

  /** @param circuits of one dwelling */
  static double amperes(Answers answers, List<Circuit> circuits) {
    double general = answers.squareMeters() * PER_SQUARE_METER + SMALL_APPLIANCE_CIRCUITS;
    double demand = Math.min(general, WHOLE) + Math.max(0, general - WHOLE) * OF_THE_REST;
    double fixed = circuits.stream().filter(Circuit::isOfAppliances).mapToDouble(Circuit::voltAmperes).sum();
    boolean unit = answers.dwellings() == 2 && answers.squareMeters() >= AREA_OF_A_UNIT;
    double least = !answers.wiring().canadian() ? 0 : unit ? LEAST_OF_A_UNIT : LEAST_IN_CANADA;
    return Math.max(least, demand + fixed * CONTINUOUS) / answers.system().volts();
  }
}
