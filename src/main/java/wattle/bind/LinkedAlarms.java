package wattle.bind;

import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import wattle.model.DeviceKind;

/**
 * Alarms of a branch that may sound together by a wire of its cables: those on house wiring that are not said to be unlinked. In cable of
 * three conductors the red one is that wire (common practice).
 */
final class LinkedAlarms {
  private final BranchDraft draft;

  LinkedAlarms(BranchDraft draft) {
    this.draft = draft;
  }

  /** Whether there are some on both sides of a run. */
  boolean isBetween(IntPredicate beyond) {
    return alarms().anyMatch(beyond) && alarms().anyMatch(beyond.negate());
  }

  private IntStream alarms() {
    return IntStream.range(0, draft.stops.size())
        .filter(i -> draft.stops.get(i).devices.stream().anyMatch(d -> isAlarm(d.kind()) && !d.traits().contains("unlinked")));
  }

  private static boolean isAlarm(DeviceKind kind) {
    return kind.name().endsWith(" alarm");
  }
}
