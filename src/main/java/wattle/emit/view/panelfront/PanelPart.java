package wattle.emit.view.panelfront;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.text.VisibleText;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.model.Pole;
import wattle.model.Slot;
import wattle.model.SlotOrder;
import wattle.words.BondWords;
import wattle.words.BreakerWords;

/** Some rows of the front of a panel, or all of them. */
final class PanelPart {
  private static final double ROW = PanelRows.ROW;
  /** From a line of a breaker's words to the next. */
  private static final double LINE = 12.5;

  private static final double SPINE = 40;
  private static final double NUMBER = 30;
  private static final double NARROWEST = 190;
  private static final double WIDEST = 560;
  /** Least width of the box of the main. */
  private static final double MAIN = 180;

  /** Room for the letter of a half-size breaker. */
  private static final double HALF = 12;

  private final House house;
  private final Panel panel;
  private final PanelRows rows;
  private final int slots;
  private final double widest;
  private final Map<String, BreakerState> states;

  /**
   * @param widest what there is room for
   * @param states of what is not simply on, by the names of the spots
   */
  PanelPart(House house, Panel panel, PanelRows rows, double widest, Map<String, BreakerState> states) {
    this.widest = widest;
    this.states = states;
    this.house = house;
    this.panel = panel;
    this.rows = rows;
    this.slots = PanelRows.slots(panel);
  }

  /** Its first row at height 0. */
  Sketch sketch() {
    boolean two = panel.order() != SlotOrder.ONE_COLUMN;
    double cell = cellWidth();
    double leftCell = NUMBER;
    double spine = leftCell + cell;
    double rightCell = spine + SPINE;
    double width = two ? rightCell + cell + NUMBER : spine + SPINE;
    Sketch sketch = new Sketch();
    double heading = Math.max(width, WIDEST);
    sketch.fitted(0, -62, "Panel " + panel.name() + panel.label().map(l -> "  " + l).orElse("") + (rows.isFirst() ? "" : " (continued)"),
        13, true, Anchor.START, heading);
    sketch.fitted(0, -46, String.join(", ", facts()), 10, false, Anchor.START, heading);
    double middle = two ? spine + SPINE / 2 : leftCell + cell / 2;
    if (rows.isFirst()) {
      Optional<BreakerState> state = Optional.ofNullable(states.get("main " + panel.name()));
      String main = state.map(s -> s.words() + ", ").orElse("") + panel.main().map(BreakerWords::main).orElse("no main");
      double wide = Math.max(MAIN, Math.min(width - NUMBER, Fit.width(main, 10, true) + 14));
      sketch.box(middle - wide / 2, -32, wide, 24, state.isPresent() ? Stroke.THICK : Stroke.THIN, Fill.SHADE);
      if (panel.main().filter(m -> m.kind() != MainDevice.Kind.LUGS).isPresent()) {
        sketch.add(new Shape.Spot(middle - wide / 2, -32, wide, 24, "main " + panel.name()));
      }
      sketch.fitted(middle, -16, main, 10, true, Anchor.MIDDLE, wide - 10);
    } else {
      sketch.add(new Shape.Continuation(middle, -16, "continued from ", rows.pieceBefore(), "", 10, Anchor.MIDDLE, WIDEST));
    }
    double bottom = rows.count() * ROW;
    if (!rows.isLast()) {
      sketch.add(new Shape.Continuation(middle, bottom + 16, "continues on ", rows.pieceAfter(), "", 10, Anchor.MIDDLE, WIDEST));
      bottom += 14;
    }
    sketch.box(0, -38, width, bottom + 50, Stroke.THICK, Fill.NONE);

    Set<Slot> drawn = new HashSet<>();
    for (Breaker breaker : panel.breakers()) {
      for (Group group : groups(breaker)) {
        if (!rows.holds(panel, group.slots.get(0), slots)) {
          continue;
        }
        double x = group.left ? leftCell : rightCell;
        body(sketch, x, group.top, cell, group.height, breaker, group);
        group.slots.forEach(drawn::add);
      }
    }
    for (int number = 1; number <= slots; number++) {
      if (!rows.holds(panel, new Slot(number, Optional.empty()), slots)) {
        continue;
      }
      boolean left = panel.order().isLeft(number, slots);
      double y = (panel.order().rowOf(number, slots) - rows.first()) * ROW;
      empty(sketch, left ? leftCell : rightCell, y, cell, number, drawn);
      sketch.text(left ? leftCell - 6 : rightCell + cell + 6, y + 20, Integer.toString(number), 11, true, left ? Anchor.END : Anchor.START);
    }
    for (int row = rows.first(); row <= rows.last(); row++) {
      sketch.text(spine + SPINE / 2, (row - rows.first()) * ROW + 20, legsOfRow(row), 11, false, Anchor.MIDDLE);
    }
    return sketch;
  }

