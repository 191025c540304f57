package wattle.model;

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
    return wires.stream().filter(w -> w.purpose() != Wire.Purpose.GROUND).toList();
  }

  public Optional<Wire> ground() {
    return wires.stream().filter(w -> w.purpose() == Wire.Purpose.GROUND).findFirst();
  }

  public Optional<Wire> neutral() {
    return wires.stream().filter(w -> w.purpose() == Wire.Purpose.NEUTRAL).findFirst();
  }

  /** Size and metal of its hots; a wiring always has at least one conductor. */
  public Wire hot() {
    return wires.get(0);
  }
}
