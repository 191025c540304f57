package wattle.emit.view.branchwiring;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Sketch;
import wattle.model.Branch;
import wattle.model.Section;

/**
 * A row of boxes, its first at height 0, the others so that the cable to them is straight. A box that would come to lie beyond the width
 * or the height begins a row of its own, which is added to those that are still to be drawn.
 */
final class BranchRow {
  private static final double BETWEEN_BOXES = 26;
  private static final double BEND = 18;

  private final Branch branch;
  private final List<BoxCard> cards;
  private final double widest;
  private final double tallest;
  private final boolean onSheets;
  private final Waiting waiting;
  private final Sketch sketch = new Sketch();
  private Start start = Start.AT_PANEL;
  private double highest;
  private double lowest;

  /**
   * Where a row begins.
   *
   * @param point the first box
   * @param cable what comes to it; absent for the panel
   * @param mark the number at both ends of the cable; the panel's row has 0
   * @param from name of the box before
   * @param row mark of the row that the box before is in
   */
  record Start(int point, Optional<Section> cable, int mark, String from, int row) {
    static final Start AT_PANEL = new Start(0, Optional.empty(), 0, "", 0);
  }

  /** Rows that are still to be drawn, and how many cables were broken off so far. */
  static final class Waiting {
    private final Deque<Start> starts = new ArrayDeque<>();
    private int marks;

    void begin() {
      starts.add(Start.AT_PANEL);
    }

    Optional<Start> next() {
      return Optional.ofNullable(starts.pollFirst());
    }
  }

  /** @param waiting rows that are still to be drawn; those that this one breaks off are added */
  BranchRow(Branch branch, List<BoxCard> cards, double widest, double tallest, boolean onSheets, Waiting waiting) {
    this.branch = branch;
    this.cards = cards;
    this.widest = widest;
    this.tallest = tallest;
    this.onSheets = onSheets;
    this.waiting = waiting;
  }

  void draw(Start from) {
    start = from;
    if (from.cable().isEmpty()) {
      place(from.point(), 0, 0, Double.NEGATIVE_INFINITY);
      return;
    }
    Section cable = from.cable().get();
    double entry = cards.get(from.point()).entry();
    double x = CableWay.BARE_STUB;
    if (onSheets) {
      CableWay.coming(sketch, x, entry, from.mark());
    } else {
      Jump jump = Jump.from(from.from());
      x = CableWay.stub(cable, jump, true);
      CableWay.coming(sketch, cable, x, entry, from.mark(), jump);
    }
    place(from.point(), x, 0, Double.NEGATIVE_INFINITY);
  }

  /** Its name as a piece. */
  String name() {
    return name(start.mark());
  }

  private static String name(int mark) {
    return "row " + mark;
  }

  Sketch sketch() {
    return sketch;
  }

  /** Upper edge of what is highest. */
  double top() {
    return highest;
  }

  /** Lower edge of what is lowest. */
  double bottom() {
    return lowest;
  }

  private String boxName(int point) {
    return branch.points().get(point).box().orElse("panel " + branch.panel().orElse("?"));
  }

  /** What is said beneath a box of the cables that are broken off there, if all that may be are. */
  private double mostBeneath(int point) {
    BoxCard card = cards.get(point);
    return onSheets ? OnOtherSheet.height(card.leaving().stream().map(c -> onward(99, c)).toList(), card.width()) : 0;
  }

  private OnOtherSheet onward(int mark, Section cable) {
    return OnOtherSheet.onward(mark, name(mark), cable, boxName(cable.to()));
  }

  /**
   * Places a box with its upper left corner there, and all boxes beyond it; their lower edge comes back.
   *
   * @param ceiling above which the boxes beyond may not stand, for others are there
   */
  private double place(int point, double x, double y, double ceiling) {
    BoxCard card = cards.get(point);
    highest = Math.min(highest, y);
    lowest = Math.max(lowest, y + card.height());
    sketch.add(card.sketch(), x, y);
    sketch.add(new Shape.Spot(x, y, card.width(), card.height(), branch.points().get(point).box().orElse(branch.name())));
    List<Section> cables = card.leaving();
    double right = x + card.width();
    double gap = BEND * (cables.size() + 1) + cables.stream().mapToDouble(CableWay::words).max().orElse(0);
    if (cables.size() > 1) {
      gap = Math.max(gap, marks(point) + 10); // one of them may end in a mark beside the box that another goes to
    }
    double bandTop = ceiling;
    double lower = y + card.height();
    List<OnOtherSheet> beneath = new ArrayList<>();
    if (onSheets && point == start.point()) {
      start.cable().ifPresent(c -> beneath.add(OnOtherSheet.from(start.mark(), name(start.row()), c, start.from())));
    }
    List<double[]> bends = new ArrayList<>();
    List<Section> bent = new ArrayList<>();
    for (int i = 0; i < cables.size(); i++) {
      Section cable = cables.get(i);
      BoxCard next = cards.get(cable.to());
      double exit = y + card.exits().get(i);
      double top = Math.max(bandTop, exit - next.entry());
      if (right + gap + next.width() + marks(cable.to()) > widest
          || Math.max(lowest, top + next.height() + mostBeneath(cable.to())) - Math.min(highest, top) > tallest) {
        int mark = ++waiting.marks;
        if (onSheets) {
          CableWay.leaving(sketch, right, exit, mark);
          beneath.add(onward(mark, cable));
        } else {
          CableWay.leaving(sketch, cable, right, exit, mark, Jump.onward(mark, boxName(cable.to())), cables.size() == 1);
        }
        waiting.starts.addLast(new Start(cable.to(), Optional.of(cable), mark, boxName(point), start.mark()));
        continue;
      }
      bends.add(new double[]{exit, top + next.entry()});
      bent.add(cable);
      double below = place(cable.to(), right + gap, top, bandTop);
      lower = Math.max(lower, below);
      bandTop = below + BETWEEN_BOXES;
    }
    // Those that go down farthest bend first, so that none crosses another.
    List<Integer> inOrder = IntStream.range(0, bent.size()).boxed().sorted(Comparator.reverseOrder()).toList();
    for (int i = 0; i < inOrder.size(); i++) {
      double[] ends = bends.get(inOrder.get(i));
      CableWay.draw(sketch, bent.get(inOrder.get(i)), right, ends[0], right + BEND * (i + 1), right + gap, ends[1]);
    }
    OnOtherSheet.draw(sketch, beneath, x, y + card.height(), card.width());
    double end = y + card.height() + OnOtherSheet.height(beneath, card.width());
    lowest = Math.max(lowest, end);
    return Math.max(lower, end);
  }

  /** What a box needs to its right for the marks of cables that may not fit any more. */
  private double marks(int point) {
    List<Section> leaving = cards.get(point).leaving();
    if (onSheets) {
      return leaving.isEmpty() ? 0 : CableWay.BARE_STUB;
    }
    return leaving.stream().mapToDouble(s -> CableWay.stub(s, Jump.onward(99, boxName(s.to())), leaving.size() == 1)).max().orElse(0);
  }
}
