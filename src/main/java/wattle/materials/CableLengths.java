package wattle.materials;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Section;
import wattle.model.Service;
import wattle.model.Status;
import wattle.model.Stretch;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * Lengths by type: what the plan states, and at each end what stays in the box or panel, and on all of it a part for
 * waste. Of single conductors each counts with its own length; their raceway has the length stated, and waste.
 */
final class CableLengths {
  private final House house;
  private final Library library;
  private final List<String> open;
  private final Map<Key, Sum> sums = new LinkedHashMap<>();

  CableLengths(House house, Library library, List<String> open) {
    this.house = house;
    this.library = library;
    this.open = open;
  }

  private record Key(Material.Category category, String what) {}

  /** What is known of one type while it is summed up. */
  private static final class Sum {
    private double meters;
    private int boxEnds;
    private int panelEnds;
    private final Set<String> places = new LinkedHashSet<>();
  }

  List<Material> items() {
    for (Service service : house.services().values()) {
      if (service.status() == Status.NEW) {
        service.run().ifPresent(r -> stretch(r, "service " + service.name(), 1));
      }
    }
    for (Panel panel : house.panels().values()) {
      if (panel.status() == Status.NEW) {
        panel.feeder().ifPresent(f -> stretch(f, "panel " + panel.name(), panel.supply() instanceof PanelSupply.FromBreaker ? 2 : 1));
      }
    }
    for (Branch branch : house.branches().values()) {
      for (Section section : branch.sections()) {
        if (section.status() == Status.NEW) {
          section(branch, section);
        }
      }
    }
    List<Material> items = new ArrayList<>();
    sums.forEach((key, sum) -> items.add(item(key, sum)));
    return items;
  }

  private void section(Branch branch, Section section) {
    int boxes = (branch.points().get(section.from()).box().isPresent() ? 1 : 0)
        + (branch.points().get(section.to()).box().isPresent() ? 1 : 0);
    Optional<String> to = branch.points().get(section.to()).box();
    String place = branch.name();
    if (section.length().isEmpty()) {
      open.add("the run of " + branch.name() + " to " + to.orElse("its panel") + " has no length yet, so it is not counted");
      return;
    }
    run(section.wiring(), section.length().get(), boxes, 2 - boxes, place);
  }

  /** @param panelEnds how many of its ends lie in a panel; the supplier's end of a service run is his */
  private void stretch(Stretch stretch, String place, int panelEnds) {
    if (stretch.length().isEmpty()) {
      open.add("the run to " + place + " has no length yet, so it is not counted");
      return;
    }
    run(stretch.wiring(), stretch.length().get(), 0, panelEnds, place);
  }

  private void run(Wiring wiring, Quantity length, int boxEnds, int panelEnds, String place) {
    for (int set = 0; set < wiring.sets(); set++) {
      oneSet(wiring, length, boxEnds, panelEnds, place);
    }
  }

  private void oneSet(Wiring wiring, Quantity length, int boxEnds, int panelEnds, String place) {
    String one = wiring.sets() == 1 ? wiring.text() : wiring.text().split(" sets of ", 2)[1];
    if (wiring.raceway().isEmpty()) {
      add(new Key(Material.Category.CABLE, one), length.si(), boxEnds, panelEnds, place);
      return;
    }
    String raceway = one.split(" with ", 2)[0];
    add(new Key(Material.Category.RACEWAY, raceway), length.si(), 0, 0, place);
    for (Wire wire : wiring.wires()) {
      String what = (wire.size() + " " + wire.metal().symbol() + " " + wiring.type()).strip() + ", " + wire.color();
      add(new Key(Material.Category.CONDUCTOR, what), length.si(), boxEnds, panelEnds, place);
    }
  }

  private void add(Key key, double meters, int boxEnds, int panelEnds, String place) {
    Sum sum = sums.computeIfAbsent(key, k -> new Sum());
    sum.meters += meters;
    sum.boxEnds += boxEnds;
    sum.panelEnds += panelEnds;
    sum.places.add(place);
  }

  private Material item(Key key, Sum sum) {
    Derivation laid = Derivation.stated("length of the runs", "L", Quantity.of(sum.meters, Units.METER));
    Derivation boxes = Derivation.counted("ends in boxes", "n_b", sum.boxEnds);
    Derivation panels = Derivation.counted("ends in panels", "n_p", sum.panelEnds);
    Derivation inBox = limit("slack-in-box", "s_b", Quantity.of(0, Units.METER));
    Derivation inPanel = limit("slack-in-panel", "s_p", Quantity.of(0, Units.METER));
    Derivation waste = limit("cable-waste", "w", Quantity.of(0, Units.ONE));
    double meters = (sum.meters + sum.boxEnds * inBox.si() + sum.panelEnds * inPanel.si()) * (1 + waste.si());
    Derivation length = Derivation.computed(
        "length to buy", "", "(L + n_b × s_b + n_p × s_p) × (1 + w)", new Value.Amount(Quantity.of(meters, Units.METER)),
        List.of(laid, boxes, inBox, panels, inPanel, waste));
    return new Material(key.category, key.what, meters, true, List.copyOf(sum.places), Optional.of(length));
  }

  private Derivation limit(String name, String symbol, Quantity otherwise) {
    return library.limit(name).map((Limit l) -> l.derivation(symbol)).orElseGet(() -> Derivation.assumed(name, symbol, otherwise));
  }
}
