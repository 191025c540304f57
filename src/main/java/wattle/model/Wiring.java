package wattle.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.quantity.WireSize;

/**
 * What a run is made with: a cable, or single conductors in a raceway.
 *
 * @param text as the plan wrote it, such as {@code 12/3 NM-B}
 * @param type name of the cable type or of the conductors' insulation, as the library knows it; empty where none was said
 * @param race kind and trade size of the raceway; absent for a cable
 * @param insulationCelsius temperature rating of the insulation
 * @param wires hots first, then the neutral, then the ground; of one set where several run in parallel
 * @param sets how many alike run in parallel, joined at both ends, each in a raceway or sheath of its own; usually 1
 */
public record Wiring(
    String text, String type, Optional<Race> race, double insulationCelsius, List<Wire> wires, int sets, Origin origin) {
  public Wiring {
    wires = List.copyOf(wires);
  }

  /** Of one set. */
  public Wiring(String text, String type, Optional<Race> race, double insulationCelsius, List<Wire> wires, Origin origin) {
    this(text, type, race, insulationCelsius, wires, 1, origin);
  }

  /** Kind of the raceway, such as {@code EMT}; absent for a cable. */
  public Optional<String> raceway() {
    return race.map(Race::kind);
  }

  /** Insulated conductors of one set that may carry current in service: all but the ground. */
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

  /** Whether the plan calls a conductor of it neutral, rather than leaving that to the last of several alike. */
  public boolean namesNeutral() {
    return List.of(text.split("[ ,]+")).contains("neutral");
  }

  /** The size that has as much metal as the hots of all sets of one leg: what electrode and bonding conductors are sized by. */
  public WireSize wholeSize() {
    WireSize one = hot().size();
    if (sets == 1) {
      return one;
    }
    return one.kind() == WireSize.Kind.SQUARE_MILLIMETERS
        ? new WireSize(one.kind(), sets * one.number())
        : new WireSize(WireSize.Kind.KCMIL, Math.round(10 * sets * one.areaSquareMeters() / WireSize.SQUARE_METERS_OF_KCMIL) / 10.0);
  }

  /** Size and metal of its hots; a wiring always has at least one conductor. */
  public Wire hot() {
    return wires.get(0);
  }
}
