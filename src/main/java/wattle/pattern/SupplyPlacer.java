package wattle.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import wattle.syntax.Tree;

/** Dwellings, services, panels with their slots, and raceways, as they are in one placement. */
final class SupplyPlacer {
  /** As many as a panel of a plan may have. */
  static final int MOST_SLOTS = 400;
  /** Two half-size breakers share a slot. */
  private static final int MOST_LINES = 2 * MOST_SLOTS;

  private final Frame frame;
  private final PiecePlacer pieces;

  SupplyPlacer(Frame frame) {
    this.frame = frame;
    this.pieces = new PiecePlacer(frame);
  }

  Tree.Dwelling dwelling(Tree.Dwelling tree) {
    Optional<Tree.Word> own = Optional.of(
        new Tree.Word(frame.name(), frame.span(tree.span().source().span(tree.span().start(), tree.span().start() + "dwelling".length()))));
    return new Tree.Dwelling(
        tree.name().isPresent() ? tree.name().map(frame::declared) : own, pieces.text(tree.label()),
        PiecePlacer.each(tree.panels(), frame::reference), PiecePlacer.each(tree.facts(), pieces::fact),
        frame.span(tree.span()));
  }

  Tree.Service service(Tree.Service tree) {
    return new Tree.Service(
        frame.declared(tree.name()), pieces.text(tree.label()), tree.voltages().map(this::voltages),
        pieces.expressions(tree.amounts()), frame.plain(tree.threePhase()), pieces.status(tree.status()),
        PiecePlacer.each(tree.sources(), this::source), PiecePlacer.each(tree.runs(), this::run),
        PiecePlacer.each(tree.earths(), this::earth), PiecePlacer.each(tree.facts(), pieces::fact), frame.span(tree.span()));
  }

  private Tree.Voltages voltages(Tree.Voltages pair) {
    return new Tree.Voltages(pair.low(), pair.high(), frame.plain(pair.unit()), frame.span(pair.span()));
  }

  private Tree.SourceLine source(Tree.SourceLine line) {
    return new Tree.SourceLine(
        frame.plain(line.kind()), pieces.expressions(line.amounts()), pieces.expression(line.ratio()),
        pieces.text(line.label()), frame.span(line.span()));
  }

  private Tree.ServiceRun run(Tree.ServiceRun run) {
    return new Tree.ServiceRun(
        pieces.expression(run.length()), pieces.wiring(run.wiring()), pieces.surroundings(run.surroundings()),
        frame.span(run.span()));
  }

  private Tree.Earth earth(Tree.Earth earth) {
    return new Tree.Earth(
        frame.plain(earth.electrode()), pieces.wiring(earth.wiring()), pieces.expressions(earth.amounts()),
        pieces.status(earth.status()), frame.span(earth.span()));
  }

  Tree.Panel panel(Tree.Panel tree) {
    return new Tree.Panel(
        frame.declared(tree.name()), pieces.text(tree.label()), tree.feed().map(this::feed),
        pieces.expression(tree.feederLength()), pieces.wiring(tree.feederWiring()), pieces.surroundings(tree.surroundings()),
        frame.plain(tree.kind()), pieces.status(tree.status()), statements(tree), frame.span(tree.span()));
  }

  private Tree.Feed feed(Tree.Feed feed) {
    return new Tree.Feed(frame.reference(feed.from()), feed.slots().flatMap(pieces::slots), frame.span(feed.span()));
  }

  /** Whether a panel of the plan itself has lines that say more than they show. */
  static boolean isShort(Tree.Panel tree) {
    return tree.feed().flatMap(Tree.Feed::slots).filter(s -> !s.isWritten()).isPresent()
        || tree.statements().stream()
            .anyMatch(s -> s instanceof Tree.Slot slot && (slot.repetition().isPresent() || !slot.slots().isWritten()));
  }

  private List<Tree.PanelStatement> statements(Tree.Panel tree) {
    List<Tree.PanelStatement> statements = new ArrayList<>();
    for (Tree.PanelStatement statement : tree.statements()) {
      if (statement instanceof Tree.Slot slot) {
        statements.addAll(slots(slot));
      } else {
        statements.add(setting(statement));
      }
    }
    return statements;
  }