  /** The leg of a row; where the plan states another for a way, as in a fuse box, what it states, left before right. */
  private String legsOfRow(int row) {
    Set<String> legs = new LinkedHashSet<>();
    for (int number = 1; number <= slots; number++) {
      if (panel.order().rowOf(number, slots) == row) {
        int slot = number;
        Optional<Leg> stated = panel.breakers().stream().flatMap(b -> b.poles().stream()).filter(p -> p.slot().number() == slot)
            .flatMap(p -> p.leg().stream()).findFirst();
        legs.add(stated.orElseGet(() -> panel.order().legOf(slot, slots, panel.legs())).name());
      }
    }
    return String.join(" ", legs);
  }

  private List<String> facts() {
    List<String> facts = new ArrayList<>();
    facts.add(panel.system().text());
    panel.busRating().ifPresent(b -> facts.add("bus " + b.toString()));
    panel.slotCount().ifPresent(s -> facts.add(s + " slots"));
    facts.add(BondWords.of(panel));
    return facts;
  }

  private double cellWidth() {
    double most = NARROWEST;
    for (Breaker breaker : panel.breakers()) {
      boolean half = breaker.poles().stream().anyMatch(p -> p.slot().half().isPresent());
      double name = Fit.width(BreakerWords.description(house, breaker), half ? 9 : 10, true);
      String words = states.containsKey(breaker.id().toString()) ? states.get(breaker.id().toString()).words() + ", " : "";
      double rating = Fit.width(words + rating(breaker, List.of()), 9, false);
      most = Math.max(most, half ? name + rating + 30 + HALF : Math.max(name, rating) + 34);
    }
    double columns = panel.order() != SlotOrder.ONE_COLUMN ? 2 : 1;
    double room = (widest - SPINE - 2 * NUMBER) / columns;
    return Math.max(NARROWEST, Math.min(Math.min(most, WIDEST), room));
  }

  /** Slots of a breaker that lie under each other on one side and are drawn as one box. */
  private record Group(boolean left, double top, double height, List<Slot> slots, List<Slot> others) {}

  private List<Group> groups(Breaker breaker) {
    List<Slot> all = breaker.poles().stream()
        .map(Pole::slot)
        .sorted(Comparator.comparingInt(Slot::number).thenComparing(s -> s.half().orElse('\0')))
        .toList();
    List<Group> groups = new ArrayList<>();
    int i = 0;
    while (i < all.size()) {
      int end = i + 1;
      while (end < all.size() && follows(all.get(end - 1), all.get(end))) {
        end++;
      }
      List<Slot> own = all.subList(i, end);
      List<Slot> others = all.stream().filter(s -> !own.contains(s)).toList();
      double top = top(own.get(0));
      Slot last = own.get(own.size() - 1);
      double bottom = top(last) + (last.half().isPresent() ? ROW / 2 : ROW);
      groups.add(new Group(panel.order().isLeft(own.get(0).number(), slots), top, bottom - top, own, others));
      i = end;
    }
    return groups;
  }

  private double top(Slot slot) {
    double row = (panel.order().rowOf(slot.number(), slots) - rows.first()) * ROW;
    return slot.half().equals(Optional.of('b')) ? row + ROW / 2 : row;
  }

