package wattle.emit.view.branchwiring;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import wattle.emit.media.drawing.Insulation;
import wattle.model.Role;

/**
 * Where everything in a box comes to lie, for one order. Each net has a level line of its own: hots, switch legs and
 * travelers above the fixtures, neutral and ground below. The cable that arrives and the first that leaves have their
 * ends on these lines; further cables have theirs below, and wires down to them at the right.
 */
final class BoxLayout {
  static final double SIZE = 10;
  static final double LABEL = 9.5;
  private static final double GAP = 22;

  /** A fixture with its terminals in place. */
  record Placed(Fixture fixture, double x, double width, List<Terminal> above, List<Double> aboveX, List<Terminal> below,
      List<Double> belowX) {}

  /** The end of a conductor at the wall of the box. */
  record Pin(int cable, double y, String label, Insulation insulation) {}

  private final BoxWiring box;
  private final Order order;
  private final Measures measures;
  private final Spacing spacing;
  private final Map<Net.Key, Double> lines = new HashMap<>();
  private final List<Placed> placed = new ArrayList<>();
  private final List<Pin> pins = new ArrayList<>();
  private final Routes routes = new Routes();
  private final double leftZone;
  private final double rightZone;
  private double bodyTop;
  private double bodyBottom;
  private double lastLine;
  private double width;
  private double pad2;

  BoxLayout(BoxWiring box, Order order, Measures measures) {
    this.box = box;
    this.order = order;
    this.measures = measures;
    spacing = measures.spacing();
    leftZone = measures.left();
    rightZone = measures.right();
    levels();
    fixtures();
    ends();
  }

  private List<Net.Conductor> conductors() {
    List<Net.Conductor> all = new ArrayList<>();
    box.nets().forEach(n -> all.addAll(n.conductors()));
    all.addAll(box.loose());
    return all;
  }

  private List<Net> low() {
    // The ground lowest; both sides of a wired-through neutral share a line, for they meet at the device.
    return box.nets().stream().filter(n -> n.key().isLow())
        .sorted(Comparator.comparing(n -> n.key().role() instanceof Role.Ground))
        .toList();
  }

  private void levels() {
    double y = spacing.head() + 22;
    for (Net net : order.high()) {
      y = level(net, y);
    }
    boolean strip = !box.fixtures().isEmpty();
    bodyTop = order.high().isEmpty() ? spacing.head() + 12 : y - spacing.pitch() + GAP;
    int lines = box.fixtures().stream().mapToInt(f -> f.lines().size()).max().orElse(0);
    boolean above = box.fixtures().stream().anyMatch(f -> !f.above().isEmpty());
    boolean below = box.fixtures().stream().anyMatch(f -> !f.below().isEmpty());
    bodyBottom = bodyTop + 22 + 13 * lines + (above ? 15 : 0) + (below ? 15 : 0);
    if (strip) {
      y = bodyBottom + GAP + 4;
    }
    for (Net net : low()) {
      y = level(net, y);
    }
    lastLine = y - spacing.pitch();
  }

  private double level(Net net, double y) {
    Net.Key other = new Net.Key(net.key().role(), !net.key().onward());
    if (lines.containsKey(other)) {
      lines.put(net.key(), lines.get(other));
      return y;
    }
    lines.put(net.key(), y);
    return y + spacing.pitch();
  }

  private void fixtures() {
    double x = (leftZone > 0 ? leftZone + spacing.pad() : 0) + spacing.beside();
    for (int f = 0; f < box.fixtures().size(); f++) {
      Fixture fixture = box.fixtures().get(f);
      List<Terminal> above = order.above().get(f);
      List<Terminal> below = order.below().get(f);
      double wide = measures.fixture(f);
      placed.add(new Placed(fixture, x, wide, above, spread(above, x, wide), below, spread(below, x, wide)));
      x += wide + spacing.beside();
    }
    pad2 = x;
    width = box.leaving().isEmpty() ? x : x + spacing.pad();
  }

  /** Middles of the terminals, spread over the width of their fixture. */
  private List<Double> spread(List<Terminal> terminals, double left, double wide) {
    double spare = (wide - measures.of(terminals)) / Math.max(1, terminals.size());
    List<Double> middles = new ArrayList<>();
    double x = left;
    for (Terminal terminal : terminals) {
      double own = measures.of(terminal) + spare;
      middles.add(x + own / 2);
      x += own;
    }
    return middles;
  }

  /** What comes to a net's line: the wall at either side, terminals, and columns down to further cables. */
  private static final class Ends {
    private Net.Conductor left;
    private Net.Conductor right;
    private final List<double[]> drops = new ArrayList<>();
    private final List<double[]> columns = new ArrayList<>();
    private final List<Insulation> columnWires = new ArrayList<>();
  }

