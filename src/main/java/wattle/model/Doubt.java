package wattle.model;

/**
 * What of a thing may be other than the house has it, after a mistake in the plan. What a doubt is about is named, but for those
 * of the whole.
 */
public enum Doubt {
  /** Figures and words of a service. */
  SERVICE,
  /** Which electrodes a service has, and what they are. */
  ELECTRODES,
  /** Bus, main and facts of a panel. */
  PANEL,
  /** What a panel hangs on, and which legs it has. */
  SUPPLY,
  /** The run that feeds a panel. */
  FEEDER,
  /** Which breakers a panel has. */
  SLOTS,
  /** Rating of a breaker. */
  RATING,
  /** How the poles of a breaker move together. */
  HANDLE,
  /** Legs of a breaker. */
  LEGS,
  /** Protection and other traits of a breaker. */
  TRAITS,
  /** What a breaker feeds. */
  TARGET,
  /** Use and status of a branch. */
  USE,
  /** Which breakers feed a branch. */
  FED,
  /** Which boxes a branch comes to, by which wires. */
  WAY,
  /** Lengths of a branch's runs. */
  LENGTH,
  /** Where the runs of a branch go and how they are held. */
  SURROUNDINGS,
  /** Facts and use of a room. */
  ROOM,
  /** Which boxes and devices a room has. */
  CONTENTS,
  /** Volume and traits of a box. */
  BOX,
  /** Which branches come to a box. */
  REACHED,
  /** Kind, traits and place of a device. */
  KIT,
  /** Loads and other figures of a device. */
  FIGURES,
  /** Whether a thing is new, existing or to be removed. */
  STATUS,
  /** What happens in a trial, by its name; what an expectation expects, by its place. */
  TRIAL,
  /** Facts of a dwelling. */
  DWELLING,
  /** What works what. */
  CONTROLS,
  /** Whether a service was left out. */
  SERVICES,
  /** Whether a panel was left out. */
  PANELS,
  /** Whether a branch was left out. */
  BRANCHES,
  /** Whether a room was left out. */
  ROOMS,
  /** Whether a device was left out. */
  DEVICES;

  /** Whether it is about the whole house, and names nothing. */
  public boolean isOfWhole() {
    return ordinal() >= DWELLING.ordinal();
  }
}
