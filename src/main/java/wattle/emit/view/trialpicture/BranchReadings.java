package wattle.emit.view.trialpicture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.emit.media.drawing.Insulation;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.BreakerId;
import wattle.model.ConductorUse;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Point;
import wattle.model.Role;
import wattle.model.Section;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.trials.Danger;
import wattle.trials.TrialResult;
import wattle.words.BreakerWords;

/** What a trial finds in each box and each run of a branch, in words. */
final class BranchReadings {
  /** Volts of metal to far earth that are worth a line. */
  private static final double LIVE = 1;

  /** Shares of the voltage, and watts, that are no more than rounding. */
  private static final double NOTHING = 1e-6;

  /** Two conductors that are heated alike are both the hottest. */
  private static final double ALIKE = 1e-3;

  private static final int DANGERS_IN_WORDS = 5;

  private final House house;
  private final Branch branch;
  private final TrialResult result;
  private final Optional<TrialResult.OutletReading> farthest;
  private final Optional<TrialResult.ConductorReading> hottest;
  private final List<Danger> dangers;

  BranchReadings(House house, Branch branch, TrialResult result) {
    this.house = house;
    this.branch = branch;
    this.result = result;
    dangers = result.dangers();
    farthest = result.outlets().stream().filter(o -> o.branch().equals(branch.name()) && !o.floating() && Math.abs(o.fall().si()) > NOTHING)
        .max(Comparator.comparingDouble(o -> Math.abs(o.fall().si())));
    hottest = result.conductors().stream().filter(c -> c.branch().equals(branch.name()) && c.watts().si() > NOTHING)
        .max(Comparator.comparingDouble(c -> c.watts().si()));
  }

  BoxFigures box(int index) {
    Point point = branch.points().get(index);
    if (point.box().isEmpty()) {
      return panel();
    }
    List<BoxFigures.Line> lines = new ArrayList<>();
    for (String name : point.devices()) {
      Device device = house.devices().get(name);
      if (device != null) {
        device(device, point.box().get(), lines);
      }
    }
    joints(point.box().get(), lines);
    faults(point, lines);
    metals(point, lines);
    return new BoxFigures(point.box().get(), lines);
  }

  private BoxFigures panel() {
    List<BoxFigures.Line> lines = new ArrayList<>();
    for (BreakerId id : branch.hots().stream().map(BranchHot::breaker).distinct().toList()) {
      String rating = house.breaker(id).map(BreakerWords::rating).map(r -> ", " + r).orElse("");
      lines.add(new BoxFigures.Line(id + rating, false, Sign.NONE));
      if (result.isOpen(id)) {
        lines.add(new BoxFigures.Line("open", true, Sign.NONE));
      }
      lines.addAll(FeedAndTrip.protection(result, "breaker " + id));
    }
    result.overcurrents().stream().filter(o -> o.feeds().equals(branch.name())).forEach(o -> {
      lines.add(new BoxFigures.Line("carries " + figure(o.amps()) + ", " + percent(o.share()) + " of its rating", true, Sign.DANGER));
      lines.add(new BoxFigures.Line("opens in " + o.opens().map(t -> t.text()).orElse("its maker's time"), false, Sign.NONE));
    });
    return new BoxFigures(
        branch.panel().map(p -> "Panel " + p).orElse("Panel not stated"),
        lines);
  }

  private void device(Device device, String box, List<BoxFigures.Line> lines) {
    boolean apart = !device.name().equals(box);
    if (apart || device.kind().family() == DeviceKind.Family.SWITCH) {
      lines.add(new BoxFigures.Line(
          (apart ? device.name() + ", " : "") + device.kind().name() + (result.isOff(device.name()) ? ", off" : ""), false, Sign.NONE));
    }
    for (TrialResult.OutletReading o : result.outlets()) {
      if (o.device().equals(device.name()) && o.branch().equals(branch.name())) {
        Sign sign = sign(o);
        String part = o.part().isEmpty() ? "" : o.part() + " ";
        lines.add(new BoxFigures.Line(part + (o.floating() ? "floats" : figure(o.volts()) + fall(o)), sign != Sign.NONE, sign));
        o.current().filter(c -> c.si() > NOTHING).ifPresent(c -> lines.add(new BoxFigures.Line("draws " + figure(c), false, Sign.NONE)));
      }
    }
    lines.addAll(FeedAndTrip.source(result, device.name()));
    lines.addAll(FeedAndTrip.protection(result, device.name()));
    result.reversed().stream().filter(r -> r.device().equals(device.name()) || r.device().startsWith(device.name() + ".")).forEach(
        r -> lines.add(new BoxFigures.Line("neutral contact " + figure(r.volts()) + " to earth", true, Sign.DANGER)));
  }

  /** Of what is dangerous before what is merely the farthest. */
  private Sign sign(TrialResult.OutletReading o) {
    if (has(o, Danger.Kind.OVERVOLTAGE) || has(o, Danger.Kind.LIVE_THOUGH_DARK)) {
      return Sign.DANGER;
    }
    return has(o, Danger.Kind.UNDERVOLTAGE) || farthest.filter(f -> f == o).isPresent() ? Sign.VOLTAGE : Sign.NONE;
  }

  private boolean has(TrialResult.OutletReading o, Danger.Kind kind) {
    return dangers.stream().anyMatch(d -> d.kind() == kind && d.at().equals(o.name()) && d.branch().equals(o.branch()));
  }

