package wattle.finding;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Kinds of mistakes in a plan that something else is decided by: what is in doubt after them, or what a command goes on with.
 * Whoever finds one and whoever decides by it name the same constant. All other findings have names for readers alone.
 */
public enum Mistake {
  /** Hots that share a neutral are on one leg. */
  SHARED_NEUTRAL_SAME_LEG,
  /** Hots that share a neutral do not open together. */
  SHARED_NEUTRAL_TWO_BREAKERS,
  /** Both poles of a breaker are on one leg: it gives no 240 V. */
  TWO_POLE_ON_ONE_LEG,
  /** A three-way switch is the only one for its light. */
  THREE_WAY_ALONE,
  /** A transfer switch has only one supply. */
  TRANSFER_WITHOUT_SOURCE,
  /** Two branches reach one device. */
  DEVICE_FED_TWICE,
  /** A load that works between two legs is fed by one pole. */
  LOAD_240_ON_ONE_POLE,
  /** A load between a leg and the neutral is on two poles without a neutral. */
  LOAD_120_WITHOUT_NEUTRAL,
  /** A device needs a neutral and its box has none. */
  NEUTRAL_MISSING,
  /** A breaker has no rating, so nothing can be checked about its wire. */
  RATING_MISSING,
  /** A rating is nought or less. */
  RATING_NOT_POSITIVE,
  /** A figure has no unit. */
  UNIT_MISSING,
  /** No unit is written like this. */
  UNIT_UNKNOWN,
  /** A figure is of the wrong kind, such as a length where a current is meant. */
  DIMENSION_MISMATCH,
  /** A figure is zero or below zero where only a larger one has a meaning, such as a rating or a length. */
  FIGURE_NOT_POSITIVE,
  /** An expression divides by nought or has no finite value. */
  DIVISION_BY_ZERO,
  /** The panel has no such slot. */
  SLOT_OUT_OF_RANGE,
  /** Two breakers are in one slot. */
  SLOT_TAKEN,
  /** The supply has no leg of this name. */
  LEG_UNKNOWN,
  /** A slot line names two slots and does not say whether their handles move together. */
  HANDLE_UNSTATED,
  /** The number of slots and the poles that the line states do not agree. */
  POLE_COUNT,
  /** No type of cable of this name is in the library. */
  CABLE_UNKNOWN,
  /** No wire has this size. */
  WIRE_SIZE_UNKNOWN,
  /** A run has a length below nought. */
  LENGTH_NEGATIVE,
  /** A raceway is given more conductors than can be in one. */
  CONDUCTORS_TOO_MANY,
  /** The standard library has no such pack. */
  PACK_UNKNOWN,
  /** Two things have one name, so that the name means neither. */
  NAME_TWICE,
  /** A slot feeds something that the plan does not have. */
  BREAKER_WITHOUT_BRANCH,
  /** The line stopped making sense here; what could have stood there is shown. */
  UNEXPECTED,
  /** No slot feeds this branch, so nothing protects its wire. */
  BRANCH_WITHOUT_BREAKER,
  /** A branch starts at one panel and its breaker is in another. */
  BRANCH_FROM_WRONG_PANEL,
  /** Hots of one branch come from two panels. */
  BRANCH_FED_BY_TWO_PANELS,
  /** A run has no length. */
  RUN_WITHOUT_LENGTH,
  /** A word means nothing here. */
  WORD_UNKNOWN,
  /** No branch reaches this device. */
  DEVICE_UNFED,
  /** A branch has two hots and the plan does not say which one this 120 V device is on. */
  HOT_UNSTATED,
  /** A device is put on a hot that its branch does not have. */
  HOT_UNKNOWN,
  /** Nothing has this name. */
  NAME_UNKNOWN,
  /** A trial asks for something that this house cannot do. */
  TRIAL_IMPOSSIBLE,
  /** Two breakers feed one panel. */
  PANEL_FED_TWICE,
  /** Panels feed each other in a circle; no supply reaches them. */
  FEEDER_CIRCLE,
  /** More panels feed one another in a row than are followed. */
  FEEDERS_IN_A_ROW,
  /** Only what is or is not can be denied with no, such as no over-steps. */
  FACT_DENIED,
  /** One fact is stated twice; only one can be meant. */
  FACT_TWICE,
  /** A fact of this name is not known here. */
  FACT_UNKNOWN,
  /** A fact that needs a figure has none. */
  FACT_WITHOUT_FIGURE,
  /** A power factor is not between 0 and 1. */
  POWER_FACTOR_OUT_OF_RANGE;

  private static final Map<String, Mistake> BY_WORD = new HashMap<>();

  static {
    for (Mistake mistake : values()) {
      BY_WORD.put(mistake.word(), mistake);
    }
  }

  /** The name of its findings, as they show it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Whether a finding is of this kind. */
  public boolean is(Finding finding) {
    return word().equals(finding.rule());
  }

  /** The kind that a finding is of; absent where nothing is decided by it. */
  public static Optional<Mistake> of(Finding finding) {
    return Optional.ofNullable(BY_WORD.get(finding.rule()));
  }
}
