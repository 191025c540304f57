package wattle.finding;

import java.util.Locale;

/** How much a finding weighs, gravest first. */
public enum Severity {
  /** Must not be built, or the text says nothing that could be built. */
  ERROR,
  /** An objection is likely. */
  WARNING,
  /** Good practice. */
  ADVICE;

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
