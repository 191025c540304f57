package wattle.lockout;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Role;
import wattle.model.Section;
import wattle.words.HouseWords;

/** What would surprise somebody who opens a box. Common practice, all of it. */
final class Warnings {
  private final House house;
  private final Circuits circuits;
  private final HouseWords words;

  Warnings(House house, Circuits circuits, HouseWords words) {
    this.house = house;
    this.circuits = circuits;
    this.words = words;
  }

  List<String> of(Place place, List<Handle> handles) {
    Set<String> warnings = new LinkedHashSet<>();
    for (String box : place.boxes()) {
      List<Branch> branches = circuits.at(box);
      if (branches.size() > 1) {
        warnings.add(
            branches.size() + " branches meet in " + box + ": " + String.join(", ", branches.stream().map(words::branch).toList())
                + ". Open all of their handles, whichever circuit you work on.");
      }
      branches.forEach(b -> ofBranch(b, box, warnings));
      ofDevices(box, warnings);
    }
    ofHandles(handles, warnings);
    return List.copyOf(warnings);
  }

  private void ofBranch(Branch branch, String box, Set<String> warnings) {
    if (house.sharesNeutralBetweenLoads(branch)) {
      List<Breaker> breakers = circuits.breakersOf(branch);
      String all = String.join(" and ", breakers.stream().map(b -> b.id().toString()).toList());
      warnings.add(
          "Shared neutral: " + branch.hots().size() + " hots of " + words.branch(branch)
              + " return on one neutral. If one of them stays on and you open a joint of that neutral, the loose end is live through "
              + "the loads beyond. "
              + (breakers.size() > 1
                  ? Circuits.kind(breakers).equals(" fuses")
                      ? "Its hots have separate fuses, " + all + ": take every one out."
                      : "Its hots have separate handles, " + all + ": open and lock every one."
                  : "Never open that neutral with " + all + " closed."));
    }
    branch.panel().map(house.panels()::get).ifPresent(panel -> onThreeWires(panel, warnings));
    for (Section section : branch.sections()) {
      boolean ends = List.of(section.from(), section.to()).stream()
          .anyMatch(p -> branch.points().get(p).box().filter(box::equals).isPresent());
      if (ends && section.conductors().stream().anyMatch(c -> c.reidentified() && !Role.isApart(c.role()))) {
        warnings
            .add("A white conductor of " + words.branch(branch) + " in " + box + " is not a neutral: it works as a hot and should be "
                + "marked.");
      }
      if (ends && section.conductors().isEmpty()) {
        warnings.add("The plan does not say what the conductors of " + words.branch(branch) + " in " + box + " do: treat each as live.");
      }
    }
  }

  /** Of a panel that is fed without a ground and has its neutral bonded, all metal is at the potential of its feeder's neutral. */
  private void onThreeWires(Panel panel, Set<String> warnings) {
    boolean threeWires = panel.supply() instanceof PanelSupply.FromBreaker
        && panel.feeder().filter(f -> f.wiring().ground().isEmpty()).isPresent();
    if (threeWires && panel.bonded()) {
      warnings.add("Panel " + words.panel(panel.name())
          + " is fed without an equipment ground and its neutral is bonded: all metal here is grounded through the neutral of its feeder. "
          + "If that neutral opens, the metal is live at up to line voltage. Test metal to a ground proved elsewhere before touching it.");
    } else if (threeWires) {
      warnings.add("Panel " + words.panel(panel.name())
          + " is fed without an equipment ground and its neutral is not bonded: a fault makes all metal here live and trips nothing. "
          + "Test metal to a ground proved elsewhere before touching it.");
    }
  }

  private void ofDevices(String box, Set<String> warnings) {
    if (!house.boxes().containsKey(box)) {
      return;
    }
    if (house.boxes().get(box).traits().contains("boxless")) {
      warnings.add("There is no box at " + box + ": its joints are exposed: treat them as live until the tests below have proved them "
          + "dead.");
    }
    if (house.boxes().get(box).traits().contains("uncovered")) {
      warnings.add("There is no cover at " + box + ": live parts may be exposed: treat them as live until the tests below have proved "
          + "them dead.");
    }
    for (String name : house.boxes().get(box).devices()) {
      Device device = house.devices().get(name);
      if (!device.kind().halves().isEmpty()) {
        warnings.add("Test both halves of " + name + ": each may have its own hot.");
      }
      if (device.kind().family() == DeviceKind.Family.SWITCH) {
        warnings.add("A switch that is off isolates nothing: the hot stays on " + name + " until its breaker is open.");
      }
      if (device.kind().family() == DeviceKind.Family.SOURCE) {
        warnings.add("The far side of " + words.device(device)
            + " keeps its own voltage: cells, modules and capacitors cannot be switched off. Follow its maker's instructions and"
            + " waiting time.");
      }
    }
  }

  private void ofHandles(List<Handle> handles, Set<String> warnings) {
    List<String> tied = new ArrayList<>();
    for (Handle handle : handles) {
      if (handle.part() instanceof Handle.Part.OfBreaker of) {
        circuits.breaker(of.breaker()).ifPresent(b -> {
          if (b.handle() == Breaker.Handle.TIED) {
            tied.add(b.id().toString());
          }
          if (b.device() == Breaker.Device.FUSE) {
            warnings.add("Fuses cannot be locked: take out those of " + b.id() + ", keep them with you, and tag the holder.");
          }
        });
      }
      if (handle.part() instanceof Handle.Part.OfSource) {
        warnings.add("A source may start automatically when the supply fails: lock its disconnect, do not just switch it off.");
      }
    }
    tied.forEach(id -> warnings.add("The poles of " + id + " are single breakers with joined handles: check that every pole has moved."));
  }
}