  private void ends() {
    Map<Net, Ends> ends = new HashMap<>();
    List<Net> inOrder = new ArrayList<>(order.high());
    inOrder.addAll(low());
    inOrder.forEach(n -> ends.put(n, new Ends()));
    for (Placed one : placed) {
      drops(ends, one.above, one.aboveX, bodyTop);
      drops(ends, one.below, one.belowX, bodyBottom);
    }
    for (Net net : inOrder) {
      for (Net.Conductor end : net.conductors()) {
        if (end.cable() == 0) {
          ends.get(net).left = end;
          pin(end, lines.get(net.key()));
        } else if (end.cable() == 1) {
          ends.get(net).right = end;
          pin(end, lines.get(net.key()));
        }
      }
    }
    double y = loose(0, lastLine + spacing.pitch());
    y = Math.max(y, loose(1, lastLine + spacing.pitch()));
    int columns = (int) conductors().stream().filter(c -> c.cable() > 1 && !box.loose().contains(c)).count();
    double column = width + spacing.column() * columns;
    width += columns > 0 ? spacing.column() * columns + 0.6 * spacing.pad() : 0;
    width = Math.max(measures.least(), width + rightZone);
    for (int cable = 2; cable <= box.leaving().size(); cable++) {
      y += 16;
      for (Net net : inOrder) {
        for (Net.Conductor end : net.conductors()) {
          if (end.cable() == cable) {
            pin(end, y);
            ends.get(net).columns.add(new double[]{column, y});
            ends.get(net).columnWires.add(Net.insulation(end.use()));
            column -= spacing.column();
            y += spacing.pitch();
          }
        }
      }
      y = loose(cable, y);
    }
    lastLine = y - spacing.pitch();
    inOrder.forEach(n -> route(n, ends.get(n)));
    for (Pin pin : pins) {
      if (box.loose().stream().anyMatch(l -> l.cable() == pin.cable && measures.label(l).equals(pin.label))) {
        double from = pin.cable == 0 ? 0 : width;
        double to = pin.cable == 0 ? leftZone + 2 : width - rightZone - 2;
        routes.wire(pin, pin.insulation, from, pin.y, to, pin.y);
      }
    }
  }

  private void drops(Map<Net, Ends> ends, List<Terminal> terminals, List<Double> middles, double y) {
    for (int t = 0; t < terminals.size(); t++) {
      Terminal terminal = terminals.get(t);
      double x = middles.get(t);
      ends.forEach((net, own) -> {
        if (terminal.net().filter(net.key()::equals).isPresent()) {
          own.drops.add(new double[]{x, y});
        }
      });
    }
  }

  private double loose(int cable, double from) {
    double y = from;
    for (Net.Conductor end : box.loose()) {
      if (end.cable() == cable) {
        pin(end, y);
        y += spacing.pitch();
      }
    }
    return y;
  }

  private void pin(Net.Conductor end, double y) {
    pins.add(new Pin(end.cable(), y, measures.label(end), Net.insulation(end.use())));
  }

  private void route(Net net, Ends ends) {
    double y = lines.get(net.key());
    if (!net.isSpliced()) {
      direct(net, ends, y);
      return;
    }
    double left = Double.MAX_VALUE;
    double right = -Double.MAX_VALUE;
    List<double[]> all = new ArrayList<>(ends.drops);
    all.addAll(ends.columns);
    for (double[] end : all) {
      left = Math.min(left, end[0] - 8);
      right = Math.max(right, end[0] + 8);
    }
    boolean atLeft = ends.left != null || box.leaving().isEmpty() && leftZone > 0;
    double pad = atLeft ? leftZone + 6 : pad2 + spacing.pad() - 22;
    if (!atLeft && box.leaving().isEmpty()) {
      pad = left; // within one box without cables; there is no room kept free
    }
    left = Math.min(left, pad);
    right = Math.max(right, pad + 24);
    routes.bar(new Routes.Bar(net, left, right, y, pad + 12));
    if (ends.left != null) {
      routes.wire(net, Net.insulation(ends.left.use()), 0, y, left, y);
    }
    if (ends.right != null) {
      routes.wire(net, Net.insulation(ends.right.use()), width, y, right, y);
    }
    for (double[] drop : ends.drops) {
      routes.wire(net, net.pigtail(), drop[0], drop[1] > y ? y + 6 : y - 6, drop[0], drop[1]);
    }
    for (int c = 0; c < ends.columns.size(); c++) {
      double[] column = ends.columns.get(c);
      routes.wire(net, ends.columnWires.get(c), width, column[1], column[0], column[1], column[0], y + 6);
    }
  }

  /** One wire from end to end. */
  private void direct(Net net, Ends ends, double y) {
    List<Double> way = new ArrayList<>();
    Insulation insulation = net.pigtail();
    if (ends.left != null) {
      insulation = Net.insulation(ends.left.use());
      way.addAll(List.of(0.0, y));
    } else if (ends.right != null) {
      insulation = Net.insulation(ends.right.use());
      way.addAll(List.of(width, y));
    } else if (!ends.columns.isEmpty()) {
      insulation = ends.columnWires.get(0);
      double[] column = ends.columns.get(0);
      way.addAll(List.of(width, column[1], column[0], column[1], column[0], y));
    }
    for (double[] drop : ends.drops) {
      way.addAll(way.isEmpty() ? List.of(drop[0], drop[1], drop[0], y) : List.of(drop[0], y, drop[0], drop[1]));
    }
    routes.wire(net, insulation, way.stream().mapToDouble(Double::doubleValue).toArray());
  }

  int crossings() {
    return routes.crossings();
  }

  Routes routes() {
    return routes;
  }

  List<Placed> placed() {
    return placed;
  }

  List<Pin> pins() {
    return pins;
  }

  double bodyTop() {
    return bodyTop;
  }

  double bodyBottom() {
    return bodyBottom;
  }

  double width() {
    return width;
  }

  /** Lower edge of what is drawn. */
  double bottom() {
    double low = Math.max(lastLine, pins.stream().mapToDouble(Pin::y).max().orElse(0));
    return Math.max(box.fixtures().isEmpty() ? 0 : bodyBottom, low) + 18;
  }
}
