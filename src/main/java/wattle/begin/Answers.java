package wattle.begin;

import java.util.EnumSet;
import java.util.Set;

/**
 * What is known of a house that has no plan yet.
 *
 * @param title of the plan
 * @param code name of a code pack; empty for none
 * @param floorArea with its unit, as plans write it: {@code 186 m2}
 * @param storeys from 1
 * @param bedrooms from 0
 * @param bathrooms from 0
 * @param spaces other rooms; those that an appliance needs are added
 */
public record Answers(
    String title,
    String code,
    ServiceSize service,
    String floorArea,
    int storeys,
    int bedrooms,
    int bathrooms,
    Set<Space> spaces,
    Set<Appliance> appliances) {
  public static final int MOST_STOREYS = 4;
  public static final int MOST_BEDROOMS = 8;
  public static final int MOST_BATHROOMS = 6;

  public Answers {
    Set<Space> all = EnumSet.noneOf(Space.class);
    all.addAll(spaces);
    appliances.forEach(a -> a.space().ifPresent(all::add));
    spaces = java.util.Collections.unmodifiableSet(all);
    Set<Appliance> ordered = EnumSet.noneOf(Appliance.class);
    ordered.addAll(appliances);
    appliances = java.util.Collections.unmodifiableSet(ordered);
    if (storeys < 1 || storeys > MOST_STOREYS || bedrooms < 0 || bedrooms > MOST_BEDROOMS || bathrooms < 0
        || bathrooms > MOST_BATHROOMS) {
      throw new IllegalArgumentException("storeys " + storeys + ", bedrooms " + bedrooms + ", bathrooms " + bathrooms);
    }
  }
}
