package wattle.faults;

import java.util.List;
import java.util.Optional;

/**
 * A place and what a fault there can drive.
 *
 * @param place name of the panel or box
 * @param faults one for each kind that can happen there; empty where a length or the source is not known
 */
public record FaultPoint(String place, List<Fault> faults) {
  public FaultPoint {
    faults = List.copyOf(faults);
  }

  public Optional<Fault> fault(FaultKind kind) {
    return faults.stream().filter(f -> f.kind() == kind).findFirst();
  }

  /** Amperes of the worst fault here; 0 where none is known. */
  public double mostAmperes() {
    return faults.stream().mapToDouble(Fault::mostAmperes).max().orElse(0);
  }
}