  private Tree.PanelStatement setting(Tree.PanelStatement statement) {
    if (statement instanceof Tree.Bus bus) {
      return new Tree.Bus(pieces.expression(bus.rating()), frame.span(bus.span()));
    }
    if (statement instanceof Tree.SlotCount count) {
      return new Tree.SlotCount(pieces.expression(count.count()), frame.span(count.span()));
    }
    if (statement instanceof Tree.Bonded bonded) {
      return new Tree.Bonded(frame.span(bonded.span()));
    }
    if (statement instanceof Tree.Order order) {
      return new Tree.Order(frame.plain(order.order()), frame.span(order.span()));
    }
    if (statement instanceof Tree.PanelFact fact) {
      return new Tree.PanelFact(pieces.fact(fact.fact()));
    }
    if (statement instanceof Tree.PanelEarth at) {
      return new Tree.PanelEarth(earth(at.earth()));
    }
    if (statement instanceof Tree.PanelRoom room) {
      return new Tree.PanelRoom(frame.reference(room.room()), frame.span(room.span()));
    }
    if (statement instanceof Tree.PanelTerminals marked) {
      return new Tree.PanelTerminals(pieces.terminals(Optional.of(marked.terminals())).orElseThrow(), frame.span(marked.span()));
    }
    if (statement instanceof Tree.Main main) {
      return new Tree.Main(
          frame.plain(main.kind()), pieces.expressions(main.amounts()), frame.plain(main.traits()),
          pieces.terminals(main.terminals()), frame.plain(main.words()), frame.span(main.span()));
    }
    throw new AssertionError(statement);
  }

  private List<Tree.Slot> slots(Tree.Slot slot) {
    if (slot.repetition().isEmpty()) {
      return slot(slot).stream().toList();
    }
    Tree.Repetition repetition = slot.repetition().get();
    List<Tree.Slot> slots = new ArrayList<>();
    Range range = Range.of(repetition, frame, pieces)
        .atMost(MOST_LINES, "a panel has " + MOST_SLOTS + " slots at most", repetition, frame);
    for (int number : range.numbers()) {
      Frame line = line(slot, repetition, number);
      new SupplyPlacer(line).slot(slot).ifPresent(slots::add);
    }
    return slots;
  }

  /** Where one of the lines that a repeated slot line stands for is read. */
  private Frame line(Tree.Slot slot, Tree.Repetition repetition, int number) {
    String parameter = repetition.name().text();
    Argument value = Argument.number(number, frame.span(repetition.name().span()));
    Frame bare = frame.with(parameter, value, Optional.empty());
    PiecePlacer within = new PiecePlacer(bare);
    Set<String> own = Stream.concat(
        frame.ledger().trying(() -> within.slots(slot.slots())).stream().map(Tree.SlotSpan::text),
        slot.words().stream().map(w -> bare.reference(w).text()))
        .filter(w -> w.length() > 1)
        .collect(Collectors.toSet());
    return frame.with(
        parameter, value,
        Optional.of(
            frame.line(frame.span(repetition.span()), parameter + " is " + number + " here", own, Set.of(parameter))));
  }

  private Optional<Tree.Slot> slot(Tree.Slot slot) {
    Optional<Tree.SlotSpan> slots = pieces.slots(slot.slots());
    if (slots.isEmpty()) {
      slot.words().forEach(w -> frame.ledger().spoil(frame.reference(w).text()));
      return Optional.empty();
    }
    return Optional.of(
        new Tree.Slot(
            slots.get(), pieces.expressions(slot.amounts()), frame.plain(slot.traits()), frame.plain(slot.legs()),
            pieces.terminals(slot.terminals()), pieces.status(slot.status()), PiecePlacer.each(slot.words(), frame::reference),
            pieces.text(slot.label()),
            Optional.empty(), frame.span(slot.span())));
  }

  Tree.Raceway raceway(Tree.Raceway tree) {
    return new Tree.Raceway(
        frame.declared(tree.name()), pieces.text(tree.label()), tree.size().map(pieces::race), pieces.expression(tree.length()),
        pieces.surroundings(tree.surroundings()), pieces.status(tree.status()), frame.span(tree.span()));
  }
}
