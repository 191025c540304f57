package wattle.emit.document.directory;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.Device;
import wattle.model.DeviceKind.Family;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Slot;
import wattle.words.BreakerWords;

/**
 * A panel as its door shows it: rows of slots, a left and a right column where the panel has two.
 *
 * @param rows from the top, each with what stands in its left and in its right slot: several lines for half-size breakers
 */
record PanelDirectory(Panel panel, boolean twoColumns, List<Row> rows) {
  PanelDirectory {
    rows = List.copyOf(rows);
  }

  /**
   * One row of the panel; a side is empty where a breaker of the row above reaches into it.
   *
   * @param leftRows over how many rows the left side reaches; 0 where the row above reaches into it
   * @param rightRows the same for the right side
   */
  record Row(List<DirectoryLine> left, int leftRows, List<DirectoryLine> right, int rightRows) {
    Row {
      left = List.copyOf(left);
      right = List.copyOf(right);
    }
  }

  static PanelDirectory of(House house, Panel panel) {
    int slots = slots(panel);
    boolean two = panel.order() != wattle.model.SlotOrder.ONE_COLUMN;
    int count = two ? (slots + 1) / 2 : slots;
    List<Side> left = side(house, panel, slots, count, true);
    List<Side> right = two ? side(house, panel, slots, count, false) : List.of();
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Side r = two ? right.get(i) : new Side(List.of(), 0);
      rows.add(new Row(left.get(i).lines, left.get(i).rows, r.lines, r.rows));
    }
    return new PanelDirectory(panel, two, rows);
  }

  /** Where the plan does not say how many slots there are, as many as its breakers take. */
  private static int slots(Panel panel) {
    int highest = panel.breakers().stream().flatMap(b -> b.id().slots().stream()).mapToInt(Slot::number).max().orElse(0);
    return Math.max(highest, panel.slotCount().orElse(0));
  }

  private record Side(List<DirectoryLine> lines, int rows) {}

  private static List<Side> side(House house, Panel panel, int slots, int count, boolean left) {
    List<List<Breaker>> breakers = new ArrayList<>();
    List<String> names = new ArrayList<>();
    for (int row = 0; row < count; row++) {
      breakers.add(List.of());
      names.add("");
    }
    for (int slot = 1; slot <= slots; slot++) {
      int number = slot;
      if (panel.order().isLeft(slot, slots) == left) {
        int row = panel.order().rowOf(slot, slots) - 1;
        names.set(row, Integer.toString(slot));
        breakers.set(row, panel.breakers().stream().filter(b -> b.id().slots().stream().anyMatch(s -> s.number() == number)).toList());
      }
    }
    List<Side> sides = new ArrayList<>();
    for (int row = 0; row < count; row++) {
      List<Breaker> here = breakers.get(row);
      boolean goesOn = row > 0 && isWhole(here) && here.equals(breakers.get(row - 1));
      if (goesOn) {
        sides.add(new Side(List.of(), 0));
        continue;
      }
      int reach = 1;
      while (isWhole(here) && row + reach < count && here.equals(breakers.get(row + reach))) {
        reach++;
      }
      List<DirectoryLine> lines = here.isEmpty()
          ? names.get(row).isEmpty() ? List.of() : List.of(DirectoryLine.empty(names.get(row)))
          : here.stream().map(b -> line(house, b)).toList();
      sides.add(new Side(lines, reach));
    }
    return sides;
  }

  private static boolean isWhole(List<Breaker> breakers) {
    return breakers.size() == 1 && breakers.get(0).id().slots().stream().allMatch(s -> s.half().isEmpty());
  }

  private static DirectoryLine line(House house, Breaker breaker) {
    String rating = BreakerWords.rating(breaker);
    String protection = BreakerWords.protection(breaker);
    Set<String> rooms = new LinkedHashSet<>();
    List<String> notes = new ArrayList<>();
    Set<String> seen = new LinkedHashSet<>();
    roomsOf(house, breaker, rooms, seen);
    if (breaker.backFed()) {
      notes.add("backfeeds this panel from a source");
    }
    house.branchOf(breaker).ifPresent(branch -> {
      if (!breaker.backFed() && PlainWords.devices(house, branch).stream().anyMatch(d -> d.kind().family() == Family.SOURCE)) {
        notes.add("fed from a source: it stays live when this is off");
      }
      List<String> others = branch.hots().stream().map(BranchHot::breaker).filter(b -> !b.equals(breaker.id())).map(BreakerId::slotText)
          .distinct().toList();
      if (!others.isEmpty()) {
        notes.add("shares its circuit with " + String.join(", ", others) + ": switch off both");
      }
    });
    return new DirectoryLine(
        breaker.id().slotText(), protection.isEmpty() ? rating : rating + ", " + protection, words(house, breaker),
        List.copyOf(rooms), notes, Optional.of(breaker));
  }

  private static String words(House house, Breaker breaker) {
    Optional<Branch> branch = house.branchOf(breaker);
    if (branch.isPresent()) {
      return breaker.label().or(() -> branch.get().label()).orElseGet(() -> PlainWords.of(house, branch.get(), breaker.id()));
    }
    return BreakerWords.description(house, breaker);
  }

  /** What is fed and is no mere splice, which says nothing of what a way is for; the splices where there is nothing else. */
  private static List<Device> served(List<Device> devices) {
    List<Device> served = devices.stream().filter(d -> d.kind().family() != Family.JUNCTION).toList();
    return served.isEmpty() ? devices : served;
  }

  private static void roomsOf(House house, Breaker breaker, Set<String> rooms, Set<String> seenPanels) {
    house.branchOf(breaker)
        .ifPresent(b -> served(PlainWords.devices(house, b, breaker.id())).forEach(d -> rooms.add(house.rooms().get(d.room()).title())));
    house.panelOf(breaker).filter(p -> seenPanels.add(p.name()))
        .ifPresent(p -> p.breakers().forEach(b -> roomsOf(house, b, rooms, seenPanels)));
  }
}
