package wattle.begin;

import java.util.ArrayList;
import java.util.List;

/**
 * Circuits of a house in the United States: two small-appliance circuits over the counter, one circuit for each bathroom, bedrooms on
 * their own, everything with a plug protected against arc or ground faults where dwellings need it (NFPA 70-2023 210.8, 210.11, 210.12,
 * 210.52; where no code is asked for, the same). A flat of a block has no outlets and no light outside its door of its own, but outlets
 * near equipment that is outside (210.63).
 */
final class AmericanCircuits extends Circuits {
  AmericanCircuits(Answers answers) {
    super(answers);
  }

  @Override
  void addKitchen() {
    for (int i = 1; i <= 2; i++) {
      List<String> counter = new ArrayList<>();
      for (int o = 1; o <= 2; o++) {
        counter.add(rooms.device("kitchen", "c" + (2 * i - 2 + o), "receptacle 20 A at counter tamper-resistant"));
      }
      if (i == 2 && answers.spaces().contains(Space.DINING)) {
        counter.addAll(rooms.receptacles("dining", 3, "receptacle 20 A"));
      }
      add("counter" + i, "Kitchen counter " + i, 20, List.of("arc-fault", "ground-fault"), "small-appliance", List.of(counter), 1500);
    }
    add("fridge", "Refrigerator", 20, List.of("arc-fault", "ground-fault"), "",
        List.of(List.of(rooms.device("kitchen", "fridge", "refrigerator 720 W"))), 720);
    List<String> lights = new ArrayList<>(rooms.light("kitchen", 60));
    List<List<String>> chains = new ArrayList<>(List.of(lights));
    if (answers.spaces().contains(Space.DINING)) {
      List<String> fork = new ArrayList<>(List.of("kitchen.sw"));
      fork.addAll(rooms.light("dining", 60));
      chains.add(fork);
    }
    add("kitchenlights", "Kitchen lights", 15, List.of("arc-fault"), "", chains, 120);
  }

  @Override
  void addBathrooms() {
    for (int i = 1; i <= answers.bathrooms(); i++) {
      String room = "bath" + i;
      List<String> stops = new ArrayList<>(rooms.receptacles(room, 1, "receptacle 20 A"));
      stops.addAll(rooms.light(room, 30));
      stops.add(rooms.device(room, "fansw", "switch for fan"));
      stops.add(rooms.device(room, "fan", "bath fan 45 W"));
      List<String> fork = List.of(stops.get(0), stops.get(3), stops.get(4));
      add(room, "Bathroom " + i, 20, List.of("ground-fault"), "", List.of(stops.subList(0, 3), fork), 600);
    }
  }

  @Override
  void addSpace(Space space) {
    String room = space.word();
    switch (space) {
      case LIVING, FAMILY -> living(room, space.title(), 5, 60);
      case OFFICE -> living(room, space.title(), 4, 40);
      case DINING -> {
        // Its outlets hang on a small-appliance circuit and its light on that of the kitchen.
      }
      case LAUNDRY -> {
        List<String> stops = new ArrayList<>(rooms.receptacles(room, 1, "receptacle 20 A"));
        stops.add(rooms.device(room, "washer", "washer 900 W"));
        add(room, "Laundry", 20, List.of("arc-fault", "ground-fault"), "laundry", List.of(stops), 900);
        add("laundrylight", "Laundry light", 15, List.of("arc-fault"), "", List.of(rooms.light(room, 30)), 30);
      }
      case GARAGE -> {
        add(room, "Garage outlets", 20, List.of("ground-fault"), "", List.of(rooms.receptacles(room, 2, "receptacle 20 A")), 600);
        add("garagelight", "Garage light", 15, List.of(), "", List.of(rooms.light(room, 60)), 60);
      }
      case BASEMENT -> {
        List<String> outlets = rooms.receptacles(room, 3, "receptacle 20 A");
        add(room, "Basement outlets", 20, List.of("arc-fault", "ground-fault"), "", List.of(outlets), 600);
        add("basementlight", "Basement light", 15, List.of("arc-fault"), "", List.of(rooms.light(room, 60)), 60);
      }
      default -> throw new AssertionError(space);
    }
  }

  /** Whoever services what stands in the utility room has a light there and an outlet (NFPA 70-2023 210.63, 210.70(C)). */
  @Override
  void addUtility() {
    String room = Appliance.Place.UTILITY.room();
    if (answers.appliances().stream().anyMatch(a -> a.place() == Appliance.Place.UTILITY)) {
      List<String> light = rooms.light(room, 30);
      List<String> fork = new ArrayList<>(List.of(light.get(0)));
      fork.addAll(rooms.receptacles(room, 1, "receptacle"));
      add(room, "Utility room", 15, List.of("arc-fault", "ground-fault"), "", List.of(light, fork), 200);
    }
  }

  /**
   * Hall and outlet, and the light outside its door; smoke alarms in the hall and in each bedroom on one circuit, so that they
   * sound together.
   */
  @Override
  void addHallAndAlarms() {
    List<String> light = rooms.light("hall", 30);
    List<String> fork = new ArrayList<>(List.of("hall.sw"));
    fork.addAll(rooms.receptacles("hall", 1, "receptacle"));
    List<List<String>> chains = new ArrayList<>(List.of(light, fork));
    chains.addAll(doorLight());
    add("hall", "Hall", 15, List.of("arc-fault"), "", chains, 200);
    add(
        new Circuit("alarms", "Smoke alarms", wiring.amperes(15), 1, wiring.protections(List.of("arc-fault")), wiring.inside("14/3"), "",
            List.of(alarms()), 20, false));
  }

  @Override
  void addOutside() {
    String kind = "receptacle weather-resistant weatherproof tamper-resistant";
    add("outside", "Outside outlets", 20, List.of("ground-fault"), "",
        List.of(List.of(rooms.device("yard", "front", kind), rooms.device("yard", "back", kind))), 600);
  }
}
