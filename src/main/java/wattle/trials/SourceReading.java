package wattle.trials;

import java.util.Optional;
import wattle.derivation.Derivation;

/**
 * What a source of the house, or the supplier's network behind a service, does in a trial.
 *
 * @param name of the device or service
 * @param kind such as {@code solar inverter}
 * @param state what it does
 * @param volts at its terminals, between its conductors; of a service where its run ends
 * @param amps of the leg that carries most
 * @param rating of one leg; absent where the plan states none
 * @param share of the rating
 * @param watts that it gives; below zero where they flow into it
 * @param rise of the voltage over that at its panel, as a part of nominal; absent for a service
 */
public record SourceReading(
    String name, String kind, State state, Derivation volts, Derivation amps, Optional<Derivation> rating,
    Optional<Derivation> share, Derivation watts, Optional<Derivation> rise) {
  /** What a source does, in the words of a table. */
  public enum State {
    HOLDS("sets the voltage"), FOLLOWS("follows the voltage"), FOLLOWS_TOO_HIGH("must stop: over 110 % of nominal"), TAKES(
        "power flows into it"), STOPPED(
            "stops: no voltage to follow"), LOST("gives nothing"), BACK_FED("delivers nothing, and is fed from the house");

    private final String words;

    State(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }
}