  private static String fall(TrialResult.OutletReading o) {
    double percent = o.fall().quantity().orElseThrow().in(Units.PERCENT);
    return Math.abs(percent) < 0.005 ? "" : ", " + Quantity.plain(Math.abs(percent), 2) + " % " + (percent > 0 ? "low" : "high");
  }

  private void joints(String box, List<BoxFigures.Line> lines) {
    for (TrialResult.JointReading j : result.joints()) {
      if (j.branch().equals(branch.name()) && j.at().equals(box)) {
        lines.add(new BoxFigures.Line("joint, " + j.conductor() + ": " + figure(j.watts()), true, Sign.JOINT));
        j.wattsAtFullLoad().ifPresent(w -> lines.add(new BoxFigures.Line("at full load " + figure(w), false, Sign.NONE)));
      }
    }
  }

  private void faults(Point point, List<BoxFigures.Line> lines) {
    for (TrialResult.FaultReading f : result.faults()) {
      if (point.box().equals(Optional.of(f.at())) || point.devices().contains(f.at())) {
        lines.add(new BoxFigures.Line("fault, " + f.between() + ": " + figure(f.amps()), true, Sign.DANGER));
      }
    }
  }

  private void metals(Point point, List<BoxFigures.Line> lines) {
    for (TrialResult.MetalReading m : result.metals()) {
      boolean here = point.box().equals(Optional.of(m.name())) || point.devices().contains(m.name());
      if (here && (m.lifted() || m.volts().si() > LIVE)) {
        boolean touch = dangers.stream().anyMatch(d -> d.kind() == Danger.Kind.TOUCH && d.at().equals(m.name()));
        lines.add(new BoxFigures.Line("metal " + figure(m.volts()) + " to earth", touch, touch ? Sign.DANGER : Sign.NONE));
        m.bodyAmps().ifPresent(
            a -> lines.add(new BoxFigures.Line("through a person " + (a.si() < 5e-7 ? "0" : Quantity.plain(a.si() * 1000, 3)) + " mA",
                false, Sign.NONE)));
        if (touch) {
          lines.add(new BoxFigures.Line(result.opens(m.name()), false, Sign.NONE));
        }
      }
    }
  }

  RunFigures run(Section section) {
    List<RunFigures.Conductor> conductors = new ArrayList<>();
    for (ConductorUse use : section.conductors()) {
      Insulation insulation = use.reidentified() ? Insulation.MARKED_WHITE : Insulation.of(use.wire().color());
      conductors.add(conductor(section, use.role(), insulation));
    }
    String length = section.length().map(Quantity::toString).orElse("length not stated");
    return new RunFigures(section.wiring().text() + ", " + length, conductors);
  }

  private RunFigures.Conductor conductor(Section section, Role role, Insulation insulation) {
    Optional<TrialResult.ConductorReading> reading = result.conductors().stream()
        .filter(c -> c.branch().equals(branch.name()) && c.point() == section.to() && c.role().equals(Optional.of(role)))
        .findFirst();
    String name = shortly(role);
    if (reading.isEmpty()) {
      return new RunFigures.Conductor(insulation, name, false, false, Sign.NONE);
    }
    TrialResult.ConductorReading c = reading.get();
    boolean over = dangers.stream()
        .anyMatch(d -> (d.kind() == Danger.Kind.NEUTRAL_OVER || d.kind() == Danger.Kind.CONDUCTOR_OVER) && d.branch().equals(branch.name())
            && d.at().equals(c.conductor() + " of " + branch.name()) && d.limit().filter(l -> c.amps().si() > l.si()).isPresent());
    boolean worst = hottest.filter(h -> c.watts().si() >= h.watts().si() * (1 - ALIKE)).isPresent();
    String words = name + (c.open() ? ": open" : ": " + figure(c.amps()) + (c.watts().si() > NOTHING ? ", " + figure(c.watts()) : ""));
    return new RunFigures.Conductor(insulation, words + (over ? ", above its ampacity" : ""), over || worst || c.open(), c.open(),
        over ? Sign.DANGER : worst ? Sign.HEAT : Sign.NONE);
  }

  /** Where the ends of the run say the rest. */
  private String shortly(Role role) {
    if (role instanceof Role.Traveler traveler) {
      return "traveler " + traveler.number();
    }
    return role instanceof Role.SwitchLeg ? "switch leg" : Role.text(role, branch.hots());
  }

  /** To three digits, and what is next to nothing as nothing. */
  private static String figure(Derivation figure) {
    Quantity quantity = figure.quantity().orElseThrow();
    return (Math.abs(quantity.si()) < 5e-4 ? "0" : Quantity.plain(quantity.value(), Math.abs(quantity.value()) >= 100 ? 4 : 3)) + " "
        + quantity.unit().symbol();
  }

  private static String percent(Derivation share) {
    return Quantity.plain(share.quantity().orElseThrow().in(Units.PERCENT), 3) + " %";
  }

  /** In words what the picture shows first. */
  String summary() {
    List<String> parts = new ArrayList<>();
    dangers.stream().limit(DANGERS_IN_WORDS).forEach(d -> parts.add(d.kind().title() + ": " + d.words() + "."));
    farthest.ifPresent(o -> parts.add("Farthest from nominal: " + o.name() + " with " + figure(o.volts()) + "."));
    hottest.ifPresent(c -> parts
        .add("Hottest: " + c.conductor() + " from " + c.run() + " with " + figure(c.amps()) + " and " + figure(c.watts()) + "."));
    result.joints().stream().filter(j -> j.branch().equals(branch.name()))
        .forEach(j -> parts.add("Joint at " + j.at() + ": " + figure(j.watts()) + "."));
    return String.join(" ", parts);
  }
}
