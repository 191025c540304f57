package wattle.begin;

import java.util.ArrayList;
import java.util.List;

/** The rooms and circuits that a house usually has, of which a country has customs of its own. */
abstract sealed class Circuits permits AmericanCircuits, CanadianCircuits {
  private static final int BASEBOARDS_ON_ONE = 3;

  protected final Answers answers;
  protected final Wiring wiring;
  protected final Rooms rooms;
  private final List<Circuit> circuits = new ArrayList<>();

  protected Circuits(Answers answers) {
    this.answers = answers;
    this.wiring = answers.wiring();
    this.rooms = new Rooms(wiring);
  }

  /** The circuits by the customs of the country whose code is asked for; where no code is, of the United States. */
  static Circuits of(Answers answers) {
    Circuits circuits = answers.wiring().canadian() ? new CanadianCircuits(answers) : new AmericanCircuits(answers);
    circuits.addAll();
    return circuits;
  }

  private void addAll() {
    addRooms();
    answers.appliances().stream().filter(a -> a != Appliance.BASEBOARD).forEach(this::addAppliance);
    addBaseboards();
    addKitchen();
    addBathrooms();
    addBedrooms();
    answers.spaces().forEach(this::addSpace);
    addUtility();
    addHallAndAlarms();
    if (!answers.isBlock() || answers.appliances().stream().anyMatch(a -> a.place() == Appliance.Place.YARD)) {
      addOutside();
    }
  }

  abstract void addKitchen();

  abstract void addBathrooms();

  abstract void addSpace(Space space);

  abstract void addUtility();

  abstract void addHallAndAlarms();

  abstract void addOutside();

  private void addBedrooms() {
    for (int i = 1; i <= answers.bedrooms(); i++) {
      living("bed" + i, "Bedroom " + i, 4, 30);
    }
  }

  /** The light outside the door, with its switch in the hall; empty of a flat, whose door is inside. */
  protected final List<List<String>> doorLight() {
    if (answers.isBlock()) {
      return List.of();
    }
    String doorSwitch = rooms.device("hall", "doorsw", "switch for yard.lamp");
    return List.of(List.of("hall.sw", doorSwitch, rooms.device("yard", "lamp", "light 15 W damp")));
  }

  /** Smoke alarms of the hall and of each bedroom, which sound together. */
  protected final List<String> alarms() {
    List<String> alarms = new ArrayList<>(List.of(rooms.device("hall", "alarm", "smoke alarm 3 W")));
    for (int i = 1; i <= answers.bedrooms(); i++) {
      alarms.add(rooms.device("bed" + i, "alarm", "smoke alarm 3 W"));
    }
    return alarms;
  }

  List<Circuit> circuits() {
    return List.copyOf(circuits);
  }

  Rooms rooms() {
    return rooms;
  }

  private void addRooms() {
    rooms.add("hall", "Hall", "");
    rooms.add("kitchen", "Kitchen", "");
    answers.spaces().forEach(s -> rooms.add(s.word(), s.title(), ""));
    for (int i = 1; i <= answers.bedrooms(); i++) {
      rooms.add("bed" + i, "Bedroom " + i, "bedroom");
    }
    for (int i = 1; i <= answers.bathrooms(); i++) {
      rooms.add("bath" + i, "Bathroom " + i, "bathroom");
    }
    rooms.add("utility", "Utility room", "");
    rooms.add("yard", "Outside", "outdoors");
  }

  private void addAppliance(Appliance appliance) {
    String name = appliance.nameInPlan();
    List<String> stops = new ArrayList<>();
    if (appliance == Appliance.DISPOSAL) {
      stops.add(rooms.device("kitchen", "disposalsw", "switch for " + name));
    }
    stops.add(rooms.device(appliance.place().room(), name, appliance.device(wiring)));
    circuits.add(appliance.circuit(name, stops, wiring));
  }

  private void addBaseboards() {
    if (!answers.appliances().contains(Appliance.BASEBOARD)) {
      return;
    }
    List<String> heated = new ArrayList<>(List.of("hall"));
    answers.spaces().stream()
        .filter(s -> s != Space.GARAGE && s != Space.LAUNDRY && s != Space.BASEMENT)
        .forEach(s -> heated.add(s.word()));
    for (int i = 1; i <= answers.bedrooms(); i++) {
      heated.add("bed" + i);
    }
    for (int from = 0; from < heated.size(); from += BASEBOARDS_ON_ONE) {
      List<String> stops = new ArrayList<>();
      for (String room : heated.subList(from, Math.min(heated.size(), from + BASEBOARDS_ON_ONE))) {
        stops.add(rooms.device(room, "heater", Appliance.BASEBOARD.device(wiring)));
      }
      circuits.add(Appliance.BASEBOARD.circuit("heat" + (from / BASEBOARDS_ON_ONE + 1), stops, wiring));
    }
  }

  /** A room to live in: a light by the door and outlets around the walls, on one circuit. */
  protected final void living(String room, String title, int outlets, int watts) {
    List<String> light = rooms.light(room, watts);
    List<String> fork = new ArrayList<>(List.of(light.get(0)));
    fork.addAll(rooms.receptacles(room, outlets, "receptacle"));
    add(room, title, 15, List.of("arc-fault"), "", List.of(light, fork), 400);
  }

  protected final void add(
      String name, String label, int amperes, List<String> protections, String kind, List<List<String>> chains, int voltAmperes) {
    String cable = wiring.inside(amperes == 15 ? "14/2" : "12/2");
    circuits.add(
        new Circuit(name, label, wiring.amperes(amperes), 1, wiring.protections(protections), cable, kind, chains, voltAmperes, false));
  }

  protected final void add(Circuit circuit) {
    circuits.add(circuit);
  }
}
