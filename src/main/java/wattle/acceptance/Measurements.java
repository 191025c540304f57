package wattle.acceptance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.library.Library;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.DeviceKind.Family;
import wattle.model.House;
import wattle.model.Protection;
import wattle.model.Status;
import wattle.trials.SolvedTrials;
import wattle.trials.TrialResult;

/**
 * The measurements of a house: services and feeders, then branch by branch. Of each branch: the loop of each hot and the ground to every
 * far end, the insulation of each conductor, the voltage and polarity of what can be reached with a tester, and the trip of each
 * protection, tried at the last place it guards. Voltages are those of the solved network with nothing drawing.
 */
public final class Measurements {
  private final House house;
  private final Library library;
  private final SolvedTrials trials;
  private final Loops loops;
  private final MeasurementList list;

  private Measurements(House house, Library library, SolvedTrials trials) {
    this.house = house;
    this.library = library;
    this.trials = trials;
    this.loops = new Loops(library);
    this.list = new MeasurementList(library);
  }

  /** Everything to be measured, in the order of the plan; a branch that is to be removed is left out. Pure. */
  public static List<Measurement> of(House house, Library library, SolvedTrials trials) {
    return new Measurements(house, library, trials).all();
  }

  private List<Measurement> all() {
    new SupplyMeasurements(house, library, list).addAll();
    Map<String, List<TrialResult.OutletReading>> volts = new LinkedHashMap<>();
    for (TrialResult.OutletReading outlet : trials.result("", List.of()).value().outlets()) {
      volts.computeIfAbsent(outlet.branch(), b -> new ArrayList<>()).add(outlet);
    }
    for (Branch branch : house.branches().values()) {
      if (branch.status() != Status.TO_REMOVE && !branch.hots().isEmpty()) {
        branch(branch, volts.getOrDefault(branch.name(), List.of()));
      }
    }
    return list.all();
  }

  private void branch(Branch branch, List<TrialResult.OutletReading> outlets) {
    for (Loops.Loop loop : loops.of(branch)) {
      String at = branch.points().get(loop.point()).box().orElseThrow();
      add(branch, Measurement.Kind.CONTINUITY, at, loop.first() ? "" : loop.out(),
          loop.out() + " and " + list.called(loop.back()) + " joined at the panel, measured here",
          Expected.loop(loop.ohms(), list.limit("continuity-margin").value().si()));
    }
    String volts = Measurement.plain(list.limit("insulation-volts").value().si());
    for (BranchColors.Conductor conductor : BranchColors.atPanel(branch)) {
      add(branch, Measurement.Kind.INSULATION, branch.panel().orElse(branch.name()), conductor.key(),
          conductor.text() + " to all others and ground, nothing connected, neutral lifted, " + volts + " V direct",
          Expected.insulation(list.limit("insulation-least"), Optional.empty()));
    }
    double tolerance = list.limit("voltage-tolerance").value().si();
    outlets.stream()
        .filter(o -> isReachable(house.devices().get(o.device())))
        .sorted(Comparator.comparingInt(o -> place(branch, o.device())))
        .forEach(o -> outlet(branch, o, tolerance));
    hotToHot(branch, tolerance);
    protections(branch);
  }

  /** Two hots on one neutral must be on different legs: the one reading that shows it. */
  private void hotToHot(Branch branch, double tolerance) {
    boolean onTwoLegs = branch.hots().stream().map(BranchHot::leg).distinct().count() > 1;
    if (branch.sharesNeutral() && onTwoLegs) {
      double volts = house.panels().get(branch.hots().get(0).breaker().panel()).system().legToLegVolts();
      String at = branch.points().get(branch.points().size() - 1).box().orElse(branch.name());
      add(branch, Measurement.Kind.VOLTAGE, at, "hot to hot: they share a neutral", Expected.volts(volts, tolerance, Optional.empty()));
    }
  }

  private static int place(Branch branch, String device) {
    for (int i = 0; i < branch.points().size(); i++) {
      if (branch.points().get(i).devices().contains(device)) {
        return i;
      }
    }
    return branch.points().size();
  }

  /** Where a tester can be put without taking a light or a sealed device apart. */
  private static boolean isReachable(Device device) {
    return device.kind().family() == Family.RECEPTACLE || device.kind().family() == Family.APPLIANCE;
  }

  private void outlet(Branch branch, TrialResult.OutletReading outlet, double tolerance) {
    double volts = outlet.volts().si();
    boolean receptacle = house.devices().get(outlet.device()).kind().family() == Family.RECEPTACLE;
    boolean across = outlet.nominal().si() > 1.5 * house.panels().get(branch.hots().get(0).breaker().panel()).system().legToNeutralVolts();
    add(branch, Measurement.Kind.VOLTAGE, outlet.name(), across ? "hot to hot" : "hot to neutral",
        Expected.volts(volts, tolerance, Optional.of(outlet.volts())));
    if (receptacle && !across) {
      add(branch, Measurement.Kind.POLARITY, outlet.name(),
          "hot on the narrow slot, neutral on the wide one" + (isGrounded(branch) ? ", " + list.called("ground") + " joined" : ""),
          Expected.answer("yes"));
    }
  }

  private static boolean isGrounded(Branch branch) {
    return branch.sections().stream().allMatch(s -> s.wiring().ground().isPresent());
  }

  private void protections(Branch branch) {
    String last = branch.points().isEmpty()
        ? branch.name()
        : branch.points().get(branch.points().size() - 1).box().orElse(branch.name());
    boolean byBreaker = breakers(branch).stream().anyMatch(b -> b.protections().contains(Protection.GROUND_FAULT));
    if (byBreaker) {
      add(branch, Measurement.Kind.GROUND_FAULT, last, "test button of the breaker, then a tester here", Expected.answer("trips"));
    }
    for (var point : branch.points()) {
      for (String name : point.devices()) {
        if (house.devices().get(name).kind().protections().contains(Protection.GROUND_FAULT)) {
          boolean onward = house.devices().get(name).traits().contains("protects-onward");
          add(branch, Measurement.Kind.GROUND_FAULT, name,
              "its test button" + (onward ? ", then a tester at the last outlet downstream" : ""), Expected.answer("trips"));
        }
      }
    }
    if (breakers(branch).stream().anyMatch(b -> b.protections().contains(Protection.ARC_FAULT))) {
      add(branch, Measurement.Kind.ARC_FAULT, branch.panel().orElse(branch.name()), "test button of the breaker",
          Expected.answer("trips"));
    }
  }

  private List<Breaker> breakers(Branch branch) {
    return branch.hots().stream().map(BranchHot::breaker).distinct().flatMap(b -> house.breaker(b).stream()).toList();
  }

  private void add(Branch branch, Measurement.Kind kind, String at, String between, Expected expected) {
    add(branch, kind, at, "", between, expected);
  }

  private void add(Branch branch, Measurement.Kind kind, String at, String which, String between, Expected expected) {
    String breakers = String.join(" and ", branch.hots().stream().map(h -> h.breaker().toString()).distinct().toList());
    list.add(branch.name(), breakers, kind, at, which, between, expected);
  }
}
