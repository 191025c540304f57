package wattle.begin;

import java.util.EnumSet;
import java.util.Set;

/**
 * What is known of a house that has no plan yet. Of several dwellings all are alike, and figures but those of the service are of each.
 *
 * @param title of the plan
 * @param code name of a code pack; empty for none
 * @param work whether it is there already
 * @param dwellings from 1
 * @param floorArea with its unit, as plans write it: {@code 186 m2}
 * @param storeys from 1
 * @param bedrooms from 0
 * @param bathrooms from 0
 * @param spaces other rooms; those that an appliance needs are added
 */
public record Answers(
    String title,
    String code,
    SupplyChoice system,
    Work work,
    int dwellings,
    ServiceSize service,
    String floorArea,
    int storeys,
    int bedrooms,
    int bathrooms,
    Set<Space> spaces,
    Set<Appliance> appliances) {
  public static final int MOST_DWELLINGS = 40;
  public static final int MOST_STOREYS = 4;
  public static final int MOST_BEDROOMS = 8;
  public static final int MOST_BATHROOMS = 6;
  /** More dwellings than these are a block of flats. */
  private static final int MOST_OF_A_HOUSE = 2;

  public Answers {
    Set<Space> all = EnumSet.noneOf(Space.class);
    all.addAll(spaces);
    appliances.forEach(a -> a.space().ifPresent(all::add));
    spaces = java.util.Collections.unmodifiableSet(all);
    Set<Appliance> ordered = EnumSet.noneOf(Appliance.class);
    ordered.addAll(appliances);
    appliances = java.util.Collections.unmodifiableSet(ordered);
    if (storeys < 1 || storeys > MOST_STOREYS || bedrooms < 0 || bedrooms > MOST_BEDROOMS || bathrooms < 0
        || bathrooms > MOST_BATHROOMS || dwellings < 1 || dwellings > MOST_DWELLINGS) {
      throw new IllegalArgumentException(
          "dwellings " + dwellings + ", storeys " + storeys + ", bedrooms " + bedrooms + ", bathrooms " + bathrooms);
    }
    if (!ServiceSize.of(system, dwellings, work).contains(service)) {
      throw new IllegalArgumentException(service + " for " + dwellings + " on " + system + ", " + work);
    }
  }

  /** With another service. */
  public Answers with(ServiceSize other) {
    return new Answers(title, code, system, work, dwellings, other, floorArea, storeys, bedrooms, bathrooms, spaces, appliances);
  }

  Wiring wiring() {
    return new Wiring(system, code, work);
  }

  boolean isBlock() {
    return dwellings > MOST_OF_A_HOUSE;
  }

  boolean inFeet() {
    return floorArea.contains("ft");
  }

  /** Square meters of a dwelling. */
  double squareMeters() {
    double figure = Double.parseDouble(floorArea.replaceFirst(" ?(m2|m²|ft2|ft²)$", ""));
    return inFeet() ? figure * 0.3048 * 0.3048 : figure;
  }
}
