package wattle.trials;

import java.util.Optional;
import wattle.derivation.Derivation;

/**
 * What in a trial can hurt somebody, start a fire or ruin what is plugged in.
 *
 * @param at box, device, outlet, breaker or conductor that it is about
 * @param branch empty where it belongs to none
 * @param words a sentence without its full stop, with the figure in it
 * @param figure that it is told by; absent where a figure would mean nothing
 * @param limit that the figure passes; absent where there is none to pass
 */
public record Danger(
    Kind kind, String at, String branch, String words, Optional<Derivation> figure, Optional<Derivation> limit) {
  /** Kinds, what can kill at once first. */
  public enum Kind {
    BACK_FED("The house backfeeds the utility"), POWER_INTO_GENERATOR("Power flows into a generator"), TOUCH(
        "Exposed metal is live"), REVERSED(
            "Hot and neutral are exchanged"), LIVE_THOUGH_DARK("Looks dead and is live"), FAULT("A fault"), OVERVOLTAGE(
                "Voltage too high"), NEUTRAL_OVER("A neutral carries more than its ampacity"), CONDUCTOR_OVER(
                    "A hot carries more than its ampacity"), SOURCE_OVER("A source gives more than its rating"), OVERCURRENT(
                        "A breaker or fuse carries more than its rating"), BUS_OVER(
                            "A bus bar carries more than its rating"), PROTECTION("Ground-fault or arc-fault protection"), JOINT(
                                "A loose joint heats"), ANIMALS("Animals feel the voltage of metal"), NOT_SERVED(
                                    "A load does not get the voltage that it needs"), FLOATING("Floating "
                                        + "conductor"), UNDERVOLTAGE("Voltage too low");

    private final String title;

    Kind(String title) {
      this.title = title;
    }

    /** As a heading. */
    public String title() {
      return title;
    }
  }
}
