package wattle.trials;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import wattle.derivation.Derivation;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.Pole;
import wattle.model.Role;
import wattle.network.Complex;
import wattle.network.Solution;
import wattle.quantity.Units;

/**
 * What bus bars carry, row by row: what flows on past a row is what all rows beyond it take together, less what is fed in
 * there. The supply comes in before the first row. The figure of the busbar rule is a bound of it that holds for any loads.
 */
final class BusReadings {
  private final House house;
  private final HouseNetwork network;
  private final Solution solution;

  BusReadings(House house, HouseNetwork network, Solution solution) {
    this.house = house;
    this.network = network;
    this.solution = solution;
  }

  /** Of panels that a source stands behind and that are joined with anything; the greatest share of a rating first. */
  List<BusReading> list() {
    List<BusReading> readings = new ArrayList<>();
    for (Panel panel : house.panels().values()) {
      HouseNetwork.PanelBox box = network.panels().get(panel.name());
      if (box != null && panel.breakers().stream().anyMatch(Breaker::backFed)) {
        bar(panel, box).ifPresent(readings::add);
      }
    }
    readings.sort(Comparator.comparingDouble(r -> -r.share().map(Derivation::si).orElse(0.0)));
    return readings;
  }

  private Optional<BusReading> bar(Panel panel, HouseNetwork.PanelBox box) {
    BusReading worst = null;
    for (int i = 0; i < panel.legs().size(); i++) {
      BusReading reading = bar(panel, box, panel.legs().get(i), box.legs()[i]);
      worst = worst == null || reading.most().si() > worst.most().si() ? reading : worst;
    }
    return Optional.ofNullable(worst);
  }

  private BusReading bar(Panel panel, HouseNetwork.PanelBox box, Leg leg, int terminal) {
    Complex supply = solution.amps(box.box(), terminal);
    Complex volts = solution.volts(box.box(), terminal, box.neutral());
    TreeMap<Integer, Complex> taken = takenByRow(panel, leg);
    double most = supply.magnitude();
    String at = "at the main";
    Complex beyond = supply;
    double sum = into(supply, volts);
    for (Map.Entry<Integer, Complex> row : taken.entrySet()) {
      sum += into(row.getValue().times(-1), volts);
      beyond = beyond.minus(row.getValue());
      if (beyond.magnitude() > most * (1 + 1e-9) + 1e-9) {
        most = beyond.magnitude();
        at = "past row " + row.getKey();
      }
    }
    Derivation carried = Figures.solved("current in bar " + leg + " of panel " + panel.name(), most, Units.AMPERE,
        "At the point that carries most, " + at + ".");
    Optional<Derivation> rating = panel.busRating().map(r -> Derivation.stated("rating of the bus of " + panel.name(), "I_r", r));
    return new BusReading(
        panel.name(), leg.name(),
        Figures.solved("currents into bar " + leg + " of panel " + panel.name(), sum, Units.AMPERE,
            "The sum of all currents into the bar."),
        carried, at, rating, rating.map(r -> SourceReadings.share(carried, r)));
  }

  /** Of a current, what brings power to a bar at this voltage. */
  private static double into(Complex amps, Complex volts) {
    double magnitude = volts.magnitude();
    return magnitude < 1 ? 0 : Math.max(0, (amps.re() * volts.re() + amps.im() * volts.im()) / magnitude);
  }

  /** What the ways of each row take from a bar, from the row nearest to the main on. */
  private TreeMap<Integer, Complex> takenByRow(Panel panel, Leg leg) {
    TreeMap<Integer, Complex> taken = new TreeMap<>();
    for (Breaker breaker : panel.breakers()) {
      for (Pole pole : breaker.poles()) {
        if (pole.leg().equals(Optional.of(leg))) {
          int row = panel.order().rowOf(pole.slot().number(), panel.slotCount().orElse(pole.slot().number()));
          taken.merge(row, throughPole(panel, breaker, pole), Complex::plus);
        }
      }
    }
    return taken;
  }

  private Complex throughPole(Panel panel, Breaker breaker, Pole pole) {
    if (breaker.target() instanceof Breaker.Target.ToPanel to) {
      HouseNetwork.PanelBox fed = network.panels().get(to.panel());
      int at = fed == null ? -1 : house.panels().get(to.panel()).legs().indexOf(pole.leg().orElseThrow());
      return at < 0 ? Complex.ZERO : solution.amps(fed.box(), fed.legs()[at]);
    }
    Complex sum = Complex.ZERO;
    if (breaker.target() instanceof Breaker.Target.ToBranch to && house.branches().containsKey(to.branch())) {
      Branch branch = house.branches().get(to.branch());
      for (int i = 0; i < branch.hots().size(); i++) {
        BranchHot hot = branch.hots().get(i);
        if (hot.breaker().equals(breaker.id()) && hot.leg().equals(pole.leg()) && branch.panel().equals(Optional.of(panel.name()))) {
          sum = sum.plus(leaving(branch, new Role.Hot(i)));
        }
      }
    }
    return sum;
  }

  /** Current of a hot in all runs that leave the panel. */
  private Complex leaving(Branch branch, Role hot) {
    return network.conductors().stream()
        .filter(c -> c.branch().equals(Optional.of(branch.name())) && c.role().equals(Optional.of(hot)))
        .filter(c -> branch.sections().stream().anyMatch(s -> s.from() == 0 && s.to() == c.point()))
        .map(c -> solution.amps(c.box(), c.local()))
        .reduce(Complex.ZERO, Complex::plus);
  }
}
