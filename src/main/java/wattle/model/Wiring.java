package wattle.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a run is made with: a cable, or single conductors in a raceway.
 *
 * @param text as the plan wrote it, such as {@code 12/3 NM-B}
 * @param type name of the cable type or of the conductors' insulation, as the library knows it; empty where none was said
 * @param raceway kind of the raceway, such as {@code EMT}; absent for a cable
 * @param insulationCelsius temperature rating of the insulation
 * @param wires hots first, then the neutral, then the ground
 */
public record Wiring(
    String text, String type, Optional<String> raceway, double insulationCelsius, List<Wire> wires, Origin origin) {
  public Wiring {
    wires = List.copyOf(wires);
  }

  /** Insulated conductors that may carry current in service: all but the ground. */
  public List<Wire> insulated() {
    List<Wire> insulated = new ArrayList<>(wires.size());
    for (Wire wire : wires) {
      if (wire.purpose() != Wire.Purpose.GROUND) {
        insulated.add(wire);
      }
    }
    return insulated;
  }

  public Optional<Wire> ground() {
    return first(Wire.Purpose.GROUND);
  }

  public Optional<Wire> neutral() {
    return first(Wire.Purpose.NEUTRAL);
  }

  // By loops, here and above: every run of a house is asked, again and again.
  private Optional<Wire> first(Wire.Purpose purpose) {
    for (Wire wire : wires) {
      if (wire.purpose() == purpose) {
        return Optional.of(wire);
      }
    }
    return Optional.empty();
  }

  /** Size and metal of its hots; a wiring always has at least one conductor. */
  public Wire hot() {
    return wires.get(0);
  }
}
