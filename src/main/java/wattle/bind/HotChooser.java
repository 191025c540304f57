package wattle.bind;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
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
      for (UnwiredDevice device : stop.devices) {
        device.hot().flatMap(word -> hotOf(word, draft)).ifPresent(hot -> stop.hots.put(device.name(), hot));
      }
      if (stop.hotWord.isPresent()) {
        stop.hot = hotOf(stop.hotWord.get(), draft);
        stop.devices.forEach(d -> checkAgreed(stop, d));
      } else if (Set.copyOf(stop.hots.values()).size() == 1) {
        stop.hot = stop.hots.values().stream().findFirst(); // what one of a box says goes for those that say nothing
      } else if (draft.hots.size() > 1 && stop.devices.stream().noneMatch(d -> d.hot().isPresent() && !stop.hots.containsKey(d.name()))) {
        stop.devices.stream().filter(this::mustChoose).filter(d -> d.hot().isEmpty()).findFirst().ifPresent(d -> askWhich(d, draft));
      }
    }
    new IdlePoles(scope).check(draft);
  }

  /** What the chain says of all devices in a box, and one of them of itself, has to be the same. */
  private void checkAgreed(BranchDraft.Stop stop, UnwiredDevice device) {
    Optional<Integer> own = Optional.ofNullable(stop.hots.get(device.name()));
    if (own.isPresent() && stop.hot.isPresent() && !own.equals(stop.hot)) {
      Tree.Word all = stop.hotWord.orElseThrow();
      Tree.Word word = device.hot().orElseThrow();
      scope.report(
          Finding.error("hot-disagrees", "'" + device.name() + "' is stated to be on " + word + " and on " + all)
              .about(device.name())
              .at(word.span(), "on " + word)
              .with(all.span(), "on " + all)
              .because(
                  "The words of a run apply to every 120 V device in the box that it enters; this one was counted and drawn on "
                      + word + ".")
              .fix(Fix.offered("write " + all + " after the device too", word.span(), all.text()))
              .fix(Fix.offered("write " + word + " in the run too", all.span(), word.text()))
              .fix("leave it out of the run, and write it after each device"));
    }
  }

  private boolean mustChoose(UnwiredDevice device) {
    return device.kind().needs().contains(DeviceKind.Need.HOT) && !HotChoice.isSplitOverTwo(device);
  }

  private void askWhich(UnwiredDevice device, BranchDraft draft) {
    if (draft.broken || draft.legs.stream().noneMatch(l -> l.wiring().insulated().size() > draft.hots.size())) {
      return; // no neutral to return on: that is the graver finding
    }
    List<String> colors = colors(draft);
    Finding.Builder finding = Finding
        .error(Mistake.HOT_UNSTATED, "nothing says which hot of '" + draft.name() + "' feeds '" + device.name() + "'")
        .about(device.name())
        .at(device.origin().name(), "a 120 V " + device.kind().name() + " on a branch with " + draft.hots.size() + " hots")
        .because("The load of each leg and the current of the shared neutral depend on it.");
    Optional<Span> place = draft.places().stream()
        .filter(p -> p.path().text().equals(device.name()) || p.path().text().equals(device.box()))
        .map(p -> p.path().span().after())
        .findFirst();
    if (place.isEmpty()) {
      finding.fix("write on " + String.join(" or on ", colors) + " after its name in the branch");
    } else {
      colors.forEach(c -> finding.fix(Fix.offered("write on " + c + " after its name in the branch", place.get(), " on " + c)));
    }
    scope.report(finding);
  }

  private List<String> colors(BranchDraft draft) {
    return draft.wiring.stream()
        .flatMap(w -> w.wires().stream())
        .filter(w -> w.purpose() == Wire.Purpose.HOT)
        .map(Wire::color)
        .limit(draft.hots.size())
        .toList();
  }

  /** By color or by leg; absent where the branch has no such hot. */
  private Optional<Integer> known(Tree.Word word, BranchDraft draft) {
    int byColor = colors(draft).indexOf(word.text());
    if (byColor >= 0) {
      return Optional.of(byColor);
    }
    for (int i = 0; i < draft.hots.size(); i++) {
      if (draft.hots.get(i).leg().map(Leg::name).filter(word.text()::equals).isPresent()) {
        draft.legsNamed = true;
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  private Optional<Integer> hotOf(Tree.Word word, BranchDraft draft) {
    List<String> colors = colors(draft);
    Optional<Integer> known = known(word, draft);
    if (known.isPresent()) {
      return known;
    }
    if (!draft.hots.isEmpty() && !draft.broken) {
      Span span = word.span();
      Finding.Builder finding = Finding.error(Mistake.HOT_UNKNOWN, "branch '" + draft.name() + "' has no hot '" + word + "'")
          .at(span, String.join(", ", colors) + " can be written here, or a leg");
      colors.forEach(c -> finding.fix(Fix.offered("write " + c, span, c)));
      scope.report(finding);
    }
    return Optional.empty();
  }
}
