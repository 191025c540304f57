package wattle.model;

import java.util.List;
import java.util.Optional;

/** A named scenario: what is drawing, what is open, what is wrong. */
public record Trial(String name, Optional<String> label, List<Event> events, Origin origin) {
  public Trial {
    events = List.copyOf(events);
  }
}
