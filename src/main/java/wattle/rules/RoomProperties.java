package wattle.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.model.Doubt;
import wattle.model.Box;
import wattle.model.DeviceKind;
import wattle.model.Room;
import wattle.model.RoomKind;
import wattle.quantity.Dimension;

/** What rules may say of rooms and boxes. */
final class RoomProperties {
  private RoomProperties() {}

  static Map<String, Property> room() {
    return new Properties<>(Room.class, Doubt.ROOM)
        .words("name", "its name", (f, r) -> Optional.of(r.name())).sure()
        .words("title", "its label, or else its name", (f, r) -> Optional.of(r.title())).sure()
        .words("use", "what it feeds, such as kitchen, bath, bedroom", (f, r) -> r.kind()).stated("is bedroom in the line of the room")
        .ofSort()
        .wordSet("places",
            "its use and the wider places that it belongs to: habitable, living-space, wall-spaced, passage, outdoors, deck-like,"
                + " accessory, service-space, below-grade, food, damp; the first three only in a dwelling",
            (f, r) -> places(f, r))
        .truth("in-dwelling",
            "whether it belongs to a dwelling, and is not common to several: where dwellings name their panels, one of them feeds it;"
                + " none does in a plan without dwelling and bedroom that is on three phases or has a place of work such as an office",
            (f, r) -> f.isInDwelling(r))
        .rests(Doubt.DWELLING, Doubt.SUPPLY, Doubt.FED, Doubt.PANELS)
        .truth("residential", "whether it is of a dwelling or common to several", (f, r) -> f.isResidential(r))
        .rests(Doubt.DWELLING)
        .words("status", "new, existing or to-remove", (f, r) -> f.statusWord(r.status())).rests(Doubt.STATUS)
        .figure("area", Dimension.AREA, "floor area", (f, r) -> Optional.ofNullable(r.facts().get("area")))
        .figure("wall", Dimension.LENGTH, "length of its walls along the floor, doors left out",
            (f, r) -> Optional.ofNullable(r.facts().get("wall")))
        .stated("wall 12 m in the line of the room", "wall 40 ft in the line of the room")
        .figure("counter", Dimension.LENGTH, "length of its counters along the wall",
            (f, r) -> Optional.ofNullable(r.facts().get("counter")))
        .stated("counter 3 m in the line of the room", "counter 10 ft in the line of the room")
        .figure("length", Dimension.LENGTH, "its length, for a hall", (f, r) -> Optional.ofNullable(r.facts().get("length")))
        .stated("length 4 m in the line of the room", "length 13 ft in the line of the room")
        .figure("floor", Dimension.NONE, "the story that it is on, 0 for the ground",
            (f, r) -> Optional.ofNullable(r.facts().get("floor")))
        .stated("floor 1 in the line of the room")
        .truth("first-of-floor",
            "whether it is the first room that the plan names on its story, except outdoor places, garages, sheds, crawl spaces and "
                + "unfinished attics; not known where it states no story",
            (f, r) -> r.facts().containsKey("floor")
                ? f.roomsOfFloor(r).stream().filter(RoomProperties::isOfStory).findFirst().orElse(null) == r
                : null)
        .rests(Doubt.ROOM, Doubt.ROOMS)
        .stated("floor 1 in the line of the room")
        .things("floor-devices", Kind.DEVICE, "devices on its story",
            (f, r) -> f.roomsOfFloor(r).stream().flatMap(o -> f.devicesOf(o).stream()).toList())
        .rests(Doubt.ROOM, Doubt.ROOMS, Doubt.DEVICES)
        .figure("vehicle-spaces", Dimension.NONE, "how many vehicles it has room for",
            (f, r) -> Optional.ofNullable(r.facts().get("vehicle-spaces")))
        .stated("vehicle-spaces 2 in the line of the garage")
        .figure("risers", Dimension.NONE, "steps of the stair between two stories", (f, r) -> Optional.ofNullable(r.facts().get("risers")))
        .stated("risers 14 in the line of the stair")
        .truth("damp", "whether water condenses, splashes, collects or sprays in it",
            (f, r) -> Boolean.TRUE.equals(r.flags().get("damp")) || Boolean.TRUE.equals(r.flags().get("wet")))
        .truth("wet", "whether water collects or sprays in it", (f, r) -> Boolean.TRUE.equals(r.flags().get("wet")))
        .truth("corrosive", "whether vapors in it corrode metal or jackets", (f, r) -> Boolean.TRUE.equals(r.flags().get("corrosive")))
        .truth("accessory", "whether it is for animals beside a dwelling, and on no farm: an accessory building of it", Facts::isAccessory)
        .rests(Doubt.ROOM, Doubt.DWELLING, Doubt.ROOMS)
        .truth("attached", "whether a garage is built to the dwelling", (f, r) -> r.flags().get("attached"))
        .stated("attached or no attached in the line of the garage")
        .truth("finished", "whether a basement is made to live in", (f, r) -> r.flags().get("finished"))
        .stated("finished or no finished in the line of the basement")
        .truth("grade-level", "whether people walk in from grade; of a porch, deck or balcony whether it is at grade",
            (f, r) -> r.flags().get("grade-level"))
        .stated("grade-level or no grade-level in the line of the room")
        .truth("entrance", "whether an outdoor entrance with access from grade opens to it", (f, r) -> r.flags().get("entrance"))
        .stated("entrance or no entrance in the line of the place outdoors")
        .truth("island", "whether a kitchen has an island or a peninsula", (f, r) -> r.flags().get("island"))
        .stated("island or no island in the line of the kitchen")
        .truth("bonding-grid", "whether metal and paving around a pool are bonded together", (f, r) -> r.flags().get("bonding-grid"))
        .stated("bonding-grid or no bonding-grid in the line of the pool")
        .truth("equipotential-plane", "whether metal in the floor and metal that animals touch are bonded together",
            (f, r) -> r.flags().get("equipotential-plane"))
        .stated("equipotential-plane or no equipotential-plane in the line of the room")
        .truth("storage", "whether an attic or underfloor space is used for storage", (f, r) -> r.flags().get("storage"))
        .stated("storage or no storage in the line of the room")
        .truth("has-equipment", "whether equipment that needs servicing is in it: stated, or a furnace, heat pump, pump or water heater",
            (f, r) -> Boolean.TRUE.equals(r.flags().get("equipment")) || f.devicesOf(r).stream().anyMatch(RoomProperties::isServiced))
        .rests(Doubt.ROOM, Doubt.CONTENTS, Doubt.KIT)
        .truth("powered", "whether anything in it is wired", (f, r) -> f.devicesOf(r).stream().anyMatch(d -> f.branchOf(d).isPresent()))
        .rests(Doubt.CONTENTS, Doubt.REACHED, Doubt.BRANCHES)
        .truth("lighting-planned", "whether the plan shows the lighting: a light in more than three quarters of the rooms that need one",
            (f, r) -> f.lightingPlanned())
        .rests(Doubt.DWELLING, Doubt.DEVICES)
        .things("branches", Kind.BRANCH, "branches that reach it",
            (f, r) -> f.devicesOf(r).stream().flatMap(d -> f.branchOf(d).stream()).distinct().toList())
        .rests(Doubt.CONTENTS, Doubt.BRANCHES, Doubt.WAY, Doubt.REACHED)
        .things("panels", Kind.PANEL, "panels that are located in it",
            (f, r) -> f.house().panels().values().stream().filter(p -> p.room().filter(r.name()::equals).isPresent()).toList())
        .rests(Doubt.PANELS, Doubt.PANEL)
        .things("devices", Kind.DEVICE, "devices in it", (f, r) -> f.devicesOf(r)).rests(Doubt.CONTENTS).kept()
        .things("boxes", Kind.BOX, "boxes in it", (f, r) -> r.boxes().stream().map(f.house().boxes()::get).filter(b -> b != null).toList())
        .rests(Doubt.CONTENTS)
        .made();
  }

