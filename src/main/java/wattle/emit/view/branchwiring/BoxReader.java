package wattle.emit.view.branchwiring;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.Device;
import wattle.model.DeviceKind.Family;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Point;
import wattle.model.Role;
import wattle.model.Section;
import wattle.model.Status;
import wattle.words.BreakerWords;

/** Reads from the model what is in each box of a branch, and in its panel. */
final class BoxReader {
  private final House house;
  private final Branch branch;
  private final DeviceTerminals terminals;

  BoxReader(House house, Branch branch) {
    this.house = house;
    this.branch = branch;
    this.terminals = new DeviceTerminals(branch, new Controls(house, branch));
  }

  BoxWiring read(int index) {
    Point point = branch.points().get(index);
    Optional<Section> arriving = branch.sections().stream().filter(s -> s.to() == index).findFirst();
    List<Section> leaving = branch.sections().stream().filter(s -> s.from() == index).toList();
    if (point.box().isEmpty()) {
      return panel(leaving);
    }
    Box box = house.boxes().get(point.box().get());
    List<Device> devices = point.devices().stream().map(house.devices()::get).toList();
    Optional<Device> through = through(point, devices).filter(d -> !leaving.isEmpty());
    List<Fixture> fixtures = new ArrayList<>();
    for (Device device : devices) {
      if (device.kind().family() != Family.JUNCTION) {
        List<Terminal> own = terminals.of(device, point, through.filter(device::equals).isPresent());
        fixtures.add(
            new Fixture(device.name(), lines(device, terminals.tab(device, point)), own, terminals.tab(device, point),
                device.status() == Status.TO_REMOVE));
      }
    }
    boolean grounded = hasGround(arriving, leaving);
    if (box.traits().contains("metal") && grounded) {
      Terminal screw = new Terminal("green", Terminal.Make.GREEN, true, Optional.of(Net.Key.of(new Role.Ground())));
      fixtures.add(new Fixture("metal box", List.of("screw in its wall"), List.of(screw), Fixture.Tab.NONE, false));
    }
    return BoxWiring.joined(box.name(), facts(box), notes(box, grounded), !isBoxless(box), fixtures, arriving, leaving);
  }

  private static boolean hasGround(Optional<Section> arriving, List<Section> leaving) {
    return arriving.filter(s -> s.wiring().ground().isPresent()).isPresent()
        || leaving.stream().anyMatch(s -> s.wiring().ground().isPresent());
  }

  /** The device whose screws carry the rest of the branch, where one does. */
  private static Optional<Device> through(Point point, List<Device> devices) {
    Optional<Device> protecting = devices.stream().filter(d -> d.traits().contains("protects-onward")).findFirst();
    return protecting.isPresent() || !point.wiredThrough()
        ? protecting
        : devices.stream().filter(d -> d.kind().family() == Family.RECEPTACLE).findFirst();
  }

  private static List<String> lines(Device device, Fixture.Tab tab) {
    List<String> kind = new ArrayList<>(List.of(device.kind().name()));
    device.loads().stream().filter(l -> l.part().isEmpty()).findFirst().flatMap(l -> l.rated()).ifPresent(r -> kind.add(r.toString()));
    List<String> lines = new ArrayList<>();
    lines.add(String.join(", ", kind) + status(device.status()));
    device.label().ifPresent(l -> lines.add("“" + l + "”"));
    if (!device.controls().isEmpty()) {
      lines.add("works " + String.join(", ", device.controlledHalves().isEmpty() ? device.controls() : device.controlledHalves()));
    }
    if (tab != Fixture.Tab.NONE) {
      lines.add(tab == Fixture.Tab.BROKEN ? "brass tab broken off" : "brass tab left in place");
    }
    if (device.traits().contains("protects-onward")) {
      lines.add("protects what is wired downstream");
    }
    return lines;
  }

  private static String status(Status status) {
    return status == Status.NEW ? "" : status == Status.EXISTING ? " (existing)" : " (to be removed)";
  }

  private List<String> facts(Box box) {
    List<String> facts = new ArrayList<>();
    Optional.ofNullable(house.rooms().get(box.room())).ifPresent(r -> facts.add(r.title()));
    box.gangs().ifPresent(g -> facts.add(g + "-gang"));
    box.volume().ifPresent(v -> facts.add(v.toString()));
    facts.addAll(new TreeSet<>(box.traits()));
    if (facts.remove("boxless")) {
      facts.add(0, "NO BOX");
    }
    if (facts.remove("uncovered")) {
      facts.add(0, "NO COVER");
    }
    box.devices().stream().map(house.devices()::get).filter(d -> d.kind().family() == Family.JUNCTION)
        .forEach(d -> facts.add(0, d.kind().name() + d.label().map(l -> " “" + l + "”").orElse("")));
    if (box.status() != Status.NEW) {
      facts.add(box.status() == Status.EXISTING ? "existing" : "to be removed");
    }
    return facts;
  }

