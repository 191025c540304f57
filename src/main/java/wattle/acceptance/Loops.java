package wattle.acceptance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.conductors.Resistance;
import wattle.conductors.Resistances;
import wattle.derivation.Derivation;
import wattle.library.Library;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.Role;
import wattle.model.Section;
import wattle.model.Stretch;
import wattle.model.Wire;
import wattle.model.Wiring;
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
   * @param out what it goes out on, by its color at the far end
   * @param back what it returns on
   * @param first whether it is the first of that far end
   */
  record Loop(int point, String out, String back, boolean first, Derivation ohms) {}

  /** Of a feeder, out on a hot and back on this; absent where its length or a conductor is not known. */
  Optional<Derivation> of(Stretch stretch, Optional<Wire> back) {
    Wiring wiring = stretch.wiring();
    Optional<Resistance> out = resistances.of(wiring.hot().size(), wiring.hot().metal());
    Optional<Resistance> in = back.flatMap(w -> resistances.of(w.size(), w.metal()));
    if (stretch.length().isEmpty() || out.isEmpty() || in.isEmpty()) {
      return Optional.empty();
    }
    Derivation celsius = Derivation.assumed("temperature of the conductors", "T", Quantity.of(CELSIUS, Units.CELSIUS));
    double ohms = stretch.length().get().si() * (out.get().ohmsPerMeter(CELSIUS) + in.get().ohmsPerMeter(CELSIUS)) / wiring.sets();
    return Optional.of(
        Derivation.computed(
            "resistance of the loop", "R", "l × (r_out + r_back) / n", ohms, Units.OHM,
            Derivation.stated("length", "l", stretch.length().get()), out.get().at(celsius).named("hot, for its length", "r_out"),
            in.get().at(celsius).named("return path, for its length", "r_back"), Derivation.counted("sets in "
                + "parallel", "n", wiring.sets())));
  }

  /** A loop for each far end whose lengths and conductors are all known. */
  List<Loop> of(Branch branch) {
    List<Loop> loops = new ArrayList<>();
    for (int p = 1; p < branch.points().size(); p++) {
      int point = p;
      if (branch.sections().stream().noneMatch(s -> s.from() == point)) {
        loop(branch, point).ifPresent(loop -> {
          List<String> hots = hots(way(branch, point));
          for (String hot : hots) {
            loops.add(new Loop(point, hot, loop.back, hot.equals(hots.get(0)), loop.ohms));
          }
        });
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
              in.get().at(celsius).named("return path, for its length", "r_back")));
    }
    Derivation sum = Derivation.computed("resistance of the loop", "", "Σ R",
        new wattle.derivation.Value.Amount(Quantity.of(ohms, Units.OHM)), runs);
    return Optional.of(new Loop(point, "hot", grounded ? "ground" : "neutral", true, sum));
  }

  /**
   * Colors at the far end of the hots that come to it unbroken from the panel; one behind a switch is listed with the switch.
   * Where nothing says what the conductors do, the hot.
   */
  private static List<String> hots(List<Section> way) {
    List<ConductorUse> last = way.get(way.size() - 1).conductors();
    List<String> colors = new ArrayList<>();
    for (ConductorUse use : last) {
      if (use.role() instanceof Role.Hot hot && way.stream().allMatch(s -> s.conductors().stream().anyMatch(c -> c.role().equals(hot)))) {
        colors.add(use.wire().color());
      }
    }
    List<String> switched = last.stream()
        .filter(u -> u.role() instanceof Role.SwitchLeg)
        .map(u -> u.wire().color() + " with " + ((Role.SwitchLeg) u.role()).fromSwitch() + " on")
        .distinct()
        .toList();
    return !colors.isEmpty() ? colors.stream().distinct().toList() : switched.isEmpty() ? List.of("hot") : switched;
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
