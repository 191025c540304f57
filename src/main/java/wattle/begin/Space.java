package wattle.begin;

import java.util.Locale;

/** Rooms that a house may have besides kitchen, hall, bedrooms and bathrooms. */
public enum Space {
  LIVING("Living room"), FAMILY("Family room"), DINING("Dining room"), OFFICE("Office"), LAUNDRY("Laundry"), GARAGE("Garage"), BASEMENT(
      "Basement");

  private final String title;

  Space(String title) {
    this.title = title;
  }

  String title() {
    return title;
  }

  /** The word a user gives, and the name of the room in the plan. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