  private static boolean isBoxless(Box box) {
    return box.traits().contains("boxless");
  }

  private List<String> notes(Box box, boolean grounded) {
    List<String> notes = new ArrayList<>();
    if (isBoxless(box)) {
      notes.add("In the open: there is no box around these wires.");
    }
    if (!grounded) {
      notes.add("No ground conductor comes " + (isBoxless(box) ? "here." : "into this box."));
    }
    for (Branch other : house.branches().values()) {
      if (!other.name().equals(branch.name()) && other.points().stream().anyMatch(p -> p.box().equals(Optional.of(box.name())))) {
        List<String> breakers = other.hots().stream().map(BranchHot::breaker).distinct().map(BreakerId::toString).toList();
        notes.add("Branch " + other.name() + " is in this box too: open " + String.join(" and ", breakers) + " as well.");
      }
    }
    return notes;
  }

  // ---- The panel

  private BoxWiring panel(List<Section> leaving) {
    Optional<Panel> panel = branch.panel().map(house.panels()::get);
    List<Fixture> fixtures = new ArrayList<>();
    List<BreakerId> ids = branch.hots().stream().map(BranchHot::breaker).distinct().toList();
    boolean neutral = branch.hasNeutral();
    boolean guarded = neutral && ids.size() == 1 && house.breaker(ids.get(0)).filter(b -> !b.protections().isEmpty()).isPresent();
    List<Terminal> bars = new ArrayList<>();
    if (hasGround(Optional.empty(), leaving)) {
      bars.add(new Terminal("ground", Terminal.Make.CLAMP, true, Optional.of(Net.Key.of(new Role.Ground()))));
    }
    Terminal forNeutral = new Terminal("neutral", Terminal.Make.CLAMP, true, Optional.of(Net.Key.of(new Role.Neutral())));
    boolean bonded = panel.filter(Panel::bonded).isPresent();
    if (bonded && neutral && !guarded) {
      bars.add(forNeutral);
    }
    if (!bars.isEmpty()) {
      String title = bonded ? "neutral and ground bar" : "ground bar";
      fixtures.add(new Fixture(title, List.of(bonded ? "neutral bonded here" : "neutral isolated"), bars, Fixture.Tab.NONE, false));
    }
    for (BreakerId id : ids) {
      fixtures.add(breaker(id, guarded ? Optional.of(forNeutral) : Optional.empty()));
    }
    if (neutral && !guarded && !bonded) {
      fixtures.add(new Fixture("neutral bar", List.of("isolated from ground"), List.of(forNeutral), Fixture.Tab.NONE, false));
    }
    String title = panel.map(p -> "Panel " + p.name()).orElse("Panel not stated");
    return BoxWiring.joined(
        title, panel.flatMap(Panel::label).map(List::of).orElse(List.of()), List.of(), true, fixtures, Optional.empty(), leaving);
  }

  private Fixture breaker(BreakerId id, Optional<Terminal> neutral) {
    Optional<Breaker> breaker = house.breaker(id);
    List<Terminal> own = new ArrayList<>();
    for (int i = 0; i < branch.hots().size(); i++) {
      BranchHot hot = branch.hots().get(i);
      if (hot.breaker().equals(id)) {
        String slot = breaker.filter(b -> hot.pole() < b.poles().size()).map(b -> "slot " + b.poles().get(hot.pole()).slot())
            .orElse("pole");
        String name = slot + hot.leg().map(l -> ", leg " + l.name()).orElse("");
        own.add(new Terminal(name, Terminal.Make.CLAMP, false, Optional.of(Net.Key.of(new Role.Hot(i)))));
      }
    }
    neutral.ifPresent(own::add);
    List<String> lines = new ArrayList<>();
    breaker.ifPresent(b -> lines.add(BreakerWords.rating(b)));
    breaker.map(BreakerWords::protection).filter(p -> !p.isEmpty()).ifPresent(lines::add);
    if (neutral.isPresent()) {
      lines.add("its pigtail to the neutral bar");
    }
    String kind = breaker.filter(b -> b.device() == Breaker.Device.FUSE).isPresent() ? "fuse " : "breaker ";
    return new Fixture(kind + id, lines, own, Fixture.Tab.NONE, false);
  }
}
