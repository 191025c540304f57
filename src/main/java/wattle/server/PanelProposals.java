package wattle.server;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.eclipse.lsp4j.CompletionItemKind;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.Slot;
import wattle.syntax.Lexeme;

/** Within a panel: its free slots with their legs, ratings, traits, and what waits for a breaker. */
final class PanelProposals {
  private final Question question;
  private final CursorPlace place;
  private final Proposals proposals;

  PanelProposals(Question question, CursorPlace place, Proposals proposals) {
    this.question = question;
    this.place = place;
    this.proposals = proposals;
  }

  /** Before its block opens. */
  void head() {
    if (place.last().equals("from")) {
      question.analysis().house().services().keySet().forEach(s -> proposals.add(s, "service", CompletionItemKind.Interface));
      NameProposals.at(question, place.cursor(), proposals).panels();
    } else if (place.last().equals("by") || place.last().equals("of")) {
      new CableProposals(question.analysis(), proposals).forPanel(place.second());
      NameProposals.at(question, place.cursor(), proposals).parameters();
    } else if (place.isAfterNumber()) {
      proposals.units("m", "ft");
    } else {
      proposals.words("of a panel", "from", "by", "in", "is");
    }
  }

  void propose() {
    if (place.isAtStart()) {
      slots();
      proposals.words("of a panel", "bus", "slots", "bonded", "main breaker", "main lugs", "order", "room", "terminals");
    } else if (place.last().equals("+")) {
      slots();
    } else if (place.last().equals("main")) {
      proposals.words("kind of main", "breaker", "fuse", "lugs", "switch");
    } else if (place.last().equals("order")) {
      for (wattle.model.SlotOrder order : wattle.model.SlotOrder.values()) {
        proposals.words("order of slots", order.word());
      }
    } else if (place.isAfterNumber() && place.before().size() > 1 && !place.before().get(place.before().size() - 2).text().equals("+")) {
      proposals.units("A", "kA");
    } else if (place.before().get(0).kind() == Lexeme.Kind.NUMBER) {
      line();
    }
  }

  private void line() {
    NameProposals names = NameProposals.at(question, place.cursor(), proposals);
    boolean rated = place.before().stream().anyMatch(l -> l.text().equals("A"));
    if (!rated) {
      ratings();
    }
    names.targets();
    boolean several = place.count("+") > 0;
    proposals.words("trait of a breaker", several ? "two-pole" : "single-pole");
    proposals.words(
        "trait of a breaker", "arc-fault", "ground-fault", "handle-tied", "spare", "later", "pinned", "back-fed", "interlocked",
        "terminals");
  }

  private void ratings() {
    question
        .analysis()
        .compilation()
        .library()
        .table("breaker-ratings")
        .ifPresent(
            table -> table.rows().forEach(
                row -> row.cells().stream()
                    .findFirst()
                    .ifPresent(c -> proposals.add(c.text(), "standard rating", CompletionItemKind.Value))));
  }

  private void slots() {
    Panel panel = question.analysis().house().panels().get(place.blockName());
    if (panel == null || panel.slotCount().isEmpty()) {
      return;
    }
    List<Integer> free = free(panel);
    for (int slot : free) {
      proposals.add(Integer.toString(slot), "free, leg " + leg(panel, slot), CompletionItemKind.Value);
    }
    if (place.isAtStart() && panel.legs().size() > 1) {
      for (int slot : free) {
        below(panel, slot)
            .filter(free::contains)
            .ifPresent(
                other -> proposals.add(
                    slot + "+" + other, "free, legs " + leg(panel, slot) + " and " + leg(panel, other), CompletionItemKind.Value));
      }
    }
  }

  private static List<Integer> free(Panel panel) {
    List<Slot> taken = panel.breakers().stream().flatMap(b -> b.id().slots().stream()).collect(Collectors.toList());
    List<Integer> free = new ArrayList<>();
    for (int slot = 1; slot <= panel.slotCount().orElseThrow(); slot++) {
      Slot whole = new Slot(slot, Optional.empty());
      if (taken.stream().noneMatch(whole::overlaps)) {
        free.add(slot);
      }
    }
    return free;
  }

  /** The slot under another, which a breaker of two poles takes with it. */
  private static Optional<Integer> below(Panel panel, int slot) {
    int count = panel.slotCount().orElseThrow();
    for (int other = slot + 1; other <= count; other++) {
      if (panel.order().isLeft(other, count) == panel.order().isLeft(slot, count)) {
        return Optional.of(other).filter(o -> panel.order().rowOf(o, count) == panel.order().rowOf(slot, count) + 1);
      }
    }
    return Optional.empty();
  }

  private static Leg leg(Panel panel, int slot) {
    return panel.order().legOf(slot, panel.slotCount().orElseThrow(), panel.legs());
  }
}
