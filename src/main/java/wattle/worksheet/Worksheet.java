package wattle.worksheet;

import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;

/**
 * A finished load calculation.
 *
 * @param method how it was come by
 * @param name the service or panel
 * @param lines of the load on the legs
 * @param neutralLines of the load on the neutral
 * @param total calculated load in volt-amperes
 * @param current of the legs, in amperes
 * @param neutralTotal load of the neutral in volt-amperes
 * @param neutralCurrent in amperes
 * @param nextRating least standard rating that will do; absent where none is as large
 * @param rating of the service or feeder as the plan has it; absent where it has none
 * @param sized what conductors and overcurrent devices are sized for, in amperes: the current of the legs, with continuous loads outside
 *     the dwellings at 125 %
 * @param spare amperes that are left of the rating by that, below 0 where the load is larger; absent with the rating
 */
public record Worksheet(
    Method method,
    String name,
    Inputs.Scope scope,
    List<Line> lines,
    List<Line> neutralLines,
    Derivation total,
    Derivation current,
    Derivation neutralTotal,
    Derivation neutralCurrent,
    Optional<Derivation> nextRating,
    Optional<Derivation> rating,
    Derivation sized,
    Optional<Derivation> spare) {
  public Worksheet {
    lines = List.copyOf(lines);
    neutralLines = List.copyOf(neutralLines);
  }
}
