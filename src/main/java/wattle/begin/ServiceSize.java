package wattle.begin;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Services that dwellings usually have, with the conductors of the service, of the electrodes and of a feeder of so many amperes.
 *
 * <p>Drop of one dwelling on 120/240 V: NFPA 70-2023 table 310.12(A), aluminum; its least is 100 A, and the 60 A of old work have 4 AWG by
 * table 310.16. Feeder of one dwelling: table 310.12(A), copper. All other services: table 310.16, copper, 75 °C (up to 100 A: 60 °C).
 * Electrode conductors: table 250.66, copper. Grounds of feeders: table 250.122, copper. Trade sizes of raceways and sizes in mm²:
 * common practice. In Canada the conductors to electrodes are 6 AWG copper (CSA C22.1-21 10-114).
 */
public enum ServiceSize {
  A60(60, 60, "4 Al triplex", "8 Cu", "16", 1, "1 in", "4", "4", "10"), // 70 A of copper
  A100(100, 125, "2 Al triplex", "8 Cu", "25", 1, "1-1/4 in", "2", "4", "8"), // 95 A of copper at 60 °C, the next standard size
  A125(125, 125, "1/0 Al triplex", "6 Cu", "35", 1, "1-1/2 in", "1", "2", "6"), // 130 A of copper
  A150(150, 200, "2/0 Al triplex", "6 Cu", "50", 1, "2 in", "1/0", "1", "6"), // 150 A of copper
  A200(200, 225, "4/0 Al triplex", "4 Cu", "95", 1, "2 in", "3/0", "2/0", "6"), // 200 A of copper
  A225(225, 225, "250 kcmil Al triplex", "2 Cu", "95", 1, "2-1/2 in", "4/0", "3/0", "4"), // 230 A of copper
  A400(400, 400, "600 kcmil Al triplex", "1/0 Cu", "240", 1, "4 in", "600 kcmil", "400 kcmil", "3"), // 420 A of copper
  A600(600, 600, "", "2/0 Cu", "", 2, "3 in", "350 kcmil", "", ""), // 620 A of copper
  A800(800, 800, "", "3/0 Cu", "", 2, "4 in", "600 kcmil", "", ""), // 840 A of copper
  A1000(1000, 1000, "", "3/0 Cu", "", 3, "3 in", "400 kcmil", "", ""), // 1005 A of copper
  A1200(1200, 1200, "", "3/0 Cu", "", 4, "3 in", "350 kcmil", "", ""), // 1240 A of copper
  A1600(1600, 1600, "", "3/0 Cu", "", 5, "3 in", "400 kcmil", "", ""), // 1675 A of copper
  A2000(2000, 2000, "", "3/0 Cu", "", 6, "3 in", "400 kcmil", "", ""), // 2010 A of copper
  A3000(3000, 3000, "", "3/0 Cu", "", 9, "3 in", "400 kcmil", "", ""), // 3015 A of copper
  A4000(4000, 4000, "", "3/0 Cu", "", 12, "3 in", "400 kcmil", "", ""); // 4020 A of copper

  /** The most that one dwelling is asked for. */
  private static final int MOST_OF_ONE = 400;
  /** The least of new work: NFPA 70-2023 230.79(C). */
  private static final int LEAST_OF_NEW = 100;

  private final int amperes;
  private final int bus;
  private final String drop;
  private final String electrode;
  private final String mm2;
  private final int sets;
  private final String raceway;
  private final String conductor;
  private final String ofDwelling;
  private final String ground;

  ServiceSize(
      int amperes, int bus, String drop, String electrode, String mm2, int sets, String raceway, String conductor, String ofDwelling,
      String ground) {
    this.amperes = amperes;
    this.bus = bus;
    this.drop = drop;
    this.electrode = electrode;
    this.mm2 = mm2;
    this.sets = sets;
    this.raceway = raceway;
    this.conductor = conductor;
    this.ofDwelling = ofDwelling;
    this.ground = ground;
  }

  public int amperes() {
    return amperes;
  }

  int bus() {
    return bus;
  }

  /** The least of so many amperes at least, of what one dwelling has. */
  static ServiceSize ofDwelling(double amperes) {
    return Arrays.stream(values()).filter(s -> s.amperes >= Math.min(amperes, MOST_OF_ONE)).findFirst().orElseThrow();
  }

  /** Conductors of the service, as they stand behind {@code run 20 m of}. */
  String run(Answers answers) {
    if (answers.system() == SupplyChoice.SINGLE_230) {
      return mm2 + " mm2 Cu duplex";
    }
    if (answers.system() == SupplyChoice.SPLIT_PHASE && answers.dwellings() == 1 && !answers.wiring().canadian()) {
      return drop;
    }
    return inSets() + answers.wiring().tradeSize(raceway) + " PVC with " + (answers.system().legs() + 1) + " x " + copper(answers.wiring())
        + " Cu "
        + answers.wiring().conductor();
  }

  /** In Canada conductors have the ampacity of the least load, 100 A by 8-200 1), with no step to the next standard breaker. */
  private String copper(Wiring wiring) {
    return wiring.canadian() && this == A100 ? "1" : conductor;
  }

  private String inSets() {
    return sets == 1 ? "" : sets + " sets of ";
  }

  /** Conductors of a water pipe or, on 230 V, of rods as electrodes. */
  String electrode(SupplyChoice system) {
    return system == SupplyChoice.SINGLE_230 ? "16 mm2 Cu" : electrode;
  }

  /** Conductors of the feeder of one dwelling, with its ground, in a dry building; in Canada no smaller than of any other feeder. */
  String feeder(Wiring wiring) {
    if (wiring.system() == SupplyChoice.SINGLE_230) {
      return mm2 + " mm2 Cu TPS";
    }
    return wiring.tradeSize(raceway) + " EMT with 3 x " + (wiring.canadian() ? copper(wiring) : ofDwelling) + " Cu " + wiring.conductor()
        + ", " + ground
        + " Cu ground";
  }

  /** The service of so many amperes. */
  public static Optional<ServiceSize> of(int amperes) {
    return Arrays.stream(values()).filter(s -> s.amperes == amperes).findFirst();
  }

  /** Those that such a house can have, smallest first: from 100 A in new work but on 230 V, to 400 A for one dwelling or on 230 V. */
  public static List<ServiceSize> of(SupplyChoice system, int dwellings, Work work) {
    boolean small = work.isExisting() || system == SupplyChoice.SINGLE_230;
    boolean large = dwellings > 1 && system != SupplyChoice.SINGLE_230;
    return Arrays.stream(values())
        .filter(s -> (small || s.amperes >= LEAST_OF_NEW) && (large || s.amperes <= MOST_OF_ONE))
        .toList();
  }
}
