package wattle.bind;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Mistake;
import wattle.finding.Span;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.DeviceKind.Need;
import wattle.model.Load;
import wattle.model.Load.Connection;
import wattle.model.LoadClass;
import wattle.model.SupplySystem;
import wattle.motors.MotorCurrents;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * Devices with what they draw, and between which conductors; and the findings about a device on conductors that do not
 * suit it.
 */
final class LoadBinder {
  /** Of the voltage of one leg: what is made for less than this of it belongs to another supply, as does 100 V equipment. */
  private static final double LEAST_OF_LEG = 0.8;

  /** Of the voltage between legs: 277 V equipment on 240 V is still within, 347 V and 480 V are not. */
  private static final double MOST_OF_LEGS = 1.25;

  private final Scope scope;
  private final ControlGroups groups;
  private final Map<String, SupplySystem> systemOfPanel;

  LoadBinder(Scope scope, ControlGroups groups, Map<String, SupplySystem> systemOfPanel) {
    this.scope = scope;
    this.groups = groups;
    this.systemOfPanel = systemOfPanel;
  }

  /** A device that no branch reaches. */
  Device bind(UnwiredDevice device) {
    return bind(device, Optional.empty());
  }

  /** A device at a stop of a branch. */
  Device bind(UnwiredDevice device, BranchDraft draft, BranchDraft.Stop stop) {
    return bind(device, Optional.of(new Place(draft, stop)));
  }

  /** Where a device hangs. */
  private record Place(BranchDraft draft, BranchDraft.Stop stop) {}

  private Device bind(UnwiredDevice device, Optional<Place> place) {
    Optional<BranchDraft> draft = place.map(Place::draft);
    DeviceKind kind = atStatedVoltage(device, draft);
    draft.ifPresent(d -> checkConductors(device, kind, d));
    return new Device(
        device.name(), device.label(), kind, device.room(), device.box(), device.traits(), loads(device, kind, place),
        List.copyOf(groups.lightsOf(device.name())), groups.halvesOf(device.name()), device.location(), device.facts(), device.terminals(),
        device.status(),
        device.origin());
  }

  private SupplySystem system(BranchDraft draft) {
    return draft.hots.isEmpty()
        ? new SupplySystem(SupplySystem.Kind.SPLIT_PHASE, 120, 240)
        : systemOfPanel.get(draft.hots.get(0).breaker().panel());
  }

  /** A stated voltage decides between one hot and two: {@code baseboard heater 1.5 kW 120 V}. */
  private DeviceKind atStatedVoltage(UnwiredDevice device, Optional<BranchDraft> draft) {
    Quantity stated = device.facts().get("voltage");
    if (stated == null || draft.isEmpty()) {
      return device.kind();
    }
    SupplySystem system = system(draft.get());
    boolean threePhase = device.kind().isThreePhase();
    double least = threePhase ? system.legToLegVolts() : system.legToNeutralVolts();
    if (!draft.get().hots.isEmpty() && (stated.si() < LEAST_OF_LEG * least || stated.si() > MOST_OF_LEGS * system.legToLegVolts())) {
      String given = volts(least) + (!threePhase && system.legs().size() > 1 ? " and " + volts(system.legToLegVolts()) : "");
      scope.report(
          Finding.error("voltage-unfit", "'" + device.name() + "' is made for " + stated + " and its supply gives " + given)
              .about(device.name())
              .at(device.origin().name(), "rated " + stated)
              .because("Far below its rated voltage an appliance does not work; far above it, it burns out.")
              .fix("state the voltage on its nameplate"));
      return device.kind();
    }
    if (threePhase) {
      return device.kind();
    }
    boolean two = Math.abs(stated.si() - system.legToLegVolts()) < Math.abs(stated.si() - system.legToNeutralVolts());
    if (two == device.kind().needs().contains(Need.TWO_HOTS) || system.legs().size() == 1) {
      return device.kind();
    }
    Set<Need> needs = new HashSet<>(device.kind().needs());
    needs.removeAll(Set.of(Need.HOT, Need.TWO_HOTS, Need.NEUTRAL));
    needs.addAll(two ? Set.of(Need.TWO_HOTS) : Set.of(Need.HOT, Need.NEUTRAL));
    return device.kind().needing(needs);
  }

