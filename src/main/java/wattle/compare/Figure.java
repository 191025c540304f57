package wattle.compare;

import wattle.derivation.Derivation;

/** What a measure comes to in one revision. */
public sealed interface Figure {
  /**
   * @param note where, by which method or of how much; may be empty
   */
  record Known(Derivation derivation, String note) implements Figure {}

  /** A figure that the plan should have and that could not be worked out. */
  record Unknown(String why) implements Figure {}

  /** There is no such thing in this revision, and nothing to measure. */
  record Absent() implements Figure {}
}
