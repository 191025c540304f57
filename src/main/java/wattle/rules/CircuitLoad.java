package wattle.rules;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.motors.WelderCurrents;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.Leg;
import wattle.model.Load;
import wattle.model.LoadClass;
import wattle.model.Section;
import wattle.model.Status;
import wattle.model.SupplySystem;
import wattle.network.Complex;
import wattle.quantity.Quantity;

/**
 * What the stated loads beyond a run have its hots carry. Loads are those of the devices that the run leads to; of a load
 * through a switch that comes back on the same cable nothing is counted there, so that the figure is never too high.
 *
 * @param amperes of its heaviest hot as stated, without any factor
 * @param draws amperes of its heaviest hot, with the factors that the ampacity after correction must meet: 125 % of the
 *     largest motor of that hot (NFPA 70 430.22, 430.24, 440.32), the minimum circuit ampacity of a nameplate (440.4(B)), the demand of
 *     a range (210.19(C), table 220.55)
 * @param sized the same with 125 % of continuous loads (210.19(A)(1), CSA C22.1 8-104), which the ampacity before correction must meet,
 *     or that after it where the code says so
 * @param sum the terms of {@code sized} in words, for a message
 */
record CircuitLoad(double amperes, double draws, double sized, String sum) {
  static final CircuitLoad NONE = new CircuitLoad(0, 0, 0, "");

  /** What a half of a tenth may lose by the way in which it was worked out. */
  private static final double HAIR = 1e-6;
  private static final Set<LoadClass> HEATING = Set.of(LoadClass.ROOM_HEATING, LoadClass.HEATING, LoadClass.STORAGE_HEATING);
  private static final Set<LoadClass> CONTINUOUS = Set.of(LoadClass.VEHICLE_CHARGING, LoadClass.WATER_HEATING);
  private static final Set<LoadClass> MOTORS = Set.of(LoadClass.MOTOR, LoadClass.COOLING, LoadClass.HEAT_PUMP);

  /** Of one device, how its amperes count. */
  private record Counted(double amperes, double factor, double sizedFactor, String why) {}

  static CircuitLoad of(Facts facts, RunOf run) {
    Optional<SupplySystem> system = facts.systemOf(run.branch());
    if (system.isEmpty() || run.section().status() == Status.TO_REMOVE) {
      return NONE;
    }
    List<Device> devices = beyond(facts, run.branch(), run.section()).stream().filter(d -> draws(d)).toList();
    return devices.isEmpty() ? NONE : of(facts.library(), run.branch(), devices, system.get());
  }

  private static CircuitLoad of(Library library, Branch branch, List<Device> devices, SupplySystem system) {
    int hots = Math.max(2, branch.hots().size());
    Complex[] stated = new Complex[hots];
    Complex[] flowing = new Complex[hots];
    Complex[] sizedFlow = new Complex[hots];
    java.util.Arrays.fill(stated, Complex.ZERO);
    java.util.Arrays.fill(flowing, Complex.ZERO);
    java.util.Arrays.fill(sizedFlow, Complex.ZERO);
    double[] nameplates = new double[hots];
    Device[] largest = largestMotors(devices, branch, system, hots);
    double cooking = cookingFactor(library, devices);
    double lasting = factor(library, "continuous-conductor");
    double heating = devices.stream().allMatch(CircuitLoad::isHeating) ? heatingFactor(library) : lasting;
    List<Counted> terms = new ArrayList<>();
    for (Device device : devices) {
      Complex[] own = currents(device, branch, system, hots);
      double most = most(own, hots);
      for (int hot = 0; hot < hots; hot++) {
        stated[hot] = stated[hot].plus(own[hot]);
      }
      Quantity minimum = device.facts().get("minimum-circuit");
      Optional<Double> effective = new WelderCurrents(library).effective(device, most);
      if (minimum != null || effective.isPresent()) {
        double amperes = minimum != null ? minimum.si() : effective.get();
        for (int hot = 0; hot < hots; hot++) {
          nameplates[hot] += own[hot].magnitude() > 0 ? amperes : 0;
        }
        terms.add(new Counted(amperes, 1, 1, minimum != null ? "minimum circuit ampacity on its nameplate" : "effective current"));
        continue;
      }
      double[] factors = new double[hots];
      java.util.Arrays.fill(factors, 1);
      double factor = 1;
      double more = 1;
      String why = "";
      if (java.util.Arrays.asList(largest).contains(device)) {
        factor = factor(library, "motor-conductor");
        why = devices.size() > 1 ? "largest motor" : "motor";
        for (int hot = 0; hot < hots; hot++) {
          factors[hot] = largest[hot] == device ? factor : 1;
        }
      } else if (device.kind().loadClass().filter(c -> c == LoadClass.COOKING).isPresent()) {
        factor = cooking;
        why = cooking == 1 ? "" : "demand of a range";
        java.util.Arrays.fill(factors, factor);
      } else if (isContinuous(device)) {
        more = isHeating(device) ? heating : lasting;
        why = more == 1 ? "" : "continuous";
      }
      terms.add(new Counted(most, factor, factor * more, why));
      for (int hot = 0; hot < hots; hot++) {
        flowing[hot] = flowing[hot].plus(own[hot].times(factors[hot]));
        sizedFlow[hot] = sizedFlow[hot].plus(own[hot].times(factors[hot] * more));
      }
    }
    double carried = 0;
    double sized = 0;
    for (int hot = 0; hot < hots; hot++) {
      carried = Math.max(carried, flowing[hot].magnitude() + nameplates[hot]);
      sized = Math.max(sized, sizedFlow[hot].magnitude() + nameplates[hot]);
    }
    return new CircuitLoad(most(stated, hots), carried, sized, sum(terms, sized));
  }