  private void checkConductors(UnwiredDevice device, DeviceKind kind, BranchDraft draft) {
    if (draft.hots.isEmpty() || draft.broken || kind.family() == DeviceKind.Family.JUNCTION) {
      return;
    }
    SupplySystem system = system(draft);
    Span at = device.origin().name();
    Span cable = draft.wiring.map(w -> w.origin().whole()).orElse(draft.tree.name().span());
    int insulated = insulatedTo(device, draft);
    if (HotChoice.isAcross(kind) && draft.hots.size() == 1 && system.legs().size() > 1) {
      scope.report(
          Finding
              .error(Mistake.LOAD_240_ON_ONE_POLE,
                  "'" + device.name() + "' needs " + volts(system.legToLegVolts()) + " and '" + draft.name() + "' gives "
                      + volts(system.legToNeutralVolts()))
              .about(device.name())
              .at(at, "a " + kind.name() + " works between two hots")
              .with(draft.tree.name().span(), "one pole feeds this branch")
              .because("On one hot and the neutral it would get half its voltage and a quarter of its heat.")
              .fix("feed '" + draft.name() + "' from a two-pole breaker"));
      return;
    }
    if (kind.isThreePhase() && draft.hots.size() < 3) {
      scope.report(
          Finding
              .error("load-three-phase-lacks-hots",
                  "'" + device.name() + "' is three-phase and '" + draft.name() + "' brings "
                      + (draft.hots.size() == 1 ? "one hot" : "two hots"))
              .about(device.name())
              .at(at, "a " + kind.name() + " works between three hots")
              .with(draft.tree.name().span(), "fed by " + (draft.hots.size() == 1 ? "one pole" : "two poles"))
              .because("On two hots a three-phase motor does not start, or overheats, and a heater gives only part of its heat.")
              .fix("feed '" + draft.name() + "' from a three-pole breaker of a three-phase panel, or use a single-phase unit"));
      return;
    }
    boolean spareForNeutral = insulated > Math.min(draft.hots.size(), system.legs().size());
    if (!kind.needs().contains(Need.NEUTRAL) || draft.hots.size() < 2 && insulated >= 2 || spareForNeutral) {
      if (kind.needs().contains(Need.NEUTRAL) && insulated < 2) {
        reportNeutralMissing(device, kind, cable, insulated);
      }
      return;
    }
    if (kind.needs().contains(Need.HOT) && draft.hots.size() > 1) {
      scope.report(
          Finding
              .error(Mistake.LOAD_120_WITHOUT_NEUTRAL,
                  "'" + device.name() + "' is made for " + volts(system.legToNeutralVolts()) + " and '" + draft.name()
                      + "' brings two hots and no neutral")
              .about(device.name())
              .at(at, "a " + kind.name() + " works between a hot and the neutral")
              .with(cable, insulated + " insulated conductors, both hots")
              .because("Between the two hots it would get " + volts(system.legToLegVolts()) + ".")
              .fix("run a cable with a neutral too, or feed it from one pole"));
    } else {
      reportNeutralMissing(device, kind, cable, insulated);
    }
  }

  private void reportNeutralMissing(UnwiredDevice device, DeviceKind kind, Span cable, int insulated) {
    scope.report(
        Finding.error(Mistake.NEUTRAL_MISSING, "'" + device.name() + "' needs a neutral and its cable has none")
            .about(device.name())
            .at(device.origin().name(), "a " + kind.name() + " returns on the neutral")
            .with(cable, insulated + (insulated == 1 ? " insulated conductor" : " insulated conductors, all hots"))
            .because("Its 120 V parts return on the neutral; the ground must never carry working current.")
            .fix("run a cable with one more insulated conductor"));
  }

  private static String volts(double volts) {
    return Quantity.plain(volts, 3) + " V";
  }

  /** Fewest insulated conductors on the way from the panel to a device. */
  private int insulatedTo(UnwiredDevice device, BranchDraft draft) {
    int stop = draft.stopOfBox.getOrDefault(device.box(), -1);
    int least = Integer.MAX_VALUE;
    for (int i = draft.legs.size() - 1; i >= 0; i--) {
      BranchDraft.Leg leg = draft.legs.get(i);
      if (leg.to() == stop) {
        least = Math.min(least, leg.wiring().insulated().size());
        stop = leg.from();
      }
    }
    return least;
  }

  // ---- What it draws

  private List<Load> loads(UnwiredDevice device, DeviceKind kind, Optional<Place> place) {
    if (kind.loadClass().isEmpty()) {
      return List.of();
    }
    LoadClass loadClass = kind.loadClass().get();
    double powerFactor = device.facts().containsKey("power-factor") ? device.facts().get("power-factor").si() : kind.powerFactor();
    if (powerFactor <= 0 || powerFactor > 1) {
      scope.report(
          Finding
              .error(Mistake.POWER_FACTOR_OUT_OF_RANGE, "the power factor of '" + device.name() + "' is " + Quantity.plain(powerFactor, 4))
              .at(device.origin().name(), "above 0 and at most 1"));
      powerFactor = 1;
    }
    List<Load> loads = new ArrayList<>();
    for (Part part : parts(device, kind, place)) {
      Optional<Quantity> rated = Optional.ofNullable(device.loads().get(part.name));
      double nominal = part.share * rated.map(r -> voltAmperes(r, device, kind, place.map(Place::draft))).orElse(0.0);
      if (rated.isPresent() && isWatts(rated.get())) {
        nominal /= powerFactor;
      }
      double drawn = nominal * share(device, kind, part.connection, place.map(Place::draft));
      loads.add(new Load(part.name, part.connection, rated, nominal, drawn, powerFactor, kind.behavior(), loadClass));
    }
    return loads;
  }

