package wattle.model;

/** What a load is, for load calculations. */
public enum LoadClass {
  LIGHTING("lighting"), GENERAL_OUTLET("general-outlet"), SMALL_APPLIANCE("small-appliance"), LAUNDRY("laundry"), COOKING("cooking"), DRYER(
      "dryer"),
  /** Central electric heating, and heating strips beside a heat pump. */
  HEATING("heating"),
  /** A heater with a control of its own, room by room. */
  ROOM_HEATING("room-heating"),
  /** Heats at night for the day. */
  STORAGE_HEATING("storage-heating"),
  /** The compressor of a heat pump, which heats and cools. */
  HEAT_PUMP("heat-pump"), COOLING("cooling"), WATER_HEATING("water-heating"),
  /** Water that is heated as it is drawn. */
  INSTANT_WATER_HEATING("instant-water-heating"),
  /** Water of pools, hot tubs and spas, and steam. */
  POOL_HEATING("pool-heating"), MOTOR("motor"), VEHICLE_CHARGING("vehicle-charging"), FIXED_APPLIANCE("fixed-appliance"),
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
