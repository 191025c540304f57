package wattle.emit.view.branchwiring;

import java.util.ArrayList;
import java.util.List;

/**
 * In which order things lie side by side in a box; what can be chosen so that wires cross little.
 *
 * @param high the nets above the devices, from the top
 * @param above the terminals at the head of each fixture, from the left
 * @param below those at its foot
 */
record Order(List<Net> high, List<List<Terminal>> above, List<List<Terminal>> below) {
  Order {
    high = List.copyOf(high);
    above = above.stream().map(List::copyOf).toList();
    below = below.stream().map(List::copyOf).toList();
  }

  /** As written. */
  static Order first(BoxWiring box) {
    return new Order(
        box.nets().stream().filter(n -> !n.key().isLow()).toList(),
        box.fixtures().stream().map(Fixture::above).toList(),
        box.fixtures().stream().map(Fixture::below).toList());
  }

  Order withHigh(List<Net> other) {
    return new Order(other, above, below);
  }

  Order withAbove(int fixture, List<Terminal> other) {
    List<List<Terminal>> all = new ArrayList<>(above);
    all.set(fixture, other);
    return new Order(high, all, below);
  }

  Order withBelow(int fixture, List<Terminal> other) {
    List<List<Terminal>> all = new ArrayList<>(below);
    all.set(fixture, other);
    return new Order(high, above, all);
  }
}
