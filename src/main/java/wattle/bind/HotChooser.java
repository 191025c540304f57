package wattle.bind;

import java.util.List;
import java.util.Optional;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Span;
import wattle.model.DeviceKind;
import wattle.model.Leg;
import wattle.model.Wire;
import wattle.syntax.Tree;

/** Which hot the devices at a stop sit on, where the chain or the device says. */
final class HotChooser {
  private final Scope scope;

  HotChooser(Scope scope) {
    this.scope = scope;
  }

  /** Notes it at each stop, once the branch's hots are known. */
  void choose(BranchDraft draft) {
    for (BranchDraft.Stop stop : draft.stops) {
      Optional<Tree.Word> word = stop.hotWord;
      for (UnwiredDevice device : stop.devices) {
        word = device.hot().isPresent() ? device.hot() : word;
      }
      if (word.isPresent()) {
        stop.hot = hotOf(word.get(), draft);
      } else if (draft.hots.size() > 1) {
        stop.devices.stream().filter(this::mustChoose).findFirst().ifPresent(d -> askWhich(d, draft));
      }
    }
  }

  private boolean mustChoose(UnwiredDevice device) {
    return device.kind().needs().contains(DeviceKind.Need.HOT) && !HotChoice.isSplitOverTwo(device);
  }

  private void askWhich(UnwiredDevice device, BranchDraft draft) {
    if (draft.broken || draft.legs.stream().noneMatch(l -> l.wiring().insulated().size() > draft.hots.size())) {
      return; // no neutral to return on: that is the graver finding
    }
    List<String> colours = colours(draft);
    scope.report(
        Finding.error("hot-unstated", "nothing says which hot of '" + draft.name() + "' feeds '" + device.name() + "'")
            .at(device.origin().name(), "a 120 V " + device.kind().name() + " on a branch with " + draft.hots.size() + " hots")
            .because("Which leg it loads, and what the shared neutral carries, depends on it.")
            .fix("write on " + String.join(" or on ", colours) + " after its name in the branch"));
  }

  private List<String> colours(BranchDraft draft) {
    return draft.wiring.stream()
        .flatMap(w -> w.wires().stream())
        .filter(w -> w.purpose() == Wire.Purpose.HOT)
        .map(Wire::colour)
        .limit(draft.hots.size())
        .toList();
  }

  private Optional<Integer> hotOf(Tree.Word word, BranchDraft draft) {
    List<String> colours = colours(draft);
    int byColour = colours.indexOf(word.text());
    if (byColour >= 0) {
      return Optional.of(byColour);
    }
    for (int i = 0; i < draft.hots.size(); i++) {
      Optional<Leg> leg = draft.hots.get(i).leg();
      if (leg.isPresent() && leg.get().name().equals(word.text())) {
        draft.legsNamed = true;
        return Optional.of(i);
      }
    }
    if (!draft.hots.isEmpty() && !draft.broken) {
      Span span = word.span();
      Finding.Builder finding = Finding.error("hot-unknown", "branch '" + draft.name() + "' has no hot '" + word + "'")
          .at(span, String.join(", ", colours) + " can stand here, or a leg");
      colours.forEach(c -> finding.fix(Fix.offered("write " + c, span, c)));
      scope.report(finding);
    }
    return Optional.empty();
  }
}
