package wattle.begin;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Appliances on a circuit of their own, with figures that are common for their kind; a person puts in those of the
 * nameplate. Breakers and cables: common practice, with the continuous loads (vehicle charger, water heater, sauna) at
 * 125 % as NFPA 70-2023 210.19 and 210.20 have it.
 */
public enum Appliance {
  RANGE("Range", "range 12 kW", Place.KITCHEN, 50, 2, "6/3", true, 12000), COOKTOP("Cooktop", "cooktop 7 kW", Place.KITCHEN, 40, 2, "8/3",
      true, 7000), WALL_OVEN("Wall oven", "wall oven 4 kW", Place.KITCHEN, 30, 2, "10/3", true, 4000), DISHWASHER("Dishwasher",
          "dishwasher 1200 W", Place.KITCHEN, 20, 1, "12/2", true, 1200), DISPOSAL("Disposal", "disposal 750 W", Place.KITCHEN, 20, 1,
              "12/2", true, 750), MICROWAVE("Microwave", "microwave 1500 W", Place.KITCHEN, 20, 1, "12/2", true, 1500), DRYER("Dryer",
                  "dryer 5 kW", Place.LAUNDRY, 30, 2, "10/3", true, 5000), WATER_HEATER("Water heater", "water heater 4.5 kW",
                      Place.UTILITY, 30, 2, "10/2", false, 4500), FURNACE("Furnace", "furnace 600 W", Place.UTILITY, 15, 1, "14/2", false,
                          600), HEAT_PUMP("Heat pump, outdoor unit", "heat pump 24 A minimum-circuit 30 A maximum-breaker 40 A", Place.YARD,
                              40, 2, "8/2", true, 5760), AIR_CONDITIONER("Air conditioner, outdoor unit",
                                  "air conditioner 16 A minimum-circuit 20 A maximum-breaker 30 A", Place.YARD, 30, 2, "10/2", true,
                                  3840), BASEBOARD("Baseboard heaters", "baseboard heater 1 kW", Place.BEDROOMS, 20, 2, "12/2", false,
                                      3000), VEHICLE_CHARGER("Vehicle charger", "vehicle charger 32 A", Place.GARAGE, 40, 2, "8/2", false,
                                          7680), GARAGE_DOOR("Garage door", "garage door 500 W", Place.GARAGE, 20, 1, "12/2", true,
                                              500), FREEZER("Freezer", "freezer 400 W", Place.UTILITY, 20, 1, "12/2", true, 400), SUMP_PUMP(
                                                  "Sump pump", "sump pump 600 W", Place.BASEMENT, 20, 1, "12/2", true,
                                                  600), WELL_PUMP("Well pump", "well pump 1.5 kW", Place.UTILITY, 20, 2, "12/2", true,
                                                      1500), HOT_TUB("Hot tub", "hot tub 9 kW", Place.YARD, 50, 2, "6/3", true,
                                                          9000), POOL_PUMP("Pool pump", "pool pump 1.5 kW", Place.YARD, 20, 2, "12/2", true,
                                                              1500), SAUNA("Sauna", "sauna 6 kW", Place.UTILITY, 40, 2, "8/2", false, 6000);

  /** What 15 A carry for long, of amperes of a load (80 %). */
  private static final int MOST_ON_15 = 12;

  /** Where it stands. */
  enum Place {
    KITCHEN("kitchen"), LAUNDRY("laundry"), UTILITY("utility"), YARD("yard"), GARAGE("garage"), BASEMENT("basement"),
    /** One in each bedroom and in the living rooms. */
    BEDROOMS("");

    private final String room;

    Place(String room) {
      this.room = room;
    }

    String room() {
      return room;
    }
  }

  private final String title;
  private final String device;
  private final Place place;
  private final int amperes;
  private final int poles;
  private final String cable;
  private final boolean groundFault;
  private final int voltAmperes;

  Appliance(
      String title, String device, Place place, int amperes, int poles, String cable, boolean groundFault, int voltAmperes) {
    this.title = title;
    this.device = device;
    this.place = place;
    this.amperes = amperes;
    this.poles = poles;
    this.cable = cable;
    this.groundFault = groundFault;
    this.voltAmperes = voltAmperes;
  }

  /** The word a user gives: {@code water-heater}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  Place place() {
    return place;
  }

  /** Its name in the plan, for the branch and for the device. */
  String nameInPlan() {
    return word().replace("-", "");
  }

  String title() {
    return title;
  }

  String device() {
    return device;
  }

  /** The room that it brings along. */
  Optional<Space> space() {
    return switch (place) {
      case LAUNDRY -> Optional.of(Space.LAUNDRY);
      case GARAGE -> Optional.of(Space.GARAGE);
      case BASEMENT -> Optional.of(Space.BASEMENT);
      case KITCHEN, UTILITY, YARD, BEDROOMS -> Optional.empty();
    };
  }

  /** What it is in a plan: between two hots of a wye with its rated voltage, unless its nameplate states currents. */
  String device(Wiring wiring) {
    return poles == 2 && device.endsWith("W") ? device + wiring.system().rating() : device;
  }

  int voltAmperes() {
    return voltAmperes;
  }

  /**
   * Its circuit. In Canada 15 A are usual where they carry the load, and a range of 12 kW, figured at 8 kW, has 40 A. A hot tub
   * of 9 kW draws 43.3 A on 208 V, and 125 % of it are above 50 A; of the breakers for 230 V 25 A is the one below the 30 A of an air
   * conditioner's nameplate.
   */
  Circuit circuit(String name, List<String> stops, Wiring wiring) {
    boolean buried = place == Place.YARD && (this == HOT_TUB || this == POOL_PUMP);
    int volts = wiring.system().volts();
    int usual = this == HOT_TUB && volts == 208 ? 60 : this == AIR_CONDITIONER && volts == 230 ? 25 : amperes;
    boolean small = wiring.canadian() && amperes == 20 && voltAmperes <= MOST_ON_15 * 120 * poles && this != BASEBOARD;
    boolean range = wiring.canadian() && this == RANGE;
    String size = small ? "14/2" : range ? "8/3" : cable;
    return new Circuit(
        name, title, wiring.amperes(small ? 15 : range ? 40 : usual), wiring.poles(poles),
        wiring.protections(wiring.canadian() ? canadianProtections() : protections()),
        buried ? wiring.outside(size) : wiring.inside(size), "", List.of(stops), voltAmperes, true);
  }

  /**
   * In Canada a hot tub and the pump of a pool have Class A GFCI protection (CSA C22.1-21 68-068, 68-404), and what is plugged in has AFCI
   * protection (26-656), but for receptacles of the refrigerator, of a garage and of a sump pump alone (26-658).
   */
  private List<String> canadianProtections() {
    return switch (this) {
      case HOT_TUB, POOL_PUMP -> List.of("ground-fault");
      case MICROWAVE, FREEZER -> List.of("arc-fault");
      default -> List.of();
    };
  }

  /** In a kitchen a 120 V branch is guarded against arcs as well. */
  private List<String> protections() {
    if (!groundFault) {
      return List.of();
    }
    return place == Place.KITCHEN && poles == 1 ? List.of("arc-fault", "ground-fault") : List.of("ground-fault");
  }
}
