package wattle.worksheet;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.model.Leg;

/**
 * A finished load calculation.
 *
 * @param method how it was come by
 * @param name the service or panel
 * @param lines of the load on the legs
 * @param neutralLines of the load on the neutral
 * @param total calculated load in volt-amperes
 * @param legs amperes of each leg
 * @param current of the leg that carries most, in amperes
 * @param neutralTotal load of the neutral in volt-amperes
 * @param neutralCurrent in amperes
 * @param nextRating least standard rating that will do; absent where none is as large
 * @param rating of the service or feeder as the plan has it; absent where it has none
 * @param continuous the part of the current that lasts three hours or more, in amperes of the leg with most of it, at 100 %; 0 where none
 *     does or the method takes no account of it
 * @param sized what conductors and overcurrent devices are sized for, in amperes: the current of the leg that needs most with its
 *     continuous loads at 125 %; equal to the current where none are
 * @param spare amperes that are left of the rating by that, below 0 where the load is larger; absent with the rating
 */
public record Worksheet(
    Method method,
    String name,
    Inputs.Scope scope,
    List<Line> lines,
    List<Line> neutralLines,
    Derivation total,
    Map<Leg, Derivation> legs,
    Derivation current,
    Derivation neutralTotal,
    Derivation neutralCurrent,
    Optional<Derivation> nextRating,
    Optional<Derivation> rating,
    Derivation continuous,
    Derivation sized,
    Optional<Derivation> spare) {
  public Worksheet {
    lines = List.copyOf(lines);
    neutralLines = List.copyOf(neutralLines);
    legs = Collections.unmodifiableMap(new EnumMap<>(legs));
  }

  /** The same in watts. */
  Worksheet inWatts() {
    Watts watts = new Watts();
    Map<Leg, Derivation> shown = new EnumMap<>(Leg.class);
    legs.forEach((leg, amperes) -> shown.put(leg, watts.of(amperes)));
    return new Worksheet(
        method, name, scope, lines.stream().map(watts::of).toList(), neutralLines.stream().map(watts::of).toList(), watts.of(total), shown,
        watts.of(current), watts.of(neutralTotal), watts.of(neutralCurrent), watts.of(nextRating), rating, watts.of(continuous),
        watts.of(sized), watts.of(spare));
  }
}
