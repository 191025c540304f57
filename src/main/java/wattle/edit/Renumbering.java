package wattle.edit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.finding.Edit;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.syntax.Tree;

/**
 * Gives breakers other slots in the text of a plan: the numbers on their slot lines, and the same numbers wherever the
 * plan names a breaker by its slot (a panel that is fed from one, a trial that opens one, an expectation or a silence
 * about one). Nothing else in the text changes. Where a trial moves a branch to a slot, the slot stays as written. A panel of a
 * pattern has one text for all of its placements, which must agree.
 */
public final class Renumbering {
  private final Map<String, Map<String, String>> slots;
  private final Map<Span, Wanted> wanted = new LinkedHashMap<>();

  /** @param slots by panel, from the slot as written, such as {@code 10a}, to the new one */
  public Renumbering(Map<String, Map<String, String>> slots) {
    this.slots = Map.copyOf(slots);
  }

  /**
   * What became of the texts.
   *
   * @param texts the new text of each file that changes, in the order of the files
   * @param refused why nothing of them may be written: a slot is worked out, or one text would have to be two
   */
  public record Renumbered(Map<Source, String> texts, List<String> refused) {
    public Renumbered {
      texts = Collections.unmodifiableMap(texts);
      refused = List.copyOf(refused);
    }
  }

  /** @param items all that the files say, patterns placed */
  public Renumbered apply(List<Tree.Item> items) {
    items.forEach(this::collect);
    Map<Source, List<Edit>> edits = new LinkedHashMap<>();
    List<String> refused = new ArrayList<>();
    wanted.forEach(
        (span, slot) -> {
          if (!slot.moved) {
            return;
          }
          if (!slot.written) {
            refused.add(span + ": a slot of panel " + slot.panels.values().iterator().next() + " is calculated by '" + span.text()
                + "', where no other number can be put");
          } else if (slot.panels.size() > 1) {
            refused.add(disagreement(span, slot));
          } else {
            edits.computeIfAbsent(span.source(), s -> new ArrayList<>()).add(new Edit(span, slot.panels.keySet().iterator().next()));
          }
        });
    Map<Source, String> texts = new LinkedHashMap<>();
    edits.forEach((source, all) -> texts.put(source, Mender.apply(source.text(), all)));
    return new Renumbered(texts, refused);
  }

  private static String disagreement(Span span, Wanted slot) {
    StringBuilder words = new StringBuilder(span + ": slot " + span.text() + " of the pattern is one text, which would have to be ");
    List<String> each = new ArrayList<>();
    slot.panels.forEach((text, panel) -> each.add(text + " for panel " + panel));
    return words.append(String.join(" and ", each)).toString();
  }

  /** What a slot number is to be: for each new text, the first panel that asks for it. */
  private static final class Wanted {
    final Map<String, String> panels = new LinkedHashMap<>();
    boolean moved;
    boolean written = true;
  }

  private void collect(Tree.Item item) {
    if (item instanceof Tree.Panel panel) {
      for (Tree.PanelStatement statement : panel.statements()) {
        if (statement instanceof Tree.Slot slot) {
          renumber(panel.name().text(), slot.slots());
        }
      }
      panel.feed().ifPresent(f -> renumber(f.from().text(), f.slots()));
    } else if (item instanceof Tree.Trial trial) {
      for (Tree.Event event : trial.events()) {
        if (event instanceof Tree.OpenBreaker open) {
          renumber(open.panel().text(), open.slots());
        }
      }
    } else if (item instanceof Tree.Expectation expectation) {
      expectation.subject().ifPresent(s -> renumber(s));
    } else if (item instanceof Tree.Silence silence) {
      silence.at().ifPresent(s -> renumber(s));
    }
  }

  private void renumber(Tree.Subject subject) {
    renumber(subject.path().text(), subject.slots());
  }

  private void renumber(String panel, Optional<Tree.SlotSpan> span) {
    span.ifPresent(s -> renumber(panel, s));
  }

  private void renumber(String panel, Tree.SlotSpan span) {
    Map<String, String> ofPanel = slots.getOrDefault(panel, Map.of());
    for (Tree.SlotNumber number : span.numbers()) {
      String written = number.number() + number.half().map(String::valueOf).orElse("");
      String now = ofPanel.getOrDefault(written, written);
      Wanted slot = wanted.computeIfAbsent(number.span().written(), n -> new Wanted());
      slot.panels.putIfAbsent(now, panel);
      slot.moved |= !now.equals(written);
      slot.written &= number.computed().isEmpty();
    }
  }
}
