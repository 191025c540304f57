package wattle.compare;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import wattle.model.Race;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.Electrode;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Load;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Point;
import wattle.model.Room;
import wattle.model.Section;
import wattle.model.Service;
import wattle.model.Source;
import wattle.model.Status;
import wattle.model.Stretch;
import wattle.model.Surroundings;
import wattle.model.Terminals;
import wattle.model.Wiring;
import wattle.quantity.Quantity;

/**
 * A house as words: each thing with its properties, no places in the text, so that two descriptions are equal when two
 * plans say the same. It is what revisions are compared by, and what a version-control tool can show instead of the text.
 */
public final class Description {
  private final Map<Thing, Map<String, String>> things = new LinkedHashMap<>();
  private final Renames renames;

  private Description(Renames renames) {
    this.renames = renames;
  }

  /** All things by kind and name, each with its stated properties in a fixed order. */
  public static SortedMap<Thing, Map<String, String>> of(House house) {
    return Collections.unmodifiableSortedMap(new TreeMap<>(inOrder(house, Renames.none())));
  }

  /** The same in an order that no name decides; names, and what refers to them, put as the later revision has them. */
  static Map<Thing, Map<String, String>> inOrder(House house, Renames renames) {
    Description description = new Description(renames);
    description.describe(house);
    return Collections.unmodifiableMap(description.things);
  }

  private String renamed(Thing.Kind kind, String name) {
    return renames.later(new Thing(kind, name)).name();
  }

  private Map<String, String> thing(Thing.Kind kind, String name) {
    return things.computeIfAbsent(renames.later(new Thing(kind, name)), t -> new LinkedHashMap<>());
  }

  private static void put(Map<String, String> properties, String name, String value) {
    if (!value.isEmpty()) {
      properties.put(name, value);
    }
  }

  private static void put(Map<String, String> properties, String name, Optional<?> value) {
    value.ifPresent(v -> put(properties, name, v.toString()));
  }

