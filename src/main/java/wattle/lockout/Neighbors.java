package wattle.lockout;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.House;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Section;
import wattle.words.HouseWords;

/** What keeps its voltage in or beside a place when its handles are open. */
final class Neighbors {
  private final House house;
  private final Circuits circuits;
  private final HouseWords words;
  private final List<Lockout.Live> live = new ArrayList<>();

  Neighbors(House house, Circuits circuits, HouseWords words) {
    this.house = house;
    this.circuits = circuits;
    this.words = words;
  }

  List<Lockout.Live> of(Place place, Set<String> killed, List<Handle> handles) {
    besideInRooms(place, killed);
    inRaceways(place, killed);
    inSharedSlots(handles);
    if (place instanceof Place.InPanel in) {
      inPanel(house.panels().get(in.panel()));
    } else {
      inPanels(handles);
    }
    return live;
  }

  /** Other boxes of the same rooms, one line for each branch. */
  private void besideInRooms(Place place, Set<String> killed) {
    Set<String> rooms = new LinkedHashSet<>();
    place.boxes().stream().filter(house.boxes()::containsKey).forEach(b -> rooms.add(house.boxes().get(b).room()));
    for (String room : rooms) {
      Map<String, Set<String>> boxesByBranch = new LinkedHashMap<>();
      for (String box : house.rooms().get(room).boxes()) {
        for (Branch branch : circuits.at(box)) {
          if (!killed.contains(branch.name()) && !place.boxes().contains(box)) {
            boxesByBranch.computeIfAbsent(branch.name(), b -> new LinkedHashSet<>()).add(box);
          }
        }
      }
      boxesByBranch.forEach(
          (branch, boxes) -> live.add(new Lockout.Live(String.join(", ", boxes.stream().map(words::box).toList()),
              fedFrom(house.branches().get(branch)), "same room")));
    }
  }

  private String fedFrom(Branch branch) {
    List<String> breakers = branch.hots().stream().map(h -> h.breaker().toString()).distinct().toList();
    return words.branch(branch) + (breakers.isEmpty() ? ", breaker not stated" : ", breaker " + String.join(" and ", breakers));
  }

  /** Cables of other branches in a raceway or bored hole that the cables of the place pass through. */
  private void inRaceways(Place place, Set<String> killed) {
    Set<String> passed = new TreeSet<>();
    for (String name : killed) {
      house.branches().get(name).sections().stream()
          .filter(s -> touches(house.branches().get(name), s, place))
          .forEach(s -> passed.addAll(s.surroundings().raceways()));
    }
    for (String raceway : passed) {
      for (Branch branch : house.branches().values()) {
        boolean through = branch.sections().stream().anyMatch(s -> s.surroundings().raceways().contains(raceway));
        if (through && !killed.contains(branch.name())) {
          live.add(new Lockout.Live("cables of " + words.branch(branch), fedFrom(branch), "same raceway " + raceway));
        }
      }
      for (Panel panel : house.panels().values()) {
        if (panel.feeder().isPresent() && panel.feeder().get().surroundings().raceways().contains(raceway)) {
          live.add(new Lockout.Live("feeder of panel " + words.panel(panel.name()), "its own supply", "same raceway " + raceway));
        }
      }
    }
  }

  private static boolean touches(Branch branch, Section section, Place place) {
    return List.of(section.from(), section.to()).stream()
        .anyMatch(p -> branch.points().get(p).box().filter(place.boxes()::contains).isPresent());
  }

  /** The other half of a slot with two half-size breakers. */
  private void inSharedSlots(List<Handle> handles) {
    Set<BreakerId> opened = new LinkedHashSet<>();
    handles.forEach(h -> {
      if (h.part() instanceof Handle.Part.OfBreaker b) {
        opened.add(b.breaker());
      }
    });
    for (BreakerId id : opened) {
      for (Breaker other : house.panels().get(id.panel()).breakers()) {
        boolean sameSlot = other.id().slots().stream().anyMatch(s -> id.slots().stream().anyMatch(t -> t.number() == s.number()));
        if (sameSlot && !opened.contains(other.id())) {
          live.add(new Lockout.Live("breaker " + other.id(), "the same slot as " + id + "; its own handle", "same slot"));
        }
      }
    }
  }

  /** Opening a breaker leaves the panel it is in live. */
  private void inPanels(List<Handle> handles) {
    Set<String> panels = new LinkedHashSet<>();
    handles.forEach(h -> {
      if (h.part() instanceof Handle.Part.OfBreaker b) {
        panels.add(b.breaker().panel());
      }
    });
    panels.forEach(p -> live.add(new Lockout.Live("inside of panel " + words.panel(p), "its supply", "panel of the handle")));
  }

  private void inPanel(Panel panel) {
    boolean hasMain = panel.main().isPresent() && panel.main().get().kind() != MainDevice.Kind.LUGS;
    if (panel.supply() instanceof PanelSupply.FromBreaker from) {
      live.add(new Lockout.Live("inside of panel " + words.panel(from.breaker().panel()), "its supply", "panel of the handle"));
    } else if (hasMain) {
      live.add(new Lockout.Live("line side of the main and the service conductors",
          "the utility's conductors; only the utility disconnects them", "inside this panel"));
    }
  }
}
