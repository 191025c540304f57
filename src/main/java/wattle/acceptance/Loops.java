package wattle.acceptance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.conductors.Resistance;
import wattle.conductors.Resistances;
import wattle.derivation.Derivation;
import wattle.library.Library;
import wattle.model.Branch;
import wattle.model.Section;
import wattle.model.Wire;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Resistances of the loops of a branch, out on a hot and back on the ground, cold, to each of its far ends. */
final class Loops {
  /** Conductors that carry nothing are as warm as the house: common practice. */
  private static final double CELSIUS = 20;

  private final Resistances resistances;

  Loops(Library library) {
    this.resistances = new Resistances(library);
  }

  /**
   * One loop.
   *
   * @param point index of the far end among the points of the branch
   * @param back what it returns on
   */
  record Loop(int point, String back, Derivation ohms) {}

  /** A loop for each far end whose lengths and conductors are all known. */
  List<Loop> of(Branch branch) {
    List<Loop> loops = new ArrayList<>();
    for (int p = 1; p < branch.points().size(); p++) {
      int point = p;
      if (branch.sections().stream().noneMatch(s -> s.from() == point)) {
        loop(branch, point).ifPresent(loops::add);
      }
    }
    return loops;
  }

  private Optional<Loop> loop(Branch branch, int point) {
    List<Section> way = way(branch, point);
    boolean grounded = way.stream().allMatch(s -> s.wiring().ground().isPresent());
    List<Derivation> runs = new ArrayList<>();
    double ohms = 0;
    for (Section section : way) {
      Optional<Wire> back = grounded ? section.wiring().ground() : section.wiring().neutral();
      Optional<Resistance> out = resistances.of(section.wiring().hot().size(), section.wiring().hot().metal());
      Optional<Resistance> in = back.flatMap(w -> resistances.of(w.size(), w.metal()));
      if (section.length().isEmpty() || out.isEmpty() || in.isEmpty()) {
        return Optional.empty();
      }
      Derivation celsius = Derivation.assumed("temperature of the conductors", "T", Quantity.of(CELSIUS, Units.CELSIUS));
      double meters = section.length().get().si();
      double each = out.get().ohmsPerMeter(CELSIUS) + in.get().ohmsPerMeter(CELSIUS);
      ohms += meters * each;
      runs.add(
          Derivation.computed(
              "run to " + branch.points().get(section.to()).box().orElse("the panel"), "R", "l × (r_out + r_back)", meters * each,
              Units.OHM,
              Derivation.stated("length", "l", section.length().get()), out.get().at(celsius).named("hot, for its length", "r_out"),
              in.get().at(celsius).named("way back, for its length", "r_back")));
    }
    Derivation sum = Derivation.computed("resistance of the loop", "", "Σ R",
        new wattle.derivation.Value.Amount(Quantity.of(ohms, Units.OHM)), runs);
    return Optional.of(new Loop(point, grounded ? "ground" : "neutral", sum));
  }

  private static List<Section> way(Branch branch, int point) {
    List<Section> way = new ArrayList<>();
    int at = point;
    for (int i = branch.sections().size() - 1; i >= 0; i--) {
      Section section = branch.sections().get(i);
      if (section.to() == at) {
        way.add(0, section);
        at = section.from();
      }
    }
    return way;
  }
}
