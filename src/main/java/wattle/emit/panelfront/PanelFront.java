package wattle.emit.panelfront;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.emit.drawing.Drawing;
import wattle.emit.drawing.Fit;
import wattle.emit.drawing.Shape;
import wattle.emit.drawing.Shape.Anchor;
import wattle.emit.drawing.Shape.Fill;
import wattle.emit.drawing.Shape.Stroke;
import wattle.emit.drawing.Sketch;
import wattle.emit.schedule.BreakerText;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Pole;
import wattle.model.Slot;
import wattle.model.SlotOrder;

/**
 * Draws the front of each panel of a house. A breaker of several poles whose slots lie under each other is one box over
 * all of them; where they do not, each pole is a box that names the slots it moves with. Slots without a breaker are
 * outlined in dashes and say that they are empty.
 */
public final class PanelFront {
  private static final double ROW = 32;
  private static final double SPINE = 40;
  private static final double NUMBER = 30;
  private static final double NARROWEST = 190;
  private static final double WIDEST = 430;
  private static final double APART = 60;
  private static final double MAIN = 180;

  private final House house;

  public PanelFront(House house) {
    this.house = house;
  }

  /** All panels side by side. */
  public Drawing drawing() {
    Sketch sketch = new Sketch();
    double x = 0;
    for (Panel panel : house.panels().values()) {
      Sketch one = panel(panel);
      sketch.add(one, x - one.bounds().left(), 0);
      x += one.bounds().width() + APART;
    }
    double left = 0;
    double bottom = sketch.bounds().bottom();
    double wide = Math.max(sketch.bounds().width(), 560);
    sketch.fitted(left, sketch.bounds().top() - 22, title(), 16, true, Anchor.START, wide);
    sketch.text(left, bottom + 26, "Letters down the middle: the leg of the row. AFCI: opens on an arc fault. GFCI: opens on a ground fault.", 10);
    sketch.text(left, bottom + 41, "Switch off, lock, and prove dead with a tester proved before and after; the local code and a licensed person decide.", 10);
    return sketch.drawing(24, title(), description());
  }

  private String title() {
    return "Panel front: " + house.title().orElse("untitled plan") + house.revision().map(r -> ", revision " + r).orElse("");
  }

  private String description() {
    List<String> words = new ArrayList<>();
    for (Panel panel : house.panels().values()) {
      words.add("panel " + panel.name() + " with " + slotCount(panel) + " slots and " + panel.breakers().size() + " breakers");
    }
    return String.join("; ", words) + ".";
  }

  private static int slotCount(Panel panel) {
    int highest =
        panel.breakers().stream().flatMap(b -> b.poles().stream()).mapToInt(p -> p.slot().number()).max().orElse(0);
    return Math.max(panel.slotCount().orElse(0), highest);
  }

  private Sketch panel(Panel panel) {
    int slots = slotCount(panel);
    boolean two = panel.order() != SlotOrder.ONE_COLUMN;
    int rows = two ? (slots + 1) / 2 : slots;
    double cell = cellWidth(panel);
    double leftCell = NUMBER;
    double spine = leftCell + cell;
    double rightCell = spine + SPINE;
    double width = two ? rightCell + cell + NUMBER : spine + SPINE;
    Sketch sketch = new Sketch();
    double heading = Math.max(width, WIDEST);
    sketch.fitted(0, -62, "Panel " + panel.name() + panel.label().map(l -> "  " + l).orElse(""), 13, true, Anchor.START, heading);
    sketch.fitted(0, -46, String.join(", ", facts(panel)), 10, false, Anchor.START, heading);
    double middle = two ? spine + SPINE / 2 : leftCell + cell / 2;
    sketch.box(middle - MAIN / 2, -32, MAIN, 24, Stroke.THIN, Fill.SHADE);
    String main = panel.main().map(BreakerText::main).orElse("no main");
    sketch.fitted(middle, -16, main, 10, true, Anchor.MIDDLE, MAIN - 10);
    sketch.box(0, -38, width, rows * ROW + 50, Stroke.THICK, Fill.NONE);

    Set<Slot> drawn = new HashSet<>();
    for (Breaker breaker : panel.breakers()) {
      for (Group group : groups(panel, breaker, slots)) {
        double x = group.left ? leftCell : rightCell;
        body(sketch, x, group.top, cell, group.height, breaker, group);
        group.slots.forEach(drawn::add);
      }
    }
    for (int number = 1; number <= slots; number++) {
      boolean left = panel.order().isLeft(number, slots);
      double y = (panel.order().rowOf(number, slots) - 1) * ROW;
      empty(sketch, left ? leftCell : rightCell, y, cell, number, drawn);
      sketch.text(left ? leftCell - 6 : rightCell + cell + 6, y + 20, Integer.toString(number), 11, true, left ? Anchor.END : Anchor.START);
    }
    for (int row = 1; row <= rows; row++) {
      int slot = firstInRow(panel, row, slots);
      sketch.text(spine + SPINE / 2, (row - 1) * ROW + 20, panel.order().legOf(slot, slots, panel.legs()).name(), 11, false, Anchor.MIDDLE);
    }
    return sketch;
  }