  private static double most(Complex[] currents, int hots) {
    double most = 0;
    for (int hot = 0; hot < hots; hot++) {
      most = Math.max(most, currents[hot].magnitude());
    }
    return most;
  }

  /** The terms as a sum that comes out; of loads on different hots or of different power factor only the result is given. */
  private static String sum(List<Counted> terms, double sized) {
    List<String> words = new ArrayList<>();
    double sum = 0;
    for (Counted term : terms) {
      String amperes = amperes(term.amperes);
      words.add(
          (term.sizedFactor == 1 ? amperes : amperes + " × " + Quantity.plain(term.sizedFactor, 3))
              + (term.why.isEmpty() ? "" : " (" + term.why + ")"));
      sum += term.amperes * term.sizedFactor;
    }
    String total = amperes(sized);
    if (words.size() == 1 && terms.get(0).sizedFactor == 1) {
      return words.get(0);
    }
    boolean comesOut = Math.abs(sum - sized) < 0.05 && words.size() <= 6;
    return comesOut ? String.join(" + ", words) + " = " + total : total + " on its heaviest hot";
  }

  static String amperes(double value) {
    return Quantity.plain(Math.round(value * 10 + HAIR) / 10.0, 4) + " A";
  }

  /** With its article: a 30 A, an 80 A. */
  static String anAmperes(double value) {
    String amperes = amperes(value);
    return (amperes.startsWith("8") || amperes.matches("1[18]\\b.*") ? "an " : "a ") + amperes;
  }

  /** A factor that the pack gives as a limit; 1 where its code has none. */
  static double factor(Library library, String limit) {
    return library.limit(limit).map(Limit::value).map(Quantity::si).orElse(1.0);
  }

  static boolean isMotor(Device device) {
    return device.kind().motor() && device.kind().loadClass().filter(MOTORS::contains).isPresent();
  }

  /** Conductors of resistance heating alone, which some codes let carry it as it is (CSA C22.1 62-114 7)). */
  private static double heatingFactor(Library library) {
    return factor(library, library.limit("heating-conductor").isPresent() ? "heating-conductor" : "continuous-conductor");
  }

  /** Fixed resistance heating of rooms. */
  static boolean isHeating(Device device) {
    return device.kind().loadClass().filter(HEATING::contains).isPresent();
  }

  /** What lasts for hours: said to be, or by itself. */
  static boolean isContinuous(Device device) {
    return device.traits().contains("continuous") || isHeating(device)
        || device.kind().loadClass().filter(CONTINUOUS::contains).isPresent();
  }

  private static boolean draws(Device device) {
    return device.status() != Status.TO_REMOVE && device.voltAmperes() > 0
        && device.kind().loadClass().filter(c -> c != LoadClass.SOURCE).isPresent();
  }

  /** For each hot the motor that has most current in it, by amperes and not by horsepower (NFPA 70 430.17); null where it has none. */
  private static Device[] largestMotors(List<Device> devices, Branch branch, SupplySystem system, int hots) {
    Device[] largest = new Device[hots];
    double[] most = new double[hots];
    for (Device device : devices) {
      if (isMotor(device) && !device.facts().containsKey("minimum-circuit")) {
        Complex[] own = currents(device, branch, system, hots);
        for (int hot = 0; hot < hots; hot++) {
          if (own[hot].magnitude() > most[hot]) {
            most[hot] = own[hot].magnitude();
            largest[hot] = device;
          }
        }
      }
    }
    return largest;
  }

