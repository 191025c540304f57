package wattle.model;

/** One ungrounded conductor of the supply, as it arrives at a panel's bus. */
public enum Leg {
  A, B, C
}
