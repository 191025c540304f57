package wattle.model;

import java.util.List;

/**
 * A breaker's place: its panel and the slots it takes, as in {@code P/2+4}.
 *
 * @param slots in the order written
 */
public record BreakerId(String panel, List<Slot> slots) {
  public BreakerId {
    slots = List.copyOf(slots);
  }

  /** The slots as written: {@code 2+4}. */
  public String slotText() {
    return String.join("+", slots.stream().map(Slot::toString).toList());
  }

  @Override
  public String toString() {
    return panel + "/" + slotText();
  }
}
