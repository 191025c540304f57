package wattle.bind;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Branches with what hangs on them.
 *
 * @param traced the branches as they were traced
 * @param drafts the same with their devices, in the same order
 * @param branchOf the name of the branch that each device hangs on
 */
record Connected(List<BranchDraft> traced, RoomBinder.Bound rooms, List<BranchDraft> drafts, Map<String, String> branchOf) {
  static final Connected NOTHING = new Connected(List.of(), RoomBinder.Bound.of(List.of()), List.of(), Map.of());

  /**
   * The same devices on the same branches, some of which have been traced anew or stand in rooms that have been bound anew;
   * every other branch is the same object. Absent where some name may lead elsewhere.
   */
  Optional<Connected> with(List<BranchDraft> now, RoomBinder.Bound roomsNow) {
    if (roomsNow.places() != rooms.places() || now.size() != traced.size()) {
      return Optional.empty();
    }
    List<BranchDraft> same = new ArrayList<>(drafts);
    for (int i = 0; i < now.size(); i++) {
      if (now.get(i) != traced.get(i)) {
        if (!now.get(i).goesAs(traced.get(i))) {
          return Optional.empty();
        }
        same.set(i, now.get(i).with(drafts.get(i), roomsNow.devices()));
      }
    }
    for (String device : roomsNow.devicesUnlike(rooms)) {
      int branch = branch(branchOf.getOrDefault(device, ""));
      if (branch >= 0) {
        same.set(branch, now.get(branch).with(drafts.get(branch), roomsNow.devices()));
      }
    }
    return Optional.of(new Connected(now, roomsNow, same, branchOf));
  }

  private int branch(String name) {
    for (int i = 0; i < drafts.size(); i++) {
      if (drafts.get(i).name().equals(name)) {
        return i;
      }
    }
    return -1;
  }
}
