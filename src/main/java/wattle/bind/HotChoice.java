package wattle.bind;

import java.util.Set;
import wattle.model.DeviceKind;
import wattle.model.DeviceKind.Need;

/** Which hots of a branch a device is connected to. */
final class HotChoice {
  private HotChoice() {}

  /** Places among the branch's hots, from 0; never one that the branch does not have, but 0 on a branch with none. */
  static Set<Integer> of(UnwiredDevice device, BranchDraft.Stop stop, BranchDraft draft) {
    int hots = draft.hots.size();
    if (device.kind().family() == DeviceKind.Family.JUNCTION) {
      return Set.of();
    }
    if (hots < 2) {
      return Set.of(0);
    }
    if (device.kind().isThreePhase() && hots > 2) {
      return Set.of(0, 1, 2);
    }
    if (device.kind().needs().contains(Need.TWO_HOTS) || isSplitOverTwo(device)) {
      return Set.of(0, 1);
    }
    return Set.of(stop.hotOf(device).orElse(0));
  }

  /** Whether a load sits between two hots. */
  static boolean isAcross(DeviceKind kind) {
    return kind.family() != DeviceKind.Family.SWITCH && kind.needs().contains(Need.TWO_HOTS);
  }

  /** Whether a device takes nothing but two hots. */
  static boolean isAcrossOnly(DeviceKind kind) {
    return kind.needs().contains(Need.TWO_HOTS) && !kind.needs().contains(Need.NEUTRAL);
  }

  /** A split receptacle has a half on each hot, unless it says which one it sits on or its tab is kept. */
  static boolean isSplitOverTwo(UnwiredDevice device) {
    return device.kind().halves().size() > 1 && device.hot().isEmpty() && !device.traits().contains("tab-kept");
  }
}