  /** IRC R314.3 counts stories, basements and habitable attics; it leaves out crawl spaces and other attics. */
  private static boolean isOfStory(Room room) {
    String use = room.kind().orElse("");
    return !room.kind().flatMap(RoomKind::of).map(k -> k.places().contains("outdoors") || k.places().contains("accessory")).orElse(false)
        && !java.util.Set.of("crawl-space", "garage").contains(use)
        && (!use.equals("attic") || Boolean.TRUE.equals(room.flags().get("finished")));
  }

  private static final java.util.Set<String> OF_DWELLINGS = java.util.Set.of("habitable", "living-space", "wall-spaced");

  /** What codes ask of living space they ask of dwelling units, and not of the corridor outside them. */
  private static java.util.Set<String> places(Facts facts, Room room) {
    java.util.Set<String> places = room.kind().flatMap(RoomKind::of).map(RoomKind::places).orElse(java.util.Set.of());
    if (places.stream().noneMatch(OF_DWELLINGS::contains) || facts.isInDwelling(room)) {
      return places;
    }
    java.util.Set<String> left = new java.util.TreeSet<>(places);
    left.removeAll(OF_DWELLINGS);
    return left;
  }

  static Map<String, Property> box() {
    return new Properties<>(Box.class, Doubt.BOX)
        .words("name", "room and name", (f, b) -> Optional.of(b.name())).sure()
        .words("status", "new, existing or to-remove", (f, b) -> f.statusWord(b.status())).rests(Doubt.STATUS)
        .figure("volume", Dimension.VOLUME, "volume marked on it", (f, b) -> b.volume())
        .stated("its volume, such as 300 mL, on the box", "its volume, such as 18 in3, on the box")
        .figure("fill", Dimension.VOLUME, "volume that its contents need", (f, b) -> f.boxFill().volumeNeeded(b))
        .rests(Doubt.REACHED, Doubt.CONTENTS, Doubt.WAY, Doubt.KIT, Doubt.BOX).kept()
        .words("fill-sum", "the calculation of fill, term by term", (f, b) -> f.boxFill().needed(b).map(RoomProperties::sum)).sure()
        .wordSet("traits", "words such as metal, clamps", (f, b) -> b.traits())
        .truth("reachable", "whether it can be opened without opening the building; not known for a junction where the plan does not say",
            (f, b) -> reachable(f, b))
        .stated("accessible or concealed on the box")
        .truth("closed", "whether it has a cover, a plate or a fixture on it; not known of a junction where the plan does not say",
            (f, b) -> closed(f, b))
        .rests(Doubt.BOX, Doubt.CONTENTS)
        .stated("covered or uncovered on the box")
        .truth("boxed", "whether its joint is in a box; false where the plan says boxless", (f, b) -> !isBoxless(b)).rests(Doubt.BOX)
        .truth("open-tap", "whether it is a joint of knob-and-tube wires alone, without a box",
            (f, b) -> isBoxless(b) && isOpenWiring(f, b))
        .rests(Doubt.BOX, Doubt.REACHED, Doubt.WAY)
        .words("joint", "what is in it, in words: a cable ends, wires are joined", (f, b) -> Optional.of(joint(f, b)))
        .rests(Doubt.REACHED)
        .number("conductors", "insulated conductors that come in",
            (f, b) -> f.runsAt(b).stream().mapToInt(r -> r.section().wiring().insulated().size()).sum())
        .rests(Doubt.REACHED, Doubt.WAY)
        .things("devices", Kind.DEVICE, "devices in it", (f, b) -> f.devicesOf(b)).rests(Doubt.CONTENTS).kept()
        .things("branches", Kind.BRANCH, "branches that reach it", (f, b) -> f.branchesOf(b)).rests(Doubt.REACHED)
        .things("runs", Kind.RUN, "runs that start or end in it", (f, b) -> f.runsAt(b)).rests(Doubt.REACHED)
        .thing("room", Kind.ROOM, "where it is", (f, b) -> Optional.ofNullable(f.house().rooms().get(b.room()))).sure()
        .made();
  }