  private void describe(House house) {
    Map<String, String> plan = thing(Thing.Kind.PLAN, "");
    put(plan, "title", house.title());
    put(plan, "revision", house.revision());
    put(plan, "codes", String.join(", ", house.codes()));
    house.dwellings().forEach((name, d) -> {
      Map<String, String> p = thing(Thing.Kind.DWELLING, name);
      put(p, "label", d.label());
      put(p, "on", String.join(", ", d.panels().stream().map(x -> renamed(Thing.Kind.PANEL, x)).toList()));
      facts(p, d.facts());
      put(p, "flags", String.join(", ", new TreeSet<>(d.flags())));
    });
    house.services().values().forEach(this::service);
    house.panels().values().forEach(this::panel);
    house.branches().values().forEach(b -> branch(b, house));
    house.raceways().values().forEach(r -> {
      Map<String, String> p = thing(Thing.Kind.RACEWAY, r.name());
      put(p, "label", r.label());
      put(p, "size", r.race().map(Race::text));
      put(p, "length", r.length().map(Object::toString));
      put(p, "surroundings", surroundings(r.surroundings()));
      status(p, r.status());
    });
    house.rooms().values().forEach(this::room);
    house.boxes().values().forEach(b -> box(b, house));
    house.devices().values().forEach(this::device);
    house.trials().values().forEach(t -> {
      Map<String, String> p = thing(Thing.Kind.TRIAL, t.name());
      put(p, "label", t.label());
      put(p, "events", String.join("; ", t.events().stream().map(this::event).toList()));
    });
    house.expectations().forEach(e -> {
      String name = e.measure() + e.subject().map(s -> " of " + renames.later(s)).orElse("")
          + e.trial().map(t -> " in " + renamed(Thing.Kind.TRIAL, t)).orElse("");
      Map<String, String> p = thing(Thing.Kind.EXPECTATION, name);
      put(p, "bound", e.bound().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '));
      put(p, "value", e.value());
      put(p, "within", e.within());
    });
    house.silences().forEach(s -> put(thing(Thing.Kind.SILENCE, s.rule() + s.at().map(a -> " at " + renames.later(a)).orElse("")
        + s.within().filter(w -> s.at().isEmpty()).map(w -> " in " + w).orElse("")), "reason", s.reason()));
  }

  private static void facts(Map<String, String> properties, Map<String, Quantity> facts) {
    new TreeMap<>(facts).forEach((name, value) -> put(properties, name, value.toString()));
  }

  private static void flags(Map<String, String> properties, Map<String, Boolean> flags) {
    new TreeMap<>(flags).forEach((name, so) -> put(properties, name, so ? "yes" : "no"));
  }

  private static String terminals(Terminals terminals, String before) {
    return terminals.text().isEmpty() ? "" : before + terminals.text();
  }

  private static void status(Map<String, String> properties, Status status) {
    put(properties, "status", status == Status.NEW ? "" : status.word());
  }

  private void service(Service service) {
    Map<String, String> p = thing(Thing.Kind.SERVICE, service.name());
    put(p, "label", service.label());
    put(p, "voltage", service.system().text());
    put(p, "rating", service.rating());
    put(p, "source", service.source().map(Description::source));
    put(p, "run", service.run().map(this::stretch));
    put(p, "electrodes", electrodes(service.electrodes()));
    facts(p, service.facts());
    flags(p, service.flags());
    status(p, service.status());
  }

  private static String electrodes(List<Electrode> electrodes) {
    return electrodes.stream()
        .map(e -> e.kind() + e.conductor().map(c -> " by " + c.text()).orElse("") + e.resistance().map(r -> " " + r).orElse(""))
        .collect(java.util.stream.Collectors.joining(", "));
  }

  private static String source(Source source) {
    if (source instanceof Source.Transformer t) {
      return "transformer " + t.rating() + " " + t.impedance() + t.reactanceToResistance().map(r -> " ratio " + r).orElse("");
    }
    if (source instanceof Source.Available a) {
      return "available " + a.faultCurrent() + a.reactanceToResistance().map(r -> " ratio " + r).orElse("");
    }
    if (source instanceof Source.Generator g) {
      return "generator " + g.rating() + g.impedance().map(z -> " " + z).orElse("");
    }
    throw new AssertionError(source);
  }

  private String stretch(Stretch stretch) {
    String around = surroundings(stretch.surroundings());
    return stretch.length().map(Quantity::toString).orElse("later") + " of " + stretch.wiring().text()
        + (around.isEmpty() ? "" : " " + around);
  }

  private String surroundings(Surroundings s) {
    List<String> words = new ArrayList<>();
    s.place().ifPresent(p -> words.add("in " + p));
    s.ambient().ifPresent(a -> words.add(a.toString()));
    if (s.bundledWith() > 1) {
      words.add("bundled " + s.bundledWith());
    }
    if (!s.raceways().isEmpty()) {
      words.add("through " + String.join(", ", s.raceways().stream().map(r -> renamed(Thing.Kind.RACEWAY, r)).toList()));
    }
    if (s.underground()) {
      words.add("buried" + s.buried().map(b -> " " + b).orElse(""));
    }
    s.supported().ifPresent(d -> words.add("supported " + d));
    s.held().ifPresent(d -> words.add("held " + d));
    s.fromEdge().ifPresent(d -> words.add("from-edge " + d));
    if (s.nailPlated()) {
      words.add("nail-plated");
    }
    return String.join(" ", words);
  }

  private void panel(Panel panel) {
    Map<String, String> p = thing(Thing.Kind.PANEL, panel.name());
    put(p, "label", panel.label());
    put(p, "fed from", supply(panel.supply()));
    put(p, "feeder", panel.feeder().map(this::stretch));
    put(p, "bus", panel.busRating());
    put(p, "slots", panel.slotCount());
    put(p, "order", panel.order().word());
    put(p, "bonded", panel.bonded() ? "yes" : "");
    put(p, "main", panel.main().map(m -> m.kind().name().toLowerCase(java.util.Locale.ROOT) + m.rating().map(r -> " " + r).orElse("")
        + m.interrupting().map(i -> " " + i).orElse("") + terminals(m.terminals(), " terminals ")));
    put(p, "kind", panel.kind());
    put(p, "room", panel.room().map(r -> renamed(Thing.Kind.ROOM, r)));
    put(p, "terminals", panel.terminals().text());
    put(p, "electrodes", electrodes(panel.electrodes()));
    facts(p, panel.facts());
    flags(p, panel.flags());
    status(p, panel.status());
    panel.breakers().forEach(b -> breaker(panel, b));
  }

  private String supply(PanelSupply supply) {
    if (supply instanceof PanelSupply.FromService from) {
      return "service " + renamed(Thing.Kind.SERVICE, from.service());
    }
    if (supply instanceof PanelSupply.FromBreaker from) {
      return "panel " + renamed(Thing.Kind.PANEL, from.breaker().panel());
    }
    return "";
  }

  /** A breaker is known by what it feeds, so that a move to another slot is a move and not a loss and a gain. */
  private void breaker(Panel panel, Breaker b) {
    String panelName = renamed(Thing.Kind.PANEL, panel.name());
    String name = panelName + "/" + b.id().slotText();
    if (b.target() instanceof Breaker.Target.ToBranch to) {
      name = "of " + renamed(Thing.Kind.BRANCH, to.branch());
    } else if (b.target() instanceof Breaker.Target.ToPanel to) {
      name = "of " + renamed(Thing.Kind.PANEL, to.panel());
    }
    name = Numbered.among(name, n -> things.containsKey(new Thing(Thing.Kind.BREAKER, n)));
    Map<String, String> p = things.computeIfAbsent(new Thing(Thing.Kind.BREAKER, name), t -> new LinkedHashMap<>());
    put(p, "slot", panelName + "/" + b.id().slotText());
    put(p, "feeds", b.target() instanceof Breaker.Target.Spare ? "spare" : b.target() instanceof Breaker.Target.Later ? "later" : "");
    put(p, "leg", String.join("+", b.poles().stream().map(pole -> pole.leg().map(Leg::name).orElse("?")).toList()));
    put(p, "rating", b.rating());
    put(p, "handle", b.handle().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '));
    put(p, "device", b.device().name().toLowerCase(java.util.Locale.ROOT));
    put(p, "protection", String.join(", ", new TreeSet<>(b.protections().stream().map(x -> x.word()).toList())));
    put(p, "interrupting", b.interrupting());
    put(p, "terminals", b.terminals().text());
    put(p, "trip", b.trip().map(Breaker.Trip::word).orElse(""));
    put(p, "label", b.label());
    put(p, "base", b.base().map(x -> x.word()).orElse(""));
    put(p, "pinned", b.pinned() ? "yes" : "");
    put(p, "back-fed", b.backFed() ? "yes" : "");
    put(p, "residual current", b.residual());
    put(p, "switched-neutral", b.switchedNeutral() ? "yes" : "");
    status(p, b.status());
  }

  private void branch(Branch branch, House house) {
    Map<String, String> p = thing(Thing.Kind.BRANCH, branch.name());
    String name = renamed(Thing.Kind.BRANCH, branch.name());
    put(p, "label", branch.label());
    put(p, "cable", branch.wiring().text());
    put(p, "kind", branch.kind());
    status(p, branch.status());
    for (Section section : branch.sections()) {
      Point to = branch.points().get(section.to());
      String box = to.box().map(b -> renamed(Thing.Kind.BOX, b)).orElse("");
      Map<String, String> run = things.computeIfAbsent(new Thing(Thing.Kind.RUN, name + " to " + box), t -> new LinkedHashMap<>());
      Point from = branch.points().get(section.from());
      put(run, "from",
          from.box().map(b -> renamed(Thing.Kind.BOX, b)).orElse(branch.panel().map(x -> renamed(Thing.Kind.PANEL, x)).orElse("")));
      put(run, "length", section.length());
      Wiring wiring = section.wiring();
      put(run, "cable", wiring.text());
      put(run, "surroundings", surroundings(section.surroundings()));
      put(run, "on hot", to.hot().map(h -> Integer.toString(h + 1)));
      put(run, "wired", to.wiredThrough() ? "through" : "");
      status(run, section.status());
    }
  }

  private void room(Room room) {
    Map<String, String> p = thing(Thing.Kind.ROOM, room.name());
    put(p, "label", room.label());
    put(p, "kind", room.kind());
    facts(p, room.facts());
    flags(p, room.flags());
    status(p, room.status());
  }

  private void box(Box box, House house) {
    if (box.devices().size() == 1 && box.devices().get(0).equals(box.name()) && box.volume().isEmpty() && box.traits().isEmpty()) {
      return; // the device's own box, of which the plan says nothing
    }
    Map<String, String> p = thing(Thing.Kind.BOX, box.name());
    put(p, "volume", box.volume());
    put(p, "gangs", box.gangs());
    put(p, "traits", String.join(", ", new TreeSet<>(box.traits())));
    put(p, "devices", String.join(", ", box.devices().stream().map(d -> renamed(Thing.Kind.DEVICE, d)).toList()));
    Device own = house.devices().get(box.name());
    if (own == null || own.status() != box.status()) {
      status(p, box.status());
    }
  }

  private void device(Device device) {
    Map<String, String> p = thing(Thing.Kind.DEVICE, device.name());
    put(p, "label", device.label());
    put(p, "kind", device.kind().name());
    put(p, "traits", String.join(", ", new TreeSet<>(device.traits())));
    for (Load load : device.loads()) {
      put(p, load.part().isEmpty() ? "load" : "load " + load.part(), load.rated());
    }
    put(p, "controls", String.join(", ", new TreeSet<>(device.controls().stream().map(d -> renamed(Thing.Kind.DEVICE, d)).toList())));
    put(p, "terminals", device.terminals().text());
    put(p, "at", device.location());
    put(p, "box", device.box().equals(device.name()) ? "" : renamed(Thing.Kind.BOX, device.box()));
    Map<String, Quantity> facts = new TreeMap<>(device.facts());
    facts.remove("box-volume"); // the box says it
    facts(p, facts);
    status(p, device.status());
  }

  private String event(Event event) {
    if (event instanceof Event.Drawing d) {
      String part = d.part().isEmpty() ? "" : "." + d.part();
      return renamed(Thing.Kind.DEVICE, d.device()) + part + " draws " + d.drawn()
          + (d.powerFactor() == 1 ? "" : " at power factor " + Quantity.plain(d.powerFactor(), 4)) + " as "
          + d.behavior().name().toLowerCase(java.util.Locale.ROOT);
    }
    if (event instanceof Event.PanelDrawing d) {
      return renamed(Thing.Kind.PANEL, d.panel()) + " draws " + d.drawn()
          + (d.powerFactor() == 1 ? "" : " at power factor " + Quantity.plain(d.powerFactor(), 4)) + " as "
          + d.behavior().name().toLowerCase(java.util.Locale.ROOT);
    }
    if (event instanceof Event.Turned t) {
      return renamed(Thing.Kind.DEVICE, t.device()) + (t.on() ? " on" : " off");
    }
    if (event instanceof Event.BreakerOpen o) {
      return "open breaker " + renamed(Thing.Kind.PANEL, o.breaker().panel()) + "/" + o.breaker().slotText();
    }
    if (event instanceof Event.ServiceNeutralOpen) {
      return "open service neutral";
    }
    if (event instanceof Event.MainOpen o) {
      return "open main " + renamed(Thing.Kind.PANEL, o.panel());
    }
    if (event instanceof Event.SupplyLost l) {
      return "lose " + renamed(Thing.Kind.SERVICE, l.service());
    }
    if (event instanceof Event.Transferred t) {
      return "transfer " + renamed(Thing.Kind.PANEL, t.panel()) + " to "
          + t.source().map(d -> renamed(Thing.Kind.DEVICE, d)).orElse(t.off() ? "off" : "utility");
    }
    if (event instanceof Event.Giving g) {
      return renamed(Thing.Kind.DEVICE, g.device()) + " gives " + g.given();
    }
    if (event instanceof Event.ConductorOpen o) {
      return "open " + o.conductor() + " of " + renamed(Thing.Kind.BRANCH, o.branch())
          + o.at().map(a -> " at " + renames.later(a)).orElse("");
    }
    if (event instanceof Event.FeederOpen o) {
      return "open " + o.conductor() + " of " + renamed(Thing.Kind.PANEL, o.panel());
    }
    if (event instanceof Event.JointLoose l) {
      return "loosen " + l.conductor() + " at " + renames.later(l.at()) + " by " + l.added();
    }
    if (event instanceof Event.GroundLifted g) {
      return "lift ground at " + renames.later(g.at()) + g.leakage().map(l -> " leaking " + l).orElse("");
    }
    if (event instanceof Event.Faulted f) {
      return "fault " + f.from() + " to " + f.to() + " at " + renames.later(f.at()) + f.through().map(t -> " through " + t).orElse("");
    }
    if (event instanceof Event.Moved m) {
      return "move " + renamed(Thing.Kind.BRANCH, m.branch()) + " to " + m.slots();
    }
    if (event instanceof Event.Reversed r) {
      return "swap at " + renames.later(r.at());
    }
    throw new AssertionError(event);
  }
}
