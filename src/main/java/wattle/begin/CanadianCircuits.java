package wattle.begin;

import java.util.ArrayList;
import java.util.List;

/**
 * Circuits of a house in Canada (CSA C22.1-21 26-650 to 26-724): circuits with receptacles have AFCI protection but for bathrooms,
 * counters, the refrigerator and the garage; Class A GFCI protection is within 1.5 m of water and outdoors alone. Two receptacles of a
 * counter are on a circuit with nothing else. Lights alone need neither, so that the smoke alarms, which nothing should trip off, are with
 * the light of the hall, and its receptacle is on a circuit of its own.
 */
final class CanadianCircuits extends Circuits {
  private static final List<String> ARC = List.of("arc-fault");

  CanadianCircuits(Answers answers) {
    super(answers);
  }

  /** The counter by the sink and the one beyond 1.5 m of it; a person puts the distances in. */
  @Override
  void addKitchen() {
    counter(1, "Kitchen counter by the sink", List.of("ground-fault"), "");
    counter(2, "Kitchen counter beyond 1.5 m of the sink", List.of(), " from-sink 1.6 m");
    add("fridge", "Refrigerator", 15, List.of(), "", List.of(List.of(rooms.device("kitchen", "fridge", "refrigerator 720 W"))), 720);
    List<List<String>> chains = new ArrayList<>(List.of(rooms.light("kitchen", 60)));
    add("kitchenlights", "Kitchen lights", 15, List.of(), "", chains, 60);
  }

  private void counter(int which, String label, List<String> protections, String distance) {
    List<String> outlets = new ArrayList<>();
    for (int o = 2 * which - 1; o <= 2 * which; o++) {
      outlets.add(rooms.device("kitchen", "c" + o, "receptacle 20 A at counter tamper-resistant" + distance));
    }
    add("counter" + which, label, 20, protections, "", List.of(outlets), 1500);
  }

  @Override
  void addBathrooms() {
    for (int i = 1; i <= answers.bathrooms(); i++) {
      String room = "bath" + i;
      String outlet = rooms.device(room, "o1", "ground-fault receptacle tamper-resistant");
      List<String> light = new ArrayList<>(List.of(outlet));
      light.addAll(rooms.light(room, 30));
      List<String> fan = List.of(outlet, rooms.device(room, "fansw", "switch for fan"), rooms.device(room, "fan", "bath fan 45 W"));
      add(room, "Bathroom " + i, 15, List.of(), "", List.of(light, fan), 400);
    }
  }

  @Override
  void addSpace(Space space) {
    String room = space.word();
    switch (space) {
      case LIVING, FAMILY -> living(room, space.title(), 5, 60);
      case DINING, OFFICE -> living(room, space.title(), 4, 40);
      case LAUNDRY -> {
        List<String> stops = new ArrayList<>(rooms.receptacles(room, 1, "receptacle"));
        stops.add(rooms.device(room, "washer", "washer 900 W"));
        add(room, "Laundry", 15, ARC, "", List.of(stops), 900);
        add("laundrylight", "Laundry light", 15, List.of(), "", List.of(rooms.light(room, 30)), 30);
      }
      case GARAGE -> add(room, "Garage", 15, List.of(), "", around(room, 2, 60), 400);
      case BASEMENT -> add(room, "Basement", 15, ARC, "", around(room, 3, 60), 400);
      default -> throw new AssertionError(space);
    }
  }

  @Override
  void addUtility() {
    String room = Appliance.Place.UTILITY.room();
    if (answers.appliances().stream().anyMatch(a -> a.place() == Appliance.Place.UTILITY)) {
      add(room, "Utility room", 15, ARC, "", around(room, 1, 30), 200);
    }
  }

  @Override
  void addHallAndAlarms() {
    List<List<String>> chains = new ArrayList<>(List.of(rooms.light("hall", 30)));
    chains.addAll(doorLight());
    List<String> alarms = new ArrayList<>(List.of("hall.sw"));
    alarms.addAll(alarms());
    chains.add(alarms);
    add(
        new Circuit("hall", "Hall and entrance lights, smoke alarms", wiring.amperes(15), 1, wiring.protections(List.of()),
            wiring.inside("14/3"), "", chains, 60, false));
    add("hallplug", "Hall receptacle", 15, ARC, "", List.of(rooms.receptacles("hall", 1, "receptacle")), 180);
  }

  @Override
  void addOutside() {
    String kind = "receptacle weather-resistant weatherproof tamper-resistant";
    add("outside", "Outside receptacles", 15, List.of("ground-fault"), "",
        List.of(List.of(rooms.device("yard", "front", kind), rooms.device("yard", "back", kind))), 600);
  }

  /** A light by the door, and so many receptacles around the walls. */
  private List<List<String>> around(String room, int outlets, int watts) {
    List<String> light = rooms.light(room, watts);
    List<String> fork = new ArrayList<>(List.of(light.get(0)));
    fork.addAll(rooms.receptacles(room, outlets, "receptacle"));
    return List.of(light, fork);
  }
}
