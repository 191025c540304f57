package wattle.server;

import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.Position;
import wattle.finding.Span;
import wattle.model.Panel;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;
import wattle.syntax.Tree;

/** What is under the pointer: a thing with a name, a slot, a figure with its unit. */
final class Hovers {
  /** Between these a figure in another unit helps; beyond them it is a row of zeros. */
  private static final double LEAST_SHOWN = 0.01;

  private static final double MOST_SHOWN = 100_000;

  private Hovers() {}

  static Optional<Hover> at(Question question, Position position, LibraryTexts library) {
    int offset = question.offset(position);
    Optional<Tree.Item> item = question.tree().items().stream()
        .filter(i -> question.touches(i, offset, offset))
        .findFirst();
    if (item.isEmpty()) {
      return Optional.empty();
    }
    Optional<Occurrence> name = question.analysis().derived().nameAt(question.source(), offset);
    if (name.isPresent()) {
      return page(name.get(), question, library).map(p -> hover(p, name.get().span(), question));
    }
    if (item.get() instanceof Tree.Use use) {
      return Optional.of(hover(UsePages.of(use, question), use.span(), question));
    }
    List<Tree> around = new TreeWalk().around(item.get(), question.within(item.get(), offset));
    if (around.size() > 1 && around.get(around.size() - 1) instanceof Tree.Text text) {
      return TextPages.of(text, around, question, word -> named(word, question).flatMap(o -> page(o, question, library)))
          .map(p -> hover(p, text.span(), question));
    }
    for (int i = around.size() - 1; i >= 0; i--) {
      if (around.get(i) instanceof Tree.SlotNumber slot) {
        return slot(slot, item.get(), question.analysis()).map(p -> hover(p, slot.span(), question));
      }
      if (around.get(i) instanceof Tree.Figure figure) {
        return figure(figure).map(p -> hover(p, figure.span(), question));
      }
      if (around.get(i) instanceof Tree.CableWiring wiring) {
        return CableSizePages.of(wiring, question.analysis()).map(p -> hover(p, wiring.span(), question));
      }
    }
    return word(question.source().text(), offset).flatMap(w -> WordPages.of(w, question.analysis().compilation().library()))
        .map(p -> new Hover(new MarkupContent(MarkupKind.MARKDOWN,
            p.markdown())));
  }

  private static Optional<Page> page(Occurrence name, Question question, LibraryTexts library) {
    Named thing = name.thing();
    return thing.kind() == Named.Kind.RULE
        ? Optional.of(RulePages.of(thing.name(), library, question.analysis()))
        : ThingPages.of(thing, question.analysis());
  }

  private static Optional<Occurrence> named(Tree.Word word, Question question) {
    return question.analysis().derived().nameAt(question.source(), question.analysis().placed(word.span()).start());
  }

  /** The word that stands at an offset, outside comments and quoted texts. */
  private static Optional<String> word(String text, int offset) {
    int line = text.lastIndexOf('\n', Math.max(0, offset - 1)) + 1;
    String before = text.substring(line, offset);
    if (before.contains("//") || before.chars().filter(c -> c == '"').count() % 2 == 1) {
      return Optional.empty();
    }
    int start = offset;
    int end = offset;
    while (start > 0 && isOfWord(text.charAt(start - 1))) {
      start--;
    }
    while (end < text.length() && isOfWord(text.charAt(end))) {
      end++;
    }
    return start < end ? Optional.of(text.substring(start, end)) : Optional.empty();
  }

  private static boolean isOfWord(char c) {
    return Character.isLetterOrDigit(c) || c == '-';
  }

  /** Volt-amperes are watts only where the power factor is 1. */
  private static boolean isApparent(Unit unit) {
    return unit.symbol().endsWith("VA");
  }

  private static Hover hover(Page page, Span span, Question question) {
    Hover hover = new Hover(new MarkupContent(MarkupKind.MARKDOWN, page.markdown()));
    hover.setRange(question.range(span));
    return hover;
  }

  private static Optional<Page> slot(Tree.SlotNumber slot, Tree.Item item, Analysis analysis) {
    return item instanceof Tree.Panel tree
        ? Optional.ofNullable(analysis.house().panels().get(tree.name().text())).map(panel -> slot(slot, panel, analysis))
        : Optional.empty();
  }

  private static Page slot(Tree.SlotNumber slot, Panel panel, Analysis analysis) {
    Page page = new Page().title("slot " + slot.span().text(), "of panel " + panel.title());
    if (panel.slotCount().map(count -> slot.number() < 1 || slot.number() > count).orElse(true)) {
      return page.line("The panel has no such slot, or does not say how many it has.");
    }
    int count = panel.slotCount().orElseThrow();
    String side = panel.order().isLeft(slot.number(), count) ? "left" : "right";
    page.line("leg " + panel.order().legOf(slot.number(), count, panel.legs()) + ", row " + panel.order().rowOf(slot.number(), count) + " "
        + side);
    panel.breakers().stream()
        .filter(b -> b.id().slots().stream().anyMatch(s -> s.number() == slot.number() && s.half().equals(slot.half())))
        .findFirst()
        .ifPresent(b -> page.line(BreakerLine.of(b)));
    return page;
  }

  /** A figure in the other units of its kind that a reader may think in. */
  private static Optional<Page> figure(Tree.Figure figure) {
    Optional<Unit> unit = figure.unit().flatMap(u -> Units.find(u.text()));
    if (unit.isEmpty()) {
      return Optional.empty();
    }
    Quantity quantity = Quantity.of(figure.number(), unit.get());
    Page page = new Page().title(quantity.toString(), unit.get().dimension().trade());
    List<String> others = Units.of(unit.get().dimension()).stream()
        .filter(u -> !u.symbol().equals(unit.get().symbol()) && isApparent(u) == isApparent(unit.get()))
        .map(quantity::shownIn)
        .filter(q -> Math.abs(q.value()) >= LEAST_SHOWN && Math.abs(q.value()) < MOST_SHOWN)
        .map(Quantity::toString)
        .toList();
    return Optional.of(page.line(others.isEmpty() ? "" : "= " + String.join(" = ", others)));
  }
}
