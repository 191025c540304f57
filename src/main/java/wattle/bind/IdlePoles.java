package wattle.bind;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import wattle.finding.Finding;
import wattle.model.DeviceKind;
import wattle.model.Leg;

/** Poles of a branch's breaker that nothing on the branch is connected to. */
final class IdlePoles {
  private final Scope scope;

  IdlePoles(Scope scope) {
    this.scope = scope;
  }

  /** Once the hots of the branch and of its stops are known. A branch that nothing is on yet says nothing. */
  void check(BranchDraft draft) {
    if (draft.broken || draft.hots.size() < 2) {
      return;
    }
    Set<Integer> used = new HashSet<>();
    Optional<UnwiredDevice> widest = Optional.empty();
    for (BranchDraft.Stop stop : draft.stops) {
      for (UnwiredDevice device : stop.devices) {
        Set<Integer> hots = HotChoice.of(device, stop, draft);
        boolean chosen = hots.size() > 1 || stop.hotOf(device).isPresent();
        if (!chosen && device.kind().family() != DeviceKind.Family.JUNCTION) {
          return; // which hot it is on is not said: that is the finding
        }
        used.addAll(hots);
        if (widest.isEmpty() && hots.size() > 1 || widest.isEmpty() && !hots.isEmpty()) {
          widest = Optional.of(device);
        }
      }
    }
    List<Integer> idle = new TreeSet<>(IntStream.range(0, draft.hots.size()).boxed().filter(h -> !used.contains(h)).toList()).stream()
        .toList();
    if (widest.isPresent() && !idle.isEmpty()) {
      report(draft, idle, widest.get());
    }
  }

  private void report(BranchDraft draft, List<Integer> idle, UnwiredDevice device) {
    String poles = idle.size() == 1
        ? "pole " + (idle.get(0) + 1)
        : "poles " + String.join(", ", idle.stream().map(h -> "" + (h + 1)).toList());
    String legs = String.join(", ", idle.stream().flatMap(h -> draft.hots.get(h).leg().stream()).map(Leg::name).toList());
    String devices = device.kind().needs().contains(DeviceKind.Need.TWO_HOTS) ? "works between two hots" : "is on one hot";
    scope.report(
        Finding
            .warning("pole-feeds-nothing",
                poles + " of the breaker of '" + draft.name() + "' " + (idle.size() == 1 ? "feeds" : "feed") + " nothing")
            .about(draft.name())
            .at(draft.tree.name().span(), draft.hots.size() + " hots" + (legs.isEmpty() ? "" : "; nothing is on leg " + legs))
            .with(device.origin().name(), "a " + device.kind().name() + " " + devices)
            .because("A conductor capped at a live breaker is an error in the plan, or a three-phase load entered as a smaller one.")
            .fix("use a breaker with as many poles as the load needs, or a part that needs three-hots"));
  }
}
