package wattle.rules;

import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import wattle.loads.ConnectedLoads;
import wattle.model.Doubt;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Leg;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.Load;
import wattle.model.Metal;
import wattle.model.Point;
import wattle.model.Protection;
import wattle.model.Section;
import wattle.model.SupplySystem;
import wattle.model.Terminals;
import wattle.motors.LockedRotor;
import wattle.motors.WelderCurrents;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** What rules may say of devices. */
final class DeviceProperties {
  private DeviceProperties() {}

  static Map<String, Property> device() {
    return new Properties<>(Device.class, Doubt.KIT, Doubt.FIGURES)
        .words("name", "room and name", (f, d) -> Optional.of(d.name())).sure()
        .words("title", "its label, or else its name", (f, d) -> Optional.of(d.title())).sure()
        .words("part", "its kind in the parts library, such as range", (f, d) -> Optional.of(d.kind().name())).rests(Doubt.KIT).ofSort()
        .words("family", "receptacle, switch, light, appliance, junction or source", (f, d) -> Optional.of(family(d))).rests(Doubt.KIT)
        .ofSort()
        .words("class", "load class, such as cooking", (f, d) -> d.kind().loadClass().map(c -> c.word())).rests(Doubt.KIT).ofSort()
        .words("location", "where in the room, such as counter", (f, d) -> d.location()).rests(Doubt.KIT)
        .stated("at counter, at front or another place on the device")
        .words("status", "new, existing or to-remove", (f, d) -> f.statusWord(d.status())).rests(Doubt.STATUS)
        .wordSet("traits", "words such as weather-resistant", (f, d) -> d.traits()).rests(Doubt.KIT)
        .truth("outlet", "whether it counts as an outlet", (f, d) -> d.kind().outlet()).rests(Doubt.KIT).ofSort()
        .truth("motor", "whether it is a motor, or a motor takes the most of it", (f, d) -> CircuitLoad.isMotor(d))
        .rests(Doubt.KIT, Doubt.FIGURES)
        .truth("split", "whether it has halves", (f, d) -> !d.kind().halves().isEmpty()).rests(Doubt.KIT).ofSort()
        .figure("rating", Dimension.CURRENT, "what is stamped on it",
            (f, d) -> Optional.ofNullable(d.facts().get("rated")).or(() -> d.kind().rating()))
        .rests(Doubt.FIGURES)
        .figure("stated-rating", Dimension.CURRENT, "what is stamped on it, as the plan says and not as its kind usually has",
            (f, d) -> Optional.ofNullable(d.facts().get("rated")))
        .stated("a rating such as 20 A after its kind").rests(Doubt.FIGURES)
        .figure("voltage", Units.VOLT, "nominal volts between the conductors that it is on",
            DeviceProperties::volts)
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED)
        .figure("load", Units.VOLT_AMPERE, "what it draws", (f, d) -> d.voltAmperes()).rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY)
        .figure("current", Units.AMPERE, "the most that it draws on one hot at nominal voltage", DeviceProperties::current)
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED).kept()
        .figure("rated-voltage", Dimension.VOLTAGE, "the voltage that it is rated for, where the plan states it",
            (f, d) -> d.ratedVoltage())
        .rests(Doubt.FIGURES)
        .figure("supply-voltage", Dimension.VOLTAGE, "nominal voltage between the conductors that it is connected to",
            DeviceProperties::supplyVolts)
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED)
        .figure("power-share", Dimension.NONE, "what it draws at that voltage, as a part of its nameplate", DeviceProperties::powerShare)
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED)
        .figure("minimum-circuit", Dimension.CURRENT, "least circuit on its nameplate",
            (f, d) -> Optional.ofNullable(d.facts().get("minimum-circuit")))
        .rests(Doubt.FIGURES)
        .figure("maximum-breaker", Dimension.CURRENT, "largest breaker on its nameplate",
            (f, d) -> Optional.ofNullable(d.facts().get("maximum-breaker")))
        .rests(Doubt.FIGURES)
        .figure("effective", Dimension.CURRENT, "of a welder, its effective current: on its nameplate, or by its duty cycle",
            DeviceProperties::effective)
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED)
        .figure("most-breaker", Dimension.CURRENT,
            "largest breaker that its article allows; absent where it shares its circuit, for a motor on a fuse, and where its"
                + " nameplate says",
            MostBreaker::of)
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED, Doubt.WAY)
        .figure("output", Dimension.CURRENT, "of a source, what it gives on each of its hots at nominal voltage",
            (f, d) -> d.kind().family() == DeviceKind.Family.SOURCE
                ? Interconnection.output(f, d).map(i -> Quantity.of(i, Units.AMPERE))
                : Optional.empty())
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED)
        .figure("gives", Dimension.CURRENT, "of a source that can feed a panel alone, what it is rated for on each leg", Standby::gives)
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED)
        .figure("takes-over", Dimension.CURRENT, "of a source, the load calculated for the panel that it feeds alone", Standby::asked)
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED, Doubt.CONTENTS)
        .truth("transferred", "of a source, whether a transfer switch of its panel keeps it from the supply",
            (f, d) -> Standby.isTransferred(f, d))
        .rests(Doubt.FED, Doubt.PANEL)
        .truth("automatic-transfer", "of a source, whether its panel transfers to it automatically",
            (f, d) -> Standby.transferIs(f, d, "automatic"))
        .rests(Doubt.FED, Doubt.PANEL)
        .truth("managed-transfer", "of a source, whether an energy management system sheds what it cannot carry",
            (f, d) -> Standby.transferIs(f, d, "load-managed"))
        .rests(Doubt.FED, Doubt.PANEL)
        .thing("taken-over", Kind.PANEL, "of a source, the panel that it feeds alone", Standby::panel)
        .rests(Doubt.FED)
        .things("generators", Kind.DEVICE, "of a source that follows, the generators that would feed it", Standby::generatorsBehind)
        .rests(Doubt.FED, Doubt.PANELS)
        .figure("start-current", Dimension.CURRENT, "of a motor, its locked-rotor current",
            (f, d) -> MotorStart.of(f, d).map(m -> Quantity.of(Math.round(10 * m.amperes()) / 10.0, Units.AMPERE)))
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED)
        .words("start-sum", "how that is known", (f, d) -> MotorStart.of(f, d).map(MotorStart::sum))
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED)
        .figure("start-fall", Dimension.NONE, "of a motor, voltage that it loses at the start on feeders and branch, as a part of nominal",
            (f, d) -> MotorStart.of(f, d).map(MotorStart::percent))
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED, Doubt.WAY)
        .size("start-size", "smallest hot of the same metal for the whole branch with which it loses no more than the limit",
            (f, d) -> f.library().limit("voltage-fall-start").flatMap(l -> MotorStart.sizeWithin(f, d, l.value().si())))
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED, Doubt.WAY)
        .figure("locked-rotor", Dimension.CURRENT, "what a motor takes at the start, as its nameplate has it",
            (f, d) -> Optional.ofNullable(d.facts().get(LockedRotor.FIGURE)))
        .rests(Doubt.FIGURES)
        .stated("locked-rotor 40 A, or horsepower and code-G, on the motor")
        .figure("overload", Dimension.CURRENT, "the setting of a motor's overload relay",
            (f, d) -> Optional.ofNullable(d.facts().get("overload")))
        .rests(Doubt.FIGURES)
        .figure("overload-usual", Dimension.CURRENT,
            "most that the overload relay of a motor is set to at first; absent where the current of its nameplate is not stated",
            (f, d) -> MotorOverload.most(f, d, "motor-overload", "motor-overload-marked"))
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED)
        .figure("overload-most", Dimension.CURRENT, "the most that it may be set to where the motor does not come up to speed otherwise",
            (f, d) -> MotorOverload.most(f, d, "motor-overload-raised", "motor-overload-raised-marked"))
        .rests(Doubt.FIGURES, Doubt.FED, Doubt.SUPPLY, Doubt.REACHED)
        .truth("overload-protected", "whether a motor is protected against overload: a relay, or thermally protected",
            (f, d) -> MotorOverload.guarded(d))
        .rests(Doubt.FIGURES, Doubt.TRAITS, Doubt.KIT)
        .stated("overload 12 A, thermally-protected or no thermally-protected on the motor")
        .figure("horsepower", Dimension.POWER, "of a motor, where the plan states it", (f, d) -> LockedRotor.horsepower(d))
        .rests(Doubt.FIGURES)
        .figure("from-sink", Dimension.LENGTH, "how far it is from a sink, tub or shower",
            (f, d) -> Optional.ofNullable(d.facts().get("from-sink")))
        .rests(Doubt.FIGURES)
        .stated("from-sink 1 m on the device", "from-sink 3 ft on the device")
        .figure("from-basin", Dimension.LENGTH, "how far it is from the nearest basin, along the wall",
            (f, d) -> Optional.ofNullable(d.facts().get("from-basin")))
        .rests(Doubt.FIGURES)
        .stated("from-basin 0.6 m on the device", "from-basin 2 ft on the device")
        .figure("from-equipment", Dimension.LENGTH, "how far it is from the heating or cooling equipment that it serves",
            (f, d) -> Optional.ofNullable(d.facts().get("from-equipment")))
        .rests(Doubt.FIGURES)
        .stated("from-equipment 5 m on the device", "from-equipment 16 ft on the device")
        .figure("from-tub", Dimension.LENGTH, "how far it is from the rim of a tub or the threshold of a shower, 0 within it",
            (f, d) -> Optional.ofNullable(d.facts().get("from-tub")))
        .stated("from-tub 2 m on the device", "from-tub 6 ft on the device")
        .figure("from-pool", Dimension.LENGTH, "how far it is from the inside wall of a pool, spa or hot tub",
            (f, d) -> Optional.ofNullable(d.facts().get("from-pool")))
        .stated("from-pool 3 m on the device", "from-pool 10 ft on the device")
        .figure("from-storage", Dimension.LENGTH, "of a light in a closet, how far it is from the nearest shelf or storage",
            (f, d) -> Optional.ofNullable(d.facts().get("from-storage")))
        .stated("from-storage 0.3 m on the light", "from-storage 12 in on the light")
        .truth("disconnect", "whether a disconnect for it is within sight: stated, or a switch or its panel in the same room",
            DeviceProperties::disconnect)
        .stated("disconnect or no disconnect on the equipment, or from-disconnect 3 m",
            "disconnect or no disconnect on the equipment, or from-disconnect 10 ft")
        .truth("fan-rated", "whether its box is listed to support a fan", (f, d) -> said(d, "fan-rated"))
        .stated("fan-rated or no fan-rated on the fan")
        .truth("readily-accessible", "whether a person can reach it without climbing or moving "
            + "anything", (f, d) -> said(d, "readily-accessible"))
        .stated("readily-accessible or no readily-accessible on the device")
        .figure("height", Dimension.LENGTH, "over the floor", (f, d) -> Optional.ofNullable(d.facts().get("height"))).rests(Doubt.FIGURES)
        .stated("height 1.2 m on the device", "height 48 in on the device")
        .figure("terminals", Dimension.TEMPERATURE, "what its terminals are marked for", (f, d) -> d.terminals().temperature())
        .truth("takes-aluminum", "whether its terminals are marked for aluminum; not known where no metal is stated",
            (f, d) -> d.terminals().take(Metal.ALUMINUM).orElse(null))
        .stated("terminals with Cu, Al or CO-ALR on the device")
        .truth("takes-copper", "whether its terminals are marked for copper; not known where no metal is stated",
            (f, d) -> d.terminals().take(Metal.COPPER).orElse(null))
        .wordSet("terminal-marks", "metals that its terminals are marked for: Cu, Al, CO-ALR; not known where none is stated",
            (f, d) -> d.terminals().metals().isEmpty()
                ? null
                : d.terminals().metals().stream().map(Terminals.Mark::word).collect(Collectors.toCollection(TreeSet::new)))
        .stated("terminals with Cu, Al or CO-ALR on the device")
        .wordSet("wire-metals", "metals of the runs of its branch that enter its box, in words", DeviceProperties::wireMetals)
        .rests(Doubt.WAY, Doubt.REACHED)
        .truth("linked", "whether it sounds with the other alarms",
            (f, d) -> d.traits().contains("linked") ? Boolean.TRUE : d.traits().contains("unlinked") ? Boolean.FALSE : null)
        .rests(Doubt.KIT, Doubt.CONTROLS)
        .stated("linked or unlinked on the alarm")
        .truth("on-two-hots", "whether it is made for two hots", (f, d) -> d.kind().needs().contains(DeviceKind.Need.TWO_HOTS))
        .wordSet("protection", "its protection: its own, that of an upstream device, that of its breaker", DeviceProperties::protection)
        .rests(Doubt.KIT, Doubt.WAY, Doubt.FED, Doubt.TRAITS, Doubt.REACHED).kept()
        .truth("has-neutral", "whether its box has a neutral of its branch", (f, d) -> comes(f, d, PointRoles::neutral))
        .rests(Doubt.WAY, Doubt.REACHED)
        .truth("has-ground", "whether its box has a ground of its branch", (f, d) -> comes(f, d, PointRoles::ground))
        .rests(Doubt.WAY, Doubt.REACHED)
        .number("controls", "how many lights or loads it switches", (f, d) -> d.controls().size()).rests(Doubt.CONTROLS)
        .things("switched", Kind.DEVICE, "what it switches",
            (f, d) -> d.controls().stream().map(f.house().devices()::get).filter(x -> x != null).toList())
        .rests(Doubt.CONTROLS, Doubt.DEVICES)
        .things("switches", Kind.DEVICE, "switches that control it", (f, d) -> f.switchesOf(d)).rests(Doubt.CONTROLS)
        .truth("wired-through", "whether the rest of its branch is fed through its screws",
            (f, d) -> f.pointOf(d).map(Point::wiredThrough).orElse(false))
        .rests(Doubt.KIT, Doubt.WAY, Doubt.REACHED)
        .truth("feeds-on", "whether its branch goes on beyond it", (f, d) -> comes(f, d, PointRoles::from)).rests(Doubt.WAY, Doubt.REACHED)
        .thing("branch", Kind.BRANCH, "the branch it is on", (f, d) -> f.branchOf(d)).rests(Doubt.REACHED)
        .thing("breaker", Kind.BREAKER, "the breaker of its hot, or of the first of them", DeviceProperties::breaker)
        .rests(Doubt.FED, Doubt.REACHED).kept()
        .thing("room", Kind.ROOM, "where it is", (f, d) -> f.roomOf(d)).sure()
        .thing("box", Kind.BOX, "the box it is in", (f, d) -> Optional.ofNullable(f.house().boxes().get(d.box()))).sure()
        .made();
  }

  /** A trait that may be denied; absent where neither is said. */
  private static Boolean said(Device device, String trait) {
    return device.traits().contains(trait) ? Boolean.TRUE : device.traits().contains("no " + trait) ? Boolean.FALSE : null;
  }

  /** Within sight is seen and not more than 50 ft away, by the definition of NFPA 70 article 100. */
  private static Boolean disconnect(Facts facts, Device device) {
    Boolean stated = said(device, "disconnect");
    Quantity away = device.facts().get("from-disconnect");
    if (stated != null || away != null) {
      return stated != null ? stated : (Boolean) (away.si() <= 50 * 0.3048 + 1e-9);
    }
    boolean here = facts.switchesOf(device).stream().anyMatch(s -> s.room().equals(device.room()))
        || facts.branchOf(device).flatMap(facts::panelOf).flatMap(p -> p.room()).filter(device.room()::equals).isPresent();
    return here ? Boolean.TRUE : null;
  }

  private static Set<String> wireMetals(Facts facts, Device device) {
    Set<String> metals = new TreeSet<>();
    int at = facts.pointIndexOf(device);
    facts.branchOf(device).ifPresent(
        b -> b.sections().stream().filter(s -> s.from() == at || s.to() == at).forEach(s -> metals.add(s.wiring().hot().metal().word())));
    return metals;
  }

  private static double volts(Facts facts, Device device) {
    return facts.branchOf(device).flatMap(facts::systemOf)
        .map(s -> device.kind().needs().contains(DeviceKind.Need.TWO_HOTS) ? s.legToLegVolts() : s.legToNeutralVolts()).orElse(0.0);
  }

  private static String family(Device device) {
    return device.kind().family().word();
  }

  /** By its primary current: the most that it draws on one hot. */
  private static Optional<Quantity> effective(Facts facts, Device device) {
    double primary = current(facts, device);
    return new WelderCurrents(facts.library()).effective(device, primary).map(amperes -> Quantity.of(amperes, Units.AMPERE));
  }

  private static double current(Facts facts, Device device) {
    Optional<Branch> branch = facts.branchOf(device);
    Optional<SupplySystem> system = branch.flatMap(facts::systemOf);
    return system.isEmpty() || isOnOneLeg(device, branch.get())
        ? 0
        : ConnectedLoads.ofBranch(facts.house(), branch.get(), d -> d.equals(device)).heaviestAmperes(system.get());
  }

  /** Whether both its hots are on one leg, so that there is nothing between them and it draws nothing. */
  private static boolean isOnOneLeg(Device device, Branch branch) {
    List<Optional<Leg>> legs = branch.hots().stream().map(BranchHot::leg).toList();
    return device.loads().stream().anyMatch(
        l -> l.connection() instanceof Load.Connection.HotToHot h && legs.size() > Math.max(h.hot(), h.otherHot())
            && legs.get(h.hot()).isPresent() && legs.get(h.hot()).equals(legs.get(h.otherHot())));
  }

  /** Between the conductors that it is connected to; of an appliance with parts to the neutral, between its hots. */
  private static Optional<Quantity> supplyVolts(Facts facts, Device device) {
    Optional<SupplySystem> system = facts.branchOf(device).filter(b -> !b.hots().isEmpty()).flatMap(facts::systemOf);
    return system.flatMap(s -> {
      boolean across = device.loads().stream().anyMatch(l -> l.connection() instanceof Load.Connection.HotToHot);
      boolean connected = device.loads().stream().anyMatch(l -> !(l.connection() instanceof Load.Connection.Unconnected));
      return connected ? Optional.of(Quantity.of(across ? s.legToLegVolts() : s.legToNeutralVolts(), Units.VOLT)) : Optional.empty();
    });
  }

  private static Optional<Quantity> powerShare(Facts facts, Device device) {
    double nameplate = device.nameplateVoltAmperes();
    return nameplate > 0
        ? Optional.of(Quantity.of(Math.rint(1000 * device.voltAmperes() / nameplate) / 10, Units.PERCENT))
        : Optional.empty();
  }

  private static Optional<Breaker> breaker(Facts facts, Device device) {
    Optional<Branch> branch = facts.branchOf(device);
    if (branch.isEmpty() || branch.get().hots().isEmpty()) {
      return Optional.empty();
    }
    int hot = facts.pointOf(device).flatMap(Point::hot).orElse(0);
    BreakerId id = branch.get().hots().get(Math.min(hot, branch.get().hots().size() - 1)).breaker();
    return facts.breaker(id);
  }

  /** Its own protection, that of its breakers, and that of devices before it which protect what is wired onward. */
  private static Set<String> protection(Facts facts, Device device) {
    Set<String> words = new TreeSet<>();
    device.kind().protections().forEach(p -> words.add(p.word()));
    for (Protection own : Protection.values()) {
      if (device.traits().contains(own.word())) {
        words.add(own.word()); // built into it, as in a listed hot tub
      }
    }
    Optional<Branch> branch = facts.branchOf(device);
    if (branch.isEmpty()) {
      return words;
    }
    for (Protection protection : Protection.values()) {
      List<Breaker> breakers = facts.breakersOf(branch.get());
      if (!breakers.isEmpty() && breakers.stream().allMatch(b -> b.protections().contains(protection))) {
        words.add(protection.word());
      }
    }
    int at = facts.pointIndexOf(device);
    for (Section section : Facts.wayTo(branch.get(), at)) {
      for (String name : branch.get().points().get(section.from()).devices()) {
        Device before = facts.house().devices().get(name);
        if (before != null && before.traits().contains("protects-onward")) {
          before.kind().protections().forEach(p -> words.add(p.word()));
        }
      }
    }
    return words;
  }

  private static boolean comes(Facts facts, Device device, Function<PointRoles, BitSet> points) {
    return facts.branchOf(device).map(b -> points.apply(facts.rolesOf(b)).get(facts.pointIndexOf(device))).orElse(false);
  }
}
