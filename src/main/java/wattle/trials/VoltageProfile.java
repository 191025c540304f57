package wattle.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Role;
import wattle.model.Section;
import wattle.network.Complex;
import wattle.quantity.Quantity;

/**
 * Voltage along a branch: at each of its points what is left of the nominal voltage when the whole rating of the breaker is
 * drawn there, at a power factor of 1 and with nothing else on, and what is left with every stated load on. Where outlets
 * of several voltages hang on a branch, the one whose voltage falls most counts at each point.
 *
 * @param amperes rating of the breaker
 * @param stops the panel first, then every point that a current of an outlet passes, in the order reached
 */
public record VoltageProfile(Branch branch, double amperes, List<Stop> stops) {
  /**
   * A point of the branch.
   *
   * @param meters from the panel, along the cable
   * @param before index of the stop that it is reached from; -1 for the panel
   * @param nominalVolts of the outlet that counts
   * @param fullLoad share of the nominal voltage that is left with the whole rating drawn here; 0 where the
   *     way there does not let it through
   * @param stated share that is left at the outlets here with every stated load on; absent where no outlet is
   */
  public record Stop(
      String name, double meters, int before, double nominalVolts, double fullLoad, Optional<Double> stated) {}

  public VoltageProfile {
    stops = List.copyOf(stops);
  }

  /** Absent where the rating is not known or nothing on the branch is connected. */
  public static Optional<VoltageProfile> of(Branch branch, House house, SolvedTrials trials) {
    Optional<Quantity> rating = Ratings.of(branch, house);
    TrialResult stated = trials.stated();
    Figures figures = new Figures(stated.network(), stated.solution());
    List<HouseNetwork.Outlet> outlets = stated.network().outlets().stream()
        .filter(o -> o.branch().equals(branch.name()) && o.nominalVolts() > 0).toList();
    if (rating.isEmpty() || outlets.isEmpty()) {
      return Optional.empty();
    }
    double[] left = new double[branch.points().size()];
    double[] nominal = new double[left.length];
    double[] now = new double[left.length];
    java.util.Arrays.fill(left, Double.NaN);
    java.util.Arrays.fill(now, Double.NaN);
    for (HouseNetwork.Outlet outlet : outlets) {
      double share = figures.volts(outlet).si() / outlet.nominalVolts();
      now[outlet.point()] = Double.isNaN(now[outlet.point()]) ? share : Math.min(now[outlet.point()], share);
      alongTheWay(outlet, branch, figures, rating.get().si(), left, nominal);
    }
    return Optional.of(new VoltageProfile(branch, rating.get().si(), stops(branch, left, nominal, now)));
  }

  private static void alongTheWay(
      HouseNetwork.Outlet outlet, Branch branch, Figures figures, double amperes, double[] left, double[] nominal) {
    Complex[] arriving = new Complex[left.length];
    java.util.Arrays.fill(arriving, Complex.ZERO);
    for (HouseNetwork.Conductor c : figures.onTheWay(outlet)) {
      if (c.role().isPresent() && c.role().get() instanceof Role.Traveler t && t.number() == 2) {
        continue; // one of two carries at a time
      }
      int point = c.branch().equals(Optional.of(branch.name())) ? c.point() : 0;
      arriving[point] = arriving[point].plus(c.impedance().ohms());
    }
    Complex loop = Complex.ZERO;
    for (int point : wayTo(branch, outlet.point())) {
      loop = loop.plus(arriving[point]);
      double share = FullLoad.voltsLeft(outlet.nominalVolts(), loop, amperes) / outlet.nominalVolts();
      if (!(left[point] <= share)) {
        left[point] = share;
        nominal[point] = outlet.nominalVolts();
      }
    }
  }

  /** The points from the panel to one, both included. */
  private static List<Integer> wayTo(Branch branch, int point) {
    List<Integer> way = new ArrayList<>(List.of(point));
    for (Optional<Section> at = arrivingAt(branch, point); at.isPresent(); at = arrivingAt(branch, way.get(0))) {
      way.add(0, at.get().from());
    }
    return way;
  }

  private static Optional<Section> arrivingAt(Branch branch, int point) {
    return new Place(branch, point).arriving();
  }

  private static List<Stop> stops(Branch branch, double[] left, double[] nominal, double[] now) {
    List<Stop> stops = new ArrayList<>();
    int[] stopOf = new int[left.length];
    double[] meters = new double[left.length];
    for (int point = 0; point < left.length; point++) {
      Optional<Section> arriving = arrivingAt(branch, point);
      arriving.ifPresent(s -> meters[s.to()] = meters[s.from()] + s.length().map(Quantity::si).orElse(0.0));
      if (!Double.isNaN(left[point])) {
        stopOf[point] = stops.size();
        Optional<Double> stated = Double.isNaN(now[point]) ? Optional.empty() : Optional.of(now[point]);
        stops.add(
            new Stop(
                new Place(branch, point).name(), meters[point], arriving.map(s -> stopOf[s.from()]).orElse(-1),
                nominal[point], left[point], stated));
      }
    }
    return stops;
  }
}
