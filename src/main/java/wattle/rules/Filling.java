package wattle.rules;

import java.util.List;
import java.util.Map;
import wattle.quantity.Quantity;

/**
 * What the holes of a message are filled from.
 *
 * @param named what the rule has named, each in its place
 * @param figures what was filled in, by the names of the holes, with all digits; filling adds to it
 * @param compared the figures that the rule compares: one that breaks a limit is not rounded to the limit
 */
record Filling(Facts facts, Object[] named, Map<String, String> figures, List<Quantity> compared) {}