  private boolean follows(Slot above, Slot below) {
    double bottom = top(above) + (above.half().isPresent() ? ROW / 2 : ROW);
    return panel.order().isLeft(above.number(), slots) == panel.order().isLeft(below.number(), slots)
        && top(below) == bottom
        && rows.holds(panel, above, slots) == rows.holds(panel, below, slots);
  }

  private void body(Sketch sketch, double x, double y, double width, double height, Breaker breaker, Group group) {
    Optional<BreakerState> state = Optional.ofNullable(states.get(breaker.id().toString()));
    Fill ground = state.filter(BreakerState::open).isPresent() ? Fill.SHADE : Fill.NONE;
    sketch.add(new Shape.Box(x + 1, y + 1, width - 2, height - 2, 3, state.isPresent() ? Stroke.THICK : Stroke.THIN, ground));
    sketch.add(new Shape.Spot(x + 1, y + 1, width - 2, height - 2, breaker.id().toString()));
    String name = BreakerWords.description(house, breaker);
    String rating = state.map(s -> s.words() + ", ").orElse("") + rating(breaker, group.others);
    if (height < ROW) {
      double ratingWidth = Fit.width(rating, 9, false);
      // Two share the number beside them; the letter says which of them this is.
      group.slots.get(0).half().ifPresent(half -> sketch.text(x + 7, y + 11.4, half.toString(), 9));
      sketch.fitted(x + 7 + HALF, y + 11.4, name, 9, true, Anchor.START, width - ratingWidth - 24 - HALF);
      sketch.text(x + width - 7, y + 11.4, rating, 9, false, Anchor.END);
      return;
    }
    double middle = y + height / 2;
    double room = width - (group.slots.size() > 1 ? 24 : 14);
    List<String> lines = lines(name, room, (int) ((height - 2 * LINE) / LINE));
    double base = middle - 2 - LINE * (lines.size() - 1) / 2;
    for (String line : lines) {
      sketch.fitted(x + 7, base, line, 10, true, Anchor.START, room);
      base += LINE;
    }
    sketch.fitted(x + 7, base, rating, 9, false, Anchor.START, room);
    if (group.slots.size() > 1) {
      // The bar across the handles that move together.
      double handle = x + width - 10;
      sketch.line(handle, y + 9, handle, y + height - 9, Stroke.THICK);
    }
  }

  /** The last of them has all that is left. */
  private static List<String> lines(String name, double width, int most) {
    List<String> lines = Fit.lines(VisibleText.of(name), 10, true, width);
    int kept = Math.max(1, Math.min(most, lines.size())) - 1;
    List<String> fitting = new ArrayList<>(lines.subList(0, kept));
    fitting.add(String.join(" ", lines.subList(kept, lines.size())));
    return fitting;
  }

  private static String rating(Breaker breaker, List<Slot> others) {
    List<String> words = new ArrayList<>();
    words.add(BreakerWords.rating(breaker));
    breaker.protections().stream().sorted().forEach(p -> words.add(p == wattle.model.Protection.ARC_FAULT ? "AFCI" : "GFCI"));
    if (breaker.backFed()) {
      words.add("back-fed");
    }
    if (!others.isEmpty()) {
      words.add("moves with " + String.join("+", others.stream().map(Slot::toString).toList()));
    }
    return String.join(" ", words);
  }

  private static void empty(Sketch sketch, double x, double y, double width, int number, Set<Slot> drawn) {
    boolean upper = drawn.contains(new Slot(number, Optional.of('a')));
    boolean lower = drawn.contains(new Slot(number, Optional.of('b')));
    if (drawn.contains(new Slot(number, Optional.empty())) || upper && lower) {
      return;
    }
    double top = upper ? y + ROW / 2 : y;
    double height = upper || lower ? ROW / 2 : ROW;
    sketch.add(new Shape.Box(x + 1, top + 1, width - 2, height - 2, 3, Stroke.DASHED, Fill.NONE));
    sketch.text(x + 7, top + height / 2 + 3.4, "empty", 9, false, Anchor.START);
  }
}
