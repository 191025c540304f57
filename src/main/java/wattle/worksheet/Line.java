package wattle.worksheet;

import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;

/**
 * A line of a worksheet.
 *
 * @param article of the code
 * @param connected load before the factor; absent where there is none to show
 * @param factor absent where the result is no plain product
 * @param result what is added; absent for a line that only lists what a later line counts, or what is left out
 * @param runningSum volt-amperes up to and with this line
 * @param devices names of the elements that made it
 * @param remark may be empty
 */
public record Line(
    String name,
    String article,
    Optional<Derivation> connected,
    Optional<Derivation> factor,
    Optional<Derivation> result,
    double runningSum,
    List<String> devices,
    String remark) {
  public Line {
    devices = List.copyOf(devices);
  }
}
