package wattle.model;

import java.util.Optional;

/**
 * A finding that the plan silences.
 *
 * @param at name of the thing it is silenced at; absent for everywhere
 * @param within name of the placement of a pattern that it holds in; absent where it holds in the whole plan
 */
public record Silence(String rule, Optional<String> at, Optional<String> within, String reason, Origin origin) {
  /** Whether it covers a finding about a thing. */
  public boolean covers(Optional<String> subject) {
    return at.isPresent()
        ? at.equals(subject)
        : within.isEmpty() || subject
            .filter(s -> s.equals(within.get()) || s.startsWith(within.get() + ".") || s.startsWith(within.get() + "/")).isPresent();
  }
}
