package wattle.live;

import java.util.ArrayList;
import java.util.List;
import wattle.emit.media.page.Markup;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.Section;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.trials.Reach;

/** What can be done at one box of a branch, or at its panel. */
final class BoxControls {
  private final Markup out;
  private final House house;
  private final Branch branch;
  private final Controls controls;

  BoxControls(Markup out, Situation situation, Branch branch) {
    this.out = out;
    this.branch = branch;
    house = situation.plan().house();
    controls = new Controls(out, situation);
  }

  void write(int point) {
    if (point == 0) {
      panel();
      return;
    }
    String box = branch.points().get(point).box().orElse("?");
    Reach reach = Reach.of(house, branch, point);
    out.element("h3", box, "id", "box-title", "tabindex", "-1");
    branch.points().get(point).devices().stream().map(house.devices()::get).filter(java.util.Objects::nonNull).forEach(this::device);
    out.element("h4", "The run that comes here").open("div", "class", "controls");
    reach.conductors().forEach(c -> controls.toggle(EventKey.open(c, branch.name()) + " at " + box, "Lose the " + words(c)));
    out.close();
    reach.name().ifPresent(name -> faults(name, reach.conductors(), !branch.points().get(point).devices().isEmpty()));
  }

  /** What leaves the panel, on all runs of the branch that do. */
  private void panel() {
    out.element("h3", branch.panel().map(p -> "Panel " + p).orElse("Panel not stated") + ", branch " + branch.name(), "id", "box-title",
        "tabindex", "-1");
    out.open("div", "class", "controls");
    branch.hots().stream().map(h -> h.breaker()).distinct().forEach(b -> controls.toggle("open breaker " + b, "Open " + b));
    List<Event.Conductor> leaving = new ArrayList<>();
    branch.sections().stream().filter(s -> s.from() == 0).map(Section::to)
        .forEach(p -> leaving.addAll(Reach.of(house, branch, p).conductors()));
    leaving.stream().distinct().sorted()
        .forEach(c -> controls.toggle(EventKey.open(c, branch.name()), "Lose the " + words(c) + " of the whole branch"));
    out.close();
  }

  private void device(Device device) {
    out.element("h4", device.name() + ", " + device.kind().name());
    out.open("div", "class", "controls");
    if (device.kind().family() == DeviceKind.Family.SWITCH) {
      controls.toggle(device.name() + " off", "Switch off " + device.name());
    }
    if (Loads.draws(device)) {
      controls.toggle(device.name() + " on", onWords(device));
    }
    if (Loads.isSource(device)) {
      source(device);
    }
    for (String part : Loads.parts(device)) {
      controls.figure(EventKey.draws(device.name(), part), "", (part.isEmpty() ? device.name() : part) + " draws", "10 A");
    }
    out.close();
  }

  private void source(Device device) {
    controls.toggle(device.name() + " on", onWords(device));
    String rating = Quantity.plain(device.voltAmperes(), 4) + " W";
    if (Loads.isTold(device)) {
      controls.figure(EventKey.gives(device.name()), "", device.name() + " gives", rating);
    }
    if (Loads.isCharged(device)) {
      controls.figure(EventKey.draws(device.name(), ""), "", device.name() + " is charged with", rating + " power");
    }
  }

  static String onWords(Device device) {
    return device.name() + " on, " + Quantity.of(device.voltAmperes(), Units.VOLT_AMPERE);
  }

  private void faults(String name, List<Event.Conductor> conductors, boolean devices) {
    out.element("h4", "Joints, ground and faults").open("div", "class", "controls");
    conductors.forEach(c -> controls.figure(EventKey.loosen(c, name), "", "loose " + words(c) + " adds", "0.5 ohm"));
    if (conductors.contains(Event.Conductor.GROUND)) {
      controls.figure(EventKey.lift(name), "leaking", "lift its ground, leaking (or empty)", "20 kohm");
    }
    if (devices) {
      controls.toggle(EventKey.swap(name), "Exchange hot and neutral");
    }
    for (int i = 0; i < conductors.size(); i++) {
      for (int j = i + 1; j < conductors.size(); j++) {
        Event.Conductor from = conductors.get(i);
        if (from == Event.Conductor.HOT || from == Event.Conductor.HOT_2) {
          controls.toggle(EventKey.fault(from, conductors.get(j), name), "Fault, " + words(from) + " to " + words(conductors.get(j)));
        }
      }
    }
    out.close();
  }

  private static String words(Event.Conductor conductor) {
    return conductor == Event.Conductor.HOT_2 ? "other hot" : EventKey.word(conductor);
  }
}
