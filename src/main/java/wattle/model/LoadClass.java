package wattle.model;

/** What a load is, for load calculations. */
public enum LoadClass {
  LIGHTING("lighting"),
  GENERAL_OUTLET("general-outlet"),
  SMALL_APPLIANCE("small-appliance"),
  LAUNDRY("laundry"),
  COOKING("cooking"),
  DRYER("dryer"),
  HEATING("heating"),
  COOLING("cooling"),
  WATER_HEATING("water-heating"),
  MOTOR("motor"),
  VEHICLE_CHARGING("vehicle-charging"),
  FIXED_APPLIANCE("fixed-appliance"),
  /** A source that feeds back, drawn as a negative load. */
  SOURCE("source");

  private final String word;

  LoadClass(String word) {
    this.word = word;
  }

  /** The word of the notation. */
  public String word() {
    return word;
  }
}
