package wattle.server;

import java.util.Locale;

/**
 * A thing that has a name.
 *
 * @param name as it is known where it is written: {@code kitchen.c1} for a box or device
 * @param pattern the pattern whose own it is; empty for a name of the plan
 */
record Named(Kind kind, String name, String pattern) {
  Named(Kind kind, String name) {
    this(kind, name, "");
  }

  /** What names are given to; two things of different kinds may share one, a branch and a panel may not. */
  enum Kind {
    BRANCH, PANEL, SERVICE, DWELLING, ROOM,
    /** A box, or a device, which may be its own box. */
    DEVICE, RACEWAY, CONSTANT, TRIAL, PATTERN, PLACEMENT, PARAMETER, PART, CABLE, TABLE, LIMIT, PACK, RULE;

    @Override
    public String toString() {
      return this == DEVICE ? "box or device" : name().toLowerCase(Locale.ROOT);
    }
  }

  /** The last word of the name, which is what stands in the text. */
  String word() {
    return name.substring(name.lastIndexOf('.') + 1);
  }

  /** Whether the plan's own files may give it another name. */
  boolean isOfThePlan() {
    return switch (kind) {
      case BRANCH, PANEL, SERVICE, DWELLING, ROOM, DEVICE, RACEWAY, CONSTANT, TRIAL, PATTERN, PLACEMENT, PARAMETER -> true;
      case PART, CABLE, TABLE, LIMIT, PACK, RULE -> false;
    };
  }
}
