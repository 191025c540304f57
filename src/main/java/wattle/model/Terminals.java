package wattle.model;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import wattle.quantity.Quantity;

/**
 * What the screws and lugs of a thing are marked for.
 *
 * @param temperature that the wire may have there; absent where none is stated
 * @param metals that they take; empty where none is stated
 */
public record Terminals(Optional<Quantity> temperature, Set<Mark> metals) {
  /** Nothing is stated of them. */
  public static final Terminals UNMARKED = new Terminals(Optional.empty(), Set.of());

  public Terminals {
    metals = metals.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(metals));
  }

  /** Marks of metals. */
  public enum Mark {
    COPPER("Cu"), ALUMINUM("Al"),
    /** Devices of 15 and 20 A that take copper and aluminum alike. */
    CO_ALR("CO-ALR");

    private final String word;

    Mark(String word) {
      this.word = word;
    }

    /** The word of the notation. */
    public String word() {
      return word;
    }

    private boolean takes(Metal metal) {
      return this == CO_ALR || this == (metal == Metal.COPPER ? COPPER : ALUMINUM);
    }
  }

  /** Whether they take a metal; absent where no metal is stated. */
  public Optional<Boolean> take(Metal metal) {
    return metals.isEmpty() ? Optional.empty() : Optional.of(metals.stream().anyMatch(m -> m.takes(metal)));
  }

  /**
   * The marks of a thing within another: its own metals, or else those of the other, and of two temperatures the lower, since
   * a breaker is as cool as the panel around it lets it be.
   */
  public Terminals within(Terminals other) {
    Optional<Quantity> lower = Stream.of(temperature, other.temperature)
        .flatMap(Optional::stream)
        .min((a, b) -> Double.compare(a.si(), b.si()));
    return new Terminals(lower, metals.isEmpty() ? other.metals : metals);
  }

  /** As a plan writes it behind {@code terminals}; empty where nothing is stated. */
  public String text() {
    return Stream.concat(temperature.map(Quantity::toString).stream(), metals.stream().map(Mark::word))
        .collect(Collectors.joining(" "));
  }
}
