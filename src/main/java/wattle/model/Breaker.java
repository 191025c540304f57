package wattle.model;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.quantity.Quantity;

/**
 * A breaker or fuse in a panel.
 *
 * @param poles one for each slot, in the order written
 * @param handle how its poles move together
 * @param rating in amperes; absent where the plan leaves it for later or could not be read
 * @param interrupting the fault current it can open; absent where not said
 * @param trip its type of instantaneous trip, where it is one of IEC 60898-1 that the plan states
 * @param base what a fuse sits in; absent for a breaker, and where the plan does not say
 * @param terminals what its own line says they are marked for; the panel's own marking counts as well
 * @param residual the residual current at which its ground-fault protection trips; absent where not said
 * @param target what it feeds
 * @param pinned whether {@code balance} must leave it where it is
 * @param legsStated whether the plan states the legs of its poles, so that they do not follow from its slots
 * @param backFed whether a source on it feeds the panel (solar, storage, generator)
 * @param interlocked whether it closes only where the panel's supply is open, by an interlock or a transfer switch
 * @param switchedNeutral whether the neutral of its branch goes over with the hots
 */
public record Breaker(
    BreakerId id,
    Device device,
    List<Pole> poles,
    Handle handle,
    Optional<Quantity> rating,
    Optional<Quantity> interrupting,
    Set<Protection> protections,
    Optional<Trip> trip,
    Optional<Base> base,
    Terminals terminals,
    Optional<Quantity> residual,
    Target target,
    Optional<String> label,
    boolean pinned,
    boolean legsStated,
    boolean backFed,
    boolean interlocked,
    boolean switchedNeutral,
    Status status,
    Origin origin) {
  public Breaker {
    poles = List.copyOf(poles);
    protections = Set.copyOf(protections);
  }

  /** What opens the circuit. */
  public enum Device {
    BREAKER, FUSE
  }

  /** What fuses of dwellings sit in (UL 4248-11, UL 248). */
  public enum Base {
    EDISON("edison-base", "Edison-base"), TYPE_S("type-s", "Type S"), CARTRIDGE("cartridge", "cartridge");

    private final String word;
    private final String words;

    Base(String word, String words) {
      this.word = word;
      this.words = words;
    }

    /** As in the notation. */
    public String word() {
      return word;
    }

    /** As in a text. */
    public String words() {
      return words;
    }
  }

  /** Types of instantaneous trip by IEC 60898-1. */
  public enum Trip {
    B("type-b"), C("type-c"), D("type-d");

    private final String word;

    Trip(String word) {
      this.word = word;
    }

    /** The word of the notation. */
    public String word() {
      return word;
    }
  }

  /** How the poles of one way move. */
  public enum Handle {
    /** One pole. */
    SINGLE,
    /** One mechanism: all poles open together, by hand and on a fault. */
    COMMON_TRIP,
    /** Single poles with their handles joined: they are switched off together by hand. */
    TIED
  }

  /** What a breaker feeds. */
  public sealed interface Target {
    /** The hots of a branch, in the order of the poles. */
    record ToBranch(String branch) implements Target {}

    /** Another panel. */
    record ToPanel(String panel) implements Target {}

    /** In place, with nothing on it. */
    record Spare() implements Target {}

    /** Left open in an unfinished plan. */
    record Later() implements Target {}

    /** A name that nothing in the plan has; a finding has been made. */
    record Unknown(String name) implements Target {}
  }

  /** Amperes, or empty where not known. */
  public Optional<Double> amperes() {
    return rating.map(Quantity::si);
  }
}
