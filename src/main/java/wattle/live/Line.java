package wattle.live;

import java.util.Optional;
import wattle.model.Event;

/**
 * One line of what was clicked together.
 *
 * @param text in the notation
 * @param event that it says; absent where it says none, or none that can happen in this house
 * @param complaint why it does not count; empty where it does
 */
record Line(String text, Optional<Event> event, String complaint) {
  boolean counts() {
    return event.isPresent() && complaint.isEmpty();
  }

  /** Which event it is; empty for none. */
  String key() {
    return event.map(EventKey::of).orElse("");
  }
}
