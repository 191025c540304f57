package wattle.emit.view.branchwiring;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import wattle.emit.media.drawing.Fit;

/** How wide the things in a box are; measured once, since very many orders of them are tried. */
final class Measures {
  private static final double WIDEST_LINE = 210;

  private final Map<Terminal, Double> terminals = new HashMap<>();
  private final List<Double> fixtures = new ArrayList<>();
  private final Map<Net.Conductor, String> labels = new HashMap<>();
  private final double left;
  private final double right;
  private final double least;
  private final Spacing spacing;

  /** @param least how wide the box must be for its heading and notes */
  Measures(BoxWiring box, Function<Net.Conductor, String> label, double least, Spacing spacing) {
    this.least = least;
    this.spacing = spacing;
    List<Net.Conductor> ends = new ArrayList<>(box.loose());
    box.nets().forEach(n -> ends.addAll(n.conductors()));
    ends.forEach(e -> labels.put(e, label.apply(e)));
    left = zone(ends.stream().filter(e -> e.cable() == 0).toList());
    right = zone(ends.stream().filter(e -> e.cable() > 0).toList());
    for (Fixture fixture : box.fixtures()) {
      fixture.terminals().forEach(t -> terminals.put(t, Fit.width(t.name(), BoxLayout.LABEL, false) + 14));
      double wide = Math.max(60, Math.min(WIDEST_LINE, Fit.width(fixture.title(), BoxLayout.SIZE, true)) + 16);
      for (String line : fixture.lines()) {
        wide = Math.max(wide, Math.min(WIDEST_LINE, Fit.width(line, BoxLayout.LABEL, false)) + 16);
      }
      fixtures.add(Math.max(wide, Math.max(of(fixture.above()), of(fixture.below()))));
    }
  }

  private double zone(List<Net.Conductor> ends) {
    return ends.stream().mapToDouble(e -> ConductorLabel.width(labels.get(e)) + 2 * spacing.wall()).max().orElse(0);
  }

  String label(Net.Conductor end) {
    return labels.get(end);
  }

  /** Room for the labels of the cable that arrives. */
  double left() {
    return left;
  }

  /** Room for those of the cables that leave. */
  double right() {
    return right;
  }

  Spacing spacing() {
    return spacing;
  }

  double least() {
    return least;
  }

  double fixture(int index) {
    return fixtures.get(index);
  }

  double of(Terminal terminal) {
    return terminals.get(terminal);
  }

  double of(List<Terminal> row) {
    return row.stream().mapToDouble(terminals::get).sum();
  }
}
