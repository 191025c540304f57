package wattle.worksheet;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import wattle.derivation.Derivation;
import wattle.loads.Ends;
import wattle.model.Leg;
import wattle.model.SupplySystem;

/**
 * A quarter of the largest motor of each leg, and of the neutral: NFPA 70 220.50 and 430.24, as in example D1(b) of Annex D. The largest
 * is the one of the highest full-load current (430.17), so that a motor on one leg may be larger than one between two of more power.
 * Where it is not known on which leg a motor is, the one largest of all counts.
 */
final class LargestMotors {
  private static final String NAME = "largest motor, in addition";

  private final Inputs inputs;
  private final SupplySystem system;
  private final List<ConnectedLoad> motors;

  LargestMotors(Inputs inputs, List<ConnectedLoad> motors) {
    this.inputs = inputs;
    system = inputs.system();
    this.motors = motors.stream().filter(m -> m.voltAmperes() > 0).toList();
  }

  /** A motor, and the legs on which none is larger; no legs where it counts as a whole. */
  private record Largest(ConnectedLoad motor, Set<Leg> legs) {}

  /** Volt-amperes of those that count. */
  double counted() {
    return largest().stream().mapToDouble(this::voltAmperes).sum();
  }

  void add(Figures figures, Tally load, Tally neutral) {
    Derivation factor = figures.limit("largest-motor");
    for (Largest largest : largest()) {
      String name = largest.legs.isEmpty() ? NAME : "largest motor of leg " + largest.legs.iterator().next() + ", in addition";
      Derivation part = Derivation.stated(largest.motor.name(), "P", Sums.voltAmperes(voltAmperes(largest)));
      load.add(name, part, factor, List.of(largest.motor.name()));
      if (!largest.legs.isEmpty()) {
        largest.legs
            .forEach(l -> load.place(l, Sums.times(largest.motor.name(), part.named(part.name(), "P"), factor), largest.legs.size()));
      } else {
        load.place(List.of(one(largest.motor)), factor);
        load.betweenLegs(List.of(one(largest.motor)), factor);
      }
    }
    onNeutral().ifPresent(m -> {
      Derivation part = Derivation.stated(m.name(), "P", Sums.voltAmperes(m.voltAmperes() * m.neutralShare()));
      neutral.add(NAME, part, factor, List.of(m.name()));
      if (m.leg().isPresent()) {
        neutral.single(Sums.times(m.name(), part, factor));
      }
    });
  }

  private static ConnectedLoad one(ConnectedLoad motor) {
    return new ConnectedLoad(
        motor.name(), motor.loadClass(), motor.voltAmperes(), motor.neutralShare(), motor.leg(), motor.motor(), motor.added(), 1,
        motor.stated());
  }

  private double voltAmperes(Largest largest) {
    return largest.legs.isEmpty()
        ? largest.motor.voltAmperes()
        : amperes(largest.motor) * system.legToNeutralVolts() * largest.legs.size();
  }

  private List<Largest> largest() {
    boolean placed = system.legs().size() == 2 && motors.stream().allMatch(m -> m.neutralShare() < 1 || m.leg().isPresent());
    if (!placed) {
      return max(motors).map(m -> new Largest(m, Set.of())).stream().toList();
    }
    Map<Leg, ConnectedLoad> ofLegs = new EnumMap<>(Leg.class);
    for (Leg leg : system.legs()) {
      max(motors.stream().filter(m -> m.neutralShare() < 1 || m.leg().equals(Optional.of(leg))).toList())
          .ifPresent(m -> ofLegs.put(leg, m));
    }
    Map<ConnectedLoad, Set<Leg>> legs = new LinkedHashMap<>();
    ofLegs.forEach((leg, motor) -> legs.computeIfAbsent(motor, m -> new TreeSet<>()).add(leg));
    List<Largest> largest = new ArrayList<>();
    legs.forEach((motor, own) -> {
      // One that is the largest wherever it is connected, and alone in it, needs no word about legs.
      boolean whole = legs.size() == 1 && (motor.neutralShare() == 1 || own.size() == system.legs().size());
      largest.add(new Largest(motor, whole ? Set.of() : own));
    });
    return largest;
  }

  private Optional<ConnectedLoad> max(List<ConnectedLoad> of) {
    ConnectedLoad max = null;
    for (ConnectedLoad motor : of) {
      boolean more = max == null || amperes(motor) > amperes(max) * (1 + 1e-9)
          || amperes(motor) > amperes(max) * (1 - 1e-9) && motor.voltAmperes() > max.voltAmperes();
      max = more ? motor : max;
    }
    return Optional.ofNullable(max);
  }

  private Optional<ConnectedLoad> onNeutral() {
    ConnectedLoad max = null;
    for (ConnectedLoad motor : motors) {
      double part = motor.voltAmperes() * motor.neutralShare();
      max = part > 0 && (max == null || part > max.voltAmperes() * max.neutralShare()) ? motor : max;
    }
    return Optional.ofNullable(max);
  }

  /** Full-load current of one, on the leg where it is largest. */
  private double amperes(ConnectedLoad motor) {
    double share = motor.neutralShare();
    double toNeutral = motor.voltAmperes() * share / system.legToNeutralVolts();
    if (system.legs().size() == 1) {
      return motor.voltAmperes() / system.legToNeutralVolts();
    }
    boolean onThree = system.legs().size() == 3 && inputs.placement().of(motor).filter((Ends e) -> e.legs().size() == 2).isEmpty();
    return toNeutral + motor.voltAmperes() * (1 - share) / ((onThree ? Math.sqrt(3) : 1) * system.legToLegVolts());
  }
}