  private static final java.util.Set<String> SERVICED = java.util.Set.of("furnace", "electric furnace", "heat pump", "air conditioner",
      "boiler", "well pump", "water heater", "instant water heater");

  /** Heating, cooling, pumps and water heaters are what 210.70(C) and 210.63 have in mind. */
  private static boolean isServiced(wattle.model.Device device) {
    return SERVICED.contains(device.kind().name());
  }

  private static boolean isBoxless(Box box) {
    return box.traits().contains("boxless");
  }

  private static boolean isOpenWiring(Facts facts, Box box) {
    return !facts.runsAt(box).isEmpty() && facts.runsAt(box).stream().allMatch(r -> r.section().wiring().type().equals("knob-and-tube"));
  }

  private static String joint(Facts facts, Box box) {
    return facts.runsAt(box).size() > 1 ? "wires are joined" : "a cable ends";
  }

  private static Boolean reachable(Facts facts, Box box) {
    return box.traits().contains("concealed")
        ? Boolean.FALSE
        : box.traits().contains("accessible") || isBoxless(box) || isInUse(facts, box) ? Boolean.TRUE : null;
  }

  private static Boolean closed(Facts facts, Box box) {
    return box.traits().contains("uncovered")
        ? Boolean.FALSE
        : box.traits().contains("covered") || isBoxless(box) || isInUse(facts, box) ? Boolean.TRUE : null;
  }

  /** Whether something is on it that people use, so that it can be reached and is closed by its plate. */
  private static boolean isInUse(Facts facts, Box box) {
    return facts.devicesOf(box).stream().anyMatch(d -> d.kind().family() != DeviceKind.Family.JUNCTION);
  }

  private static String sum(wattle.derivation.Derivation fill) {
    List<String> terms = fill.inputs().stream().map(d -> d.worked() + " for " + d.name()).toList();
    return String.join(" + ", terms);
  }
}