  private static int firstInRow(Panel panel, int row, int slots) {
    for (int number = 1; number <= slots; number++) {
      if (panel.order().rowOf(number, slots) == row) {
        return number;
      }
    }
    return 1;
  }

  private static List<String> facts(Panel panel) {
    List<String> facts = new ArrayList<>();
    facts.add(panel.system().text());
    panel.busRating().ifPresent(b -> facts.add("bus " + b));
    panel.slotCount().ifPresent(s -> facts.add(s + " slots"));
    facts.add(panel.bonded() ? "neutral and ground joined here" : "neutral and ground apart");
    return facts;
  }

  private double cellWidth(Panel panel) {
    double most = NARROWEST;
    for (Breaker breaker : panel.breakers()) {
      boolean half = breaker.poles().stream().anyMatch(p -> p.slot().half().isPresent());
      double name = Fit.width(BreakerText.description(house, breaker), half ? 9 : 10, true);
      double rating = Fit.width(rating(breaker, List.of()), 9, false);
      most = Math.max(most, half ? name + rating + 30 : Math.max(name, rating) + 34);
    }
    return Math.min(most, WIDEST);
  }

  /** Slots of a breaker that lie under each other on one side and are drawn as one box. */
  private record Group(boolean left, double top, double height, List<Slot> slots, List<Slot> others) {}

  private static List<Group> groups(Panel panel, Breaker breaker, int slotCount) {
    List<Slot> slots =
        breaker.poles().stream()
            .map(Pole::slot)
            .sorted(Comparator.comparingInt(Slot::number).thenComparing(s -> s.half().orElse('\0')))
            .toList();
    List<Group> groups = new ArrayList<>();
    int i = 0;
    while (i < slots.size()) {
      int end = i + 1;
      while (end < slots.size() && follows(panel, slots.get(end - 1), slots.get(end), slotCount)) {
        end++;
      }
      List<Slot> own = slots.subList(i, end);
      List<Slot> others = slots.stream().filter(s -> !own.contains(s)).toList();
      double top = top(panel, own.get(0), slotCount);
      Slot last = own.get(own.size() - 1);
      double bottom = top(panel, last, slotCount) + (last.half().isPresent() ? ROW / 2 : ROW);
      groups.add(new Group(panel.order().isLeft(own.get(0).number(), slotCount), top, bottom - top, own, others));
      i = end;
    }
    return groups;
  }

  private static double top(Panel panel, Slot slot, int slotCount) {
    double row = (panel.order().rowOf(slot.number(), slotCount) - 1) * ROW;
    return slot.half().equals(Optional.of('b')) ? row + ROW / 2 : row;
  }

  private static boolean follows(Panel panel, Slot above, Slot below, int slotCount) {
    double bottom = top(panel, above, slotCount) + (above.half().isPresent() ? ROW / 2 : ROW);
    return panel.order().isLeft(above.number(), slotCount) == panel.order().isLeft(below.number(), slotCount)
        && top(panel, below, slotCount) == bottom;
  }

  private void body(Sketch sketch, double x, double y, double width, double height, Breaker breaker, Group group) {
    sketch.add(new Shape.Box(x + 1, y + 1, width - 2, height - 2, 3, Stroke.THIN, Fill.NONE));
    String name = BreakerText.description(house, breaker);
    String rating = rating(breaker, group.others);
    if (height < ROW) {
      double ratingWidth = Fit.width(rating, 9, false);
      sketch.fitted(x + 7, y + 11.4, name, 9, true, Anchor.START, width - ratingWidth - 24);
      sketch.text(x + width - 7, y + 11.4, rating, 9, false, Anchor.END);
      return;
    }
    double middle = y + height / 2;
    double room = width - (group.slots.size() > 1 ? 24 : 14);
    sketch.fitted(x + 7, middle - 2, name, 10, true, Anchor.START, room);
    sketch.fitted(x + 7, middle + 10.5, rating, 9, false, Anchor.START, room);
    if (group.slots.size() > 1) {
      // The bar across the handles that move together.
      double handle = x + width - 10;
      sketch.line(handle, y + 9, handle, y + height - 9, Stroke.THICK);
    }
  }

  private static String rating(Breaker breaker, List<Slot> others) {
    List<String> words = new ArrayList<>();
    words.add(BreakerText.rating(breaker));
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
