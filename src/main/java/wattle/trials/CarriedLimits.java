package wattle.trials;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import wattle.conductors.Ampacities;
import wattle.conductors.RunConditions;
import wattle.conductors.Terminations;
import wattle.derivation.Derivation;
import wattle.library.Library;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Section;
import wattle.model.Service;
import wattle.model.Stretch;
import wattle.model.Wire;

/** What each conductor of a house may carry where it is laid, and between the terminals that it ends at. */
final class CarriedLimits {
  private final House house;
  private final RunConditions runs;
  private final Ampacities ampacities;
  private final Terminations terminations;
  private final Map<Key, Optional<Derivation>> known = new ConcurrentHashMap<>();

  /** What names a conductor in every scenario of a house. */
  private record Key(String run, Optional<String> branch, String name, Wire wire) {}

  CarriedLimits(House house, Library library) {
    this.house = house;
    runs = new RunConditions(house, library);
    ampacities = new Ampacities(library);
    terminations = new Terminations(house, ampacities);
  }

  /** Absent where the code has no figure for it, or no rating is known by which its terminals are held. */
  Optional<Derivation> of(HouseNetwork.Conductor conductor) {
    return known.computeIfAbsent(new Key(conductor.run(), conductor.branch(), conductor.name(), conductor.impedance().wire()),
        k -> find(conductor));
  }

  private Optional<Derivation> find(HouseNetwork.Conductor conductor) {
    if (conductor.branch().isPresent()) {
      Branch branch = house.branches().get(conductor.branch().get());
      return branch.sections().stream().filter(s -> s.to() == conductor.point()).findFirst().flatMap(s -> of(branch, s, conductor));
    }
    return conductor.panel().isPresent()
        ? feeder(house.panels().get(conductor.panel().get()), conductor)
        : house.services().values().stream().filter(s -> conductor.run().equals("service " + s.name())).findFirst()
            .flatMap(s -> service(s, conductor));
  }

  private Optional<Derivation> of(Branch branch, Section section, HouseNetwork.Conductor conductor) {
    Optional<Derivation> rating = Ratings.of(branch, house).map(r -> Derivation.stated("rating of the breaker", "I_n", r));
    return runs.of(branch, section, conductor.impedance().wire())
        .flatMap(c -> rating.flatMap(r -> ampacities.between(c, r, terminations.of(branch, section, r))));
  }

  private Optional<Derivation> feeder(Panel panel, HouseNetwork.Conductor conductor) {
    Optional<Stretch> run = panel.feeder();
    Optional<Derivation> rating = Ratings.ofFeeder(panel, house).map(r -> Derivation.stated("rating of the feeder", "I_n", r));
    return run.flatMap(f -> rating.flatMap(
        r -> ampacities.between(runs.of(f, panel.system(), conductor.impedance().wire()), r, terminations.of(panel, f, r))));
  }

  /** The terminals at a meter are the supplier's: the run alone counts. */
  private Optional<Derivation> service(Service service, HouseNetwork.Conductor conductor) {
    return service.run()
        .flatMap(run -> ampacities.of(runs.of(run, service.system(), conductor.impedance().wire())).map(a -> a.allowed()));
  }
}
