package wattle.rules;

import wattle.quantity.UnitSystem;

/**
 * The words by which a plan would state a fact.
 *
 * @param metric in a plan that is written in meters
 * @param customary in one that is written in feet
 */
record Wording(String metric, String customary) {
  String in(UnitSystem units) {
    return units == UnitSystem.CUSTOMARY ? customary : metric;
  }
}
