package wattle.conductors;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.derivation.Derivation;
import wattle.library.Library;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Raceway;
import wattle.model.Section;
import wattle.model.Service;
import wattle.model.Status;
import wattle.model.Surroundings;
import wattle.model.Wiring;
import wattle.quantity.Quantity;

/**
 * How full the raceways of a house are. A wiring that is conductors in a raceway has that raceway to itself, for each of its
 * sets; where runs pass through a raceway with a name, the conductors of all of them are in that one. What passes through
 * as a cable has no listed diameter, so that the fill of such a raceway is not known.
 */
public final class Raceways {
  private final RacewayFill fill;
  private final Map<String, List<RacewayFill.Conductor>> through = new HashMap<>();
  private final Set<String> withCables = new HashSet<>();

  Raceways(House house, Library library) {
    fill = new RacewayFill(library);
    for (Branch branch : house.branches().values()) {
      for (Section section : branch.sections()) {
        if (section.status() != Status.TO_REMOVE) {
          add(section.surroundings(), section.wiring());
        }
      }
    }
    for (Panel panel : house.panels().values()) {
      panel.feeder().filter(f -> panel.status() != Status.TO_REMOVE).ifPresent(f -> add(f.surroundings(), f.wiring()));
    }
    for (Service service : house.services().values()) {
      service.run().filter(r -> service.status() != Status.TO_REMOVE).ifPresent(r -> add(r.surroundings(), r.wiring()));
    }
  }

  private void add(Surroundings surroundings, Wiring wiring) {
    for (String name : surroundings.raceways()) {
      if (wiring.race().isPresent()) {
        through.computeIfAbsent(name, n -> new ArrayList<>()).addAll(RacewayFill.in(wiring));
      } else {
        withCables.add(name);
      }
    }
  }

  /** Of the raceway that a wiring is in, from box to box of a length; absent for a cable, or where a table lacks something. */
  public Optional<RacewayFill.Fill> of(Wiring wiring, Optional<Quantity> length) {
    return wiring.race().flatMap(race -> fill.of(race, length, RacewayFill.in(wiring)));
  }

  /** Of a raceway with a name; absent for a bored hole, an empty one, or where a table lacks something. */
  public Optional<RacewayFill.Fill> of(Raceway raceway) {
    return withCables.contains(raceway.name())
        ? Optional.empty()
        : raceway.race().flatMap(race -> fill.of(race, raceway.length(), through.getOrDefault(raceway.name(), List.of())));
  }

  /** The smallest raceway of the kind that would hold what a wiring has. */
  public Optional<Derivation> fitting(Wiring wiring, Optional<Quantity> length) {
    return wiring.raceway().flatMap(kind -> fill.smallest(kind, fill.isNipple(length), RacewayFill.in(wiring)));
  }

  /** The smallest raceway of the kind that would hold all that passes through one with a name. */
  public Optional<Derivation> fitting(Raceway raceway) {
    return raceway.race().flatMap(race -> fill.smallest(
        race.kind(), fill.isNipple(raceway.length()), through.getOrDefault(raceway.name(), List.of())));
  }

  /** What may be asked without a house. */
  public RacewayFill fills() {
    return fill;
  }
}
