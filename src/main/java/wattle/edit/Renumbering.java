package wattle.edit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.finding.Edit;
import wattle.finding.Source;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/**
 * Gives breakers other slots in the text of a plan: the numbers on their slot lines, and the same numbers wherever the
 * plan names a breaker by its slot (a panel that is fed from one, a trial that opens one, an expectation or a silence
 * about one). Nothing else in the text changes. Where a trial moves a branch to a slot, the slot stays as written.
 */
public final class Renumbering {
  private final Map<String, Map<String, String>> slots;

  /** @param slots by panel, from the slot as written, such as {@code 10a}, to the new one */
  public Renumbering(Map<String, Map<String, String>> slots) {
    this.slots = Map.copyOf(slots);
  }

  /** The new text of each file that changes, in the order of the files. */
  public Map<Source, String> apply(List<PlanTree> files) {
    Map<Source, String> changed = new LinkedHashMap<>();
    for (PlanTree file : files) {
      List<Edit> edits = new ArrayList<>();
      file.items().forEach(item -> collect(item, edits));
      if (!edits.isEmpty()) {
        changed.put(file.source(), Mender.apply(file.source().text(), edits));
      }
    }
    return changed;
  }

  private void collect(Tree.Item item, List<Edit> edits) {
    if (item instanceof Tree.Panel panel) {
      for (Tree.PanelStatement statement : panel.statements()) {
        if (statement instanceof Tree.Slot slot) {
          renumber(panel.name().text(), slot.slots(), edits);
        }
      }
      panel.feed().ifPresent(f -> renumber(f.from().text(), f.slots(), edits));
    } else if (item instanceof Tree.Trial trial) {
      for (Tree.Event event : trial.events()) {
        if (event instanceof Tree.OpenBreaker open) {
          renumber(open.panel().text(), open.slots(), edits);
        }
      }
    } else if (item instanceof Tree.Expectation expectation) {
      expectation.subject().ifPresent(s -> renumber(s, edits));
    } else if (item instanceof Tree.Silence silence) {
      silence.at().ifPresent(s -> renumber(s, edits));
    }
  }

  private void renumber(Tree.Subject subject, List<Edit> edits) {
    renumber(subject.path().text(), subject.slots(), edits);
  }

  private void renumber(String panel, Optional<Tree.SlotSpan> span, List<Edit> edits) {
    span.ifPresent(s -> renumber(panel, s, edits));
  }

  private void renumber(String panel, Tree.SlotSpan span, List<Edit> edits) {
    Map<String, String> ofPanel = slots.getOrDefault(panel, Map.of());
    for (Tree.SlotNumber number : span.numbers()) {
      String written = number.number() + number.half().map(String::valueOf).orElse("");
      if (ofPanel.containsKey(written)) {
        edits.add(new Edit(number.span(), ofPanel.get(written)));
      }
    }
  }
}
