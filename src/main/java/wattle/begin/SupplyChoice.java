package wattle.begin;

import java.util.Arrays;
import java.util.Optional;

/** Systems that a dwelling is supplied by, as a person names them. */
public enum SupplyChoice {
  /** 120/240 V, single phase, three wires. */
  SPLIT_PHASE("120/240", "120/240 V", 2, ""),
  /** Two hots and the neutral of a 208Y/120 V system. */
  TWO_LEGS_OF_WYE("120/208", "120/208 V", 2, " 208 V"),
  /** 208Y/120 V, three phase, four wires. */
  THREE_PHASE("208Y/120", "120/208 V", 3, " 208 V"),
  /** 230 V, one hot and a neutral. */
  SINGLE_230("230", "230 V", 1, "");

  private final String word;
  private final String volts;
  private final int legs;
  private final String rating;

  SupplyChoice(String word, String volts, int legs, String rating) {
    this.word = word;
    this.volts = volts;
    this.legs = legs;
    this.rating = rating;
  }

  /** What a user gives: {@code 208Y/120}. */
  public String word() {
    return word;
  }

  /** The system called so, with or without its unit. */
  public static Optional<SupplyChoice> of(String text) {
    String bare = text.strip().replaceFirst("(?i)\\s*V$", "");
    return Arrays.stream(values()).filter(s -> s.word.equalsIgnoreCase(bare)).findFirst();
  }

  /** The head of a service, behind its name. */
  String service(int amperes) {
    return volts + " " + amperes + " A" + (this == THREE_PHASE ? " three-phase" : "");
  }

  /** Hots at the service. */
  int legs() {
    return legs;
  }

  /** Hots of a dwelling that is one of several: two of a three-phase system. */
  int legsOfEach() {
    return Math.min(2, legs);
  }

  /** What stands behind a load between two hots; empty where it is made for the usual voltage. */
  String rating() {
    return rating;
  }

  /** Volts between two hots, or of the one hot. */
  int volts() {
    return switch (this) {
      case SPLIT_PHASE -> 240;
      case TWO_LEGS_OF_WYE, THREE_PHASE -> 208;
      case SINGLE_230 -> 230;
    };
  }

  /** The word of a way for a dwelling's feeder. */
  String poles() {
    return this == SINGLE_230 ? "" : "two-pole ";
  }
}
