package wattle.conductors;

import java.util.Locale;
import wattle.quantity.WireSize;

/** Whether a conductor is one wire or many. */
public enum Construction {
  SOLID, STRANDED;

  private static final WireSize THICKEST_SOLID = WireSize.awg(10);

  /** Solid up to 10 AWG, stranded above, as house cables are sold; common practice. */
  public static Construction usual(WireSize size) {
    return size.compareTo(THICKEST_SOLID) <= 0 ? SOLID : STRANDED;
  }

  /** The word that tables use. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