  /**
   * What is drawn of a rating: what is rated for another voltage than it gets draws more or less. Of an appliance between two hots
   * the parts to the neutral are rated for half of its voltage.
   */
  private double share(UnwiredDevice device, DeviceKind kind, Connection connection, Optional<BranchDraft> draft) {
    Quantity stated = device.facts().get("voltage");
    if (stated == null || stated.si() <= 0 || draft.isEmpty() || draft.get().hots.isEmpty()
        || kind.loadClass().equals(Optional.of(LoadClass.SOURCE))) {
      return 1;
    }
    SupplySystem system = system(draft.get());
    boolean across = kind.needs().contains(Need.TWO_HOTS);
    if (connection instanceof Connection.HotToHot) {
      return kind.behavior().powerAt(system.legToLegVolts() / stated.si());
    }
    double rated = across && system.legs().size() > 1 ? stated.si() / 2 : stated.si();
    return kind.behavior().powerAt(system.legToNeutralVolts() / rated);
  }

  private static boolean isWatts(Quantity rated) {
    return rated.unit().symbol().endsWith("W");
  }

  /** Volt-amperes, or watts, that a rating stands for at nominal voltage. */
  private double voltAmperes(Quantity rated, UnwiredDevice device, DeviceKind kind, Optional<BranchDraft> draft) {
    if (rated.dimension().equals(Dimension.POWER) && !rated.unit().equals(Units.HORSEPOWER)) {
      return rated.si();
    }
    SupplySystem system = draft.map(this::system).orElse(new SupplySystem(SupplySystem.Kind.SPLIT_PHASE, 120, 240));
    Quantity stated = device.facts().get("voltage");
    double volts = kind.needs().contains(Need.TWO_HOTS) ? system.legToLegVolts() : system.legToNeutralVolts();
    double at = stated != null ? stated.si() : volts;
    double phases = kind.isThreePhase() ? Math.sqrt(3) : 1;
    if (!rated.unit().equals(Units.HORSEPOWER)) {
      return at * rated.si() * phases;
    }
    Optional<Double> amperes = new MotorCurrents(scope.library()).fullLoad(rated, at, kind.isThreePhase());
    if (amperes.isEmpty()) {
      scope.report(
          Finding.error("motor-not-listed", "no full-load current is listed for a motor of " + rated + " at " + volts(at))
              .at(device.origin().name(), MotorCurrents.range(kind.isThreePhase()))
              .because("Without it, its conductors and its breaker were not checked.")
              .fix("write its current, such as 24 A, or a listed rating"));
    }
    // The listed current is that of the whole range of voltages that a column serves, so of the system as it is.
    return amperes.orElse(0.0) * (MotorCurrents.sameColumn(at, volts) ? volts : at) * phases;
  }

  /** A part of a device: its name, what it is connected to, and its part of the whole's rating. */
  private record Part(String name, Connection connection, double share) {}

  private List<Part> parts(UnwiredDevice device, DeviceKind kind, Optional<Place> place) {
    if (place.isEmpty() || place.get().draft.hots.isEmpty()) {
      return kind.halves().isEmpty()
          ? List.of(new Part("", new Connection.Unconnected(), 1))
          : kind.halves().stream().map(h -> new Part(h, (Connection) new Connection.Unconnected(), 1.0)).toList();
    }
    int hots = place.get().draft.hots.size();
    int chosen = place.get().stop.hotOf(device).orElse(0);
    if (!kind.halves().isEmpty()) {
      boolean split = hots > 1 && HotChoice.isSplitOverTwo(device);
      List<Part> parts = new ArrayList<>();
      for (int i = 0; i < kind.halves().size(); i++) {
        parts.add(new Part(kind.halves().get(i), new Connection.HotToNeutral(split ? i % hots : chosen), 1));
      }
      return parts;
    }
    if (kind.isThreePhase() && hots > 2) {
      return threePhase(kind);
    }
    if (kind.needs().contains(Need.TWO_HOTS) && hots > 1) {
      double onLegs = kind.needs().contains(Need.NEUTRAL) ? kind.shareOnLegs() : 0;
      List<Part> parts = new ArrayList<>();
      parts.add(new Part("", new Connection.HotToHot(0, 1), 1 - onLegs));
      if (onLegs > 0) {
        parts.add(new Part("", new Connection.HotToNeutral(0), onLegs));
      }
      return parts;
    }
    return List.of(new Part("", new Connection.HotToNeutral(chosen), 1));
  }

  /** A third between each two of the hots, whatever the windings are: the currents of the legs are the same. */
  private static List<Part> threePhase(DeviceKind kind) {
    double onLeg = kind.needs().contains(Need.NEUTRAL) ? kind.shareOnLegs() : 0;
    List<Part> parts = new ArrayList<>();
    for (int hot = 0; hot < 3; hot++) {
      parts.add(new Part("", new Connection.HotToHot(hot, (hot + 1) % 3), (1 - onLeg) / 3));
    }
    if (onLeg > 0) {
      parts.add(new Part("", new Connection.HotToNeutral(0), onLeg));
    }
    return parts;
  }
}