  /** The part of its rating that a range counts for; what is cooked on without being a range counts whole (table 220.55, note 4). */
  private static double cookingFactor(Library library, List<Device> devices) {
    List<Device> cooking = devices.stream().filter(d -> d.kind().loadClass().filter(c -> c == LoadClass.COOKING).isPresent()).toList();
    boolean range = cooking.size() > 1 || cooking.stream().anyMatch(d -> d.kind().name().equals("range"));
    double rated = cooking.stream().mapToDouble(Device::voltAmperes).sum();
    Optional<Limit> demand = library.limit("range-demand");
    Optional<Limit> to = library.limit("range-demand-to");
    Optional<Limit> beyond = library.limit("range-demand-beyond");
    if (!range || rated == 0 || demand.isEmpty() || to.isEmpty() || beyond.isEmpty()) {
      return 1;
    }
    double most = demand.get().value().si() + Math.max(0, rated - to.get().value().si()) * beyond.get().value().si();
    boolean small = library.limit("range-demand-small-to").filter(l -> rated <= l.value().si()).isPresent();
    return Math.min(small ? factor(library, "range-demand-small") : 1, most / rated);
  }

  /** Amperes of what is cooked on, at the demand that the code counts for a branch: volt-amperes by the voltage of the branch. */
  static double cooking(Library library, List<Device> devices, SupplySystem system) {
    List<Device> cooking = devices.stream().filter(d -> d.kind().loadClass().filter(c -> c == LoadClass.COOKING).isPresent()).toList();
    double amperes = 0;
    for (Device device : cooking) {
      boolean across = device.loads().stream().anyMatch(l -> l.connection() instanceof Load.Connection.HotToHot);
      amperes += device.voltAmperes() / (across ? system.legToLegVolts() : system.legToNeutralVolts());
    }
    return cooking.isEmpty() ? 0 : cookingFactor(library, cooking) * amperes;
  }

  /** Currents of a device in the hots of its branch, as phasors in amperes at nominal voltage. */
  static Complex[] currents(Device device, Branch branch, SupplySystem system, int hots) {
    Complex[] currents = new Complex[hots];
    java.util.Arrays.fill(currents, Complex.ZERO);
    for (Load load : device.loads()) {
      if (load.connection() instanceof Load.Connection.HotToNeutral to && to.hot() < hots) {
        Complex volts = volts(branch, system, to.hot());
        currents[to.hot()] = currents[to.hot()].plus(current(load, volts));
      } else if (load.connection() instanceof Load.Connection.HotToHot between && Math.max(between.hot(), between.otherHot()) < hots) {
        Complex volts = volts(branch, system, between.hot()).minus(volts(branch, system, between.otherHot()));
        // Two hots on one leg have nothing between them.
        Complex current = volts.magnitude() < 1 ? Complex.ZERO : current(load, volts);
        currents[between.hot()] = currents[between.hot()].plus(current);
        currents[between.otherHot()] = currents[between.otherHot()].minus(current);
      }
    }
    return currents;
  }

  static Complex current(Load load, Complex volts) {
    double factor = load.powerFactor();
    Complex power = new Complex(factor, Math.sqrt(Math.max(0, 1 - factor * factor))).times(load.voltAmperes());
    return power.times(volts.inverse()).conjugate();
  }

  static Complex volts(Branch branch, SupplySystem system, int hot) {
    Leg leg = hot < branch.hots().size() ? branch.hots().get(hot).leg().orElse(Leg.values()[hot]) : Leg.values()[hot];
    return Complex.polar(system.legToNeutralVolts(), system.degreesOf(leg));
  }

  /** Devices at the points that a run leads to, that at its end with them. */
  static List<Device> beyond(Facts facts, Branch branch, Section run) {
    BitSet points = new BitSet();
    points.set(run.to());
    boolean grown = true;
    while (grown) {
      grown = false;
      for (Section section : branch.sections()) {
        if (points.get(section.from()) && !points.get(section.to()) && section.to() != run.from()) {
          points.set(section.to());
          grown = true;
        }
      }
    }
    List<Device> devices = new ArrayList<>();
    points.stream().forEach(i -> branch.points().get(i).devices().forEach(name -> {
      Device device = facts.house().devices().get(name);
      if (device != null) {
        devices.add(device);
      }
    }));
    return devices;
  }
}
