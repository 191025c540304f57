package wattle.conductors;

import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Stream;
import wattle.derivation.Derivation;
import wattle.library.CableKind;
import wattle.library.Library;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Raceway;
import wattle.model.Section;
import wattle.model.Service;
import wattle.model.Status;
import wattle.model.Stretch;
import wattle.model.SupplySystem;
import wattle.model.Surroundings;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * How each run of a house is laid: in what air, and with how many current-carrying conductors together. A run that says
 * {@code bundled 4} lies with three more of its kind; in a named raceway or bored hole all runs that pass through it are
 * counted. Where a run does both, the greater number holds, and the hottest air that it passes.
 */
public final class RunConditions {
  /** The air where the plan does not say; the ambient of the ampacity tables. */
  private static final Derivation USUAL_AMBIENT = Derivation.assumed("ambient", "T_a", Quantity.of(30, Units.CELSIUS));

  private final House house;
  private final Library library;
  private final Map<String, Integer> together = new HashMap<>();
  private final Set<String> nipples = new HashSet<>();
  /** For the usual run, which lies alone: most of a house is such, and need not be derived again and again. */
  private final Map<Integer, Derivation> alone = new ConcurrentHashMap<>();

  public RunConditions(House house, Library library) {
    this.house = house;
    this.library = library;
    RacewayFill fill = new RacewayFill(library);
    for (Raceway raceway : house.raceways().values()) {
      if (fill.isNipple(raceway.length())) {
        nipples.add(raceway.name());
      }
    }
    for (Branch branch : house.branches().values()) {
      for (Section section : branch.sections()) {
        if (section.status() != Status.TO_REMOVE && !section.surroundings().raceways().isEmpty()) {
          systemOf(branch).ifPresent(s -> add(section.surroundings(), Carrying.in(section, branch, s)));
        }
      }
    }
    for (Panel panel : house.panels().values()) {
      panel.feeder().ifPresent(f -> add(f.surroundings(), Carrying.in(f.wiring(), panel.system())));
    }
    for (Service service : house.services().values()) {
      service.run().ifPresent(r -> add(r.surroundings(), Carrying.in(r.wiring(), service.system())));
    }
  }

  private void add(Surroundings surroundings, int carrying) {
    surroundings.raceways().forEach(name -> together.merge(name, carrying, Integer::sum));
  }

  private Optional<SupplySystem> systemOf(Branch branch) {
    return branch.panel().map(house.panels()::get).map(Panel::system);
  }

  /** Of one wire of a run; absent where the branch starts at no panel that is known. */
  public Optional<Conditions> of(Branch branch, Section section, Wire wire) {
    return systemOf(branch)
        .map(s -> conditions(section.wiring(), section.surroundings(), Carrying.in(section, branch, s), wire));
  }

  /** Of one wire of a feeder or a service run. */
  public Conditions of(Stretch stretch, SupplySystem system, Wire wire) {
    return conditions(stretch.wiring(), stretch.surroundings(), Carrying.in(stretch.wiring(), system), wire);
  }

  private Conditions conditions(Wiring wiring, Surroundings surroundings, int carrying, Wire wire) {
    double insulation = wiring.insulationCelsius();
    double use = library.cable(wiring.type()).map(CableKind::ampacityCelsius).orElse(insulation);
    return new Conditions(
        wire.size(), wire.metal(), insulation, Math.min(use, insulation), ambient(surroundings),
        together(surroundings, carrying), wiring.sets());
  }

  private Derivation ambient(Surroundings surroundings) {
    if (surroundings.ambient().isEmpty() && surroundings.raceways().isEmpty()) {
      return USUAL_AMBIENT;
    }
    Stream<Quantity> raceways = racewaysOf(surroundings, r -> r.surroundings().ambient());
    return Stream.concat(surroundings.ambient().stream(), raceways)
        .max(Comparator.comparingDouble(Quantity::si))
        .map(a -> Derivation.stated("ambient", "T_a", a))
        .orElse(USUAL_AMBIENT);
  }

  private Derivation together(Surroundings surroundings, int carrying) {
    if (surroundings.bundledWith() <= 1 && surroundings.raceways().isEmpty()) {
      return alone.computeIfAbsent(carrying,
          n -> count("current-carrying conductors of the run", "n_r", n).named("conductors together", "n"));
    }
    Derivation own = count("current-carrying conductors of the run", "n_r", carrying);
    Derivation most = own.named("conductors together", "n");
    if (surroundings.bundledWith() > 1) {
      Derivation cables = count("cables together", "c", surroundings.bundledWith());
      most = Derivation.computed(
          "conductors together", "n", "n_r × c", carrying * (double) surroundings.bundledWith(), Units.ONE, own,
          cables);
    }
    for (String raceway : surroundings.raceways()) {
      // A nipple is too short to warm up.
      int sum = nipples.contains(raceway) ? carrying : together.getOrDefault(raceway, carrying);
      if (sum > most.si()) {
        most = count("conductors together", "n", sum)
            .remarking("All current-carrying conductors that pass through " + raceway + ".");
      }
    }
    return most;
  }

  private <T> Stream<T> racewaysOf(Surroundings surroundings, Function<Raceway, Optional<T>> property) {
    List<String> names = surroundings.raceways();
    return names.stream().map(house.raceways()::get).filter(r -> r != null).flatMap(r -> property.apply(r).stream());
  }

  private static Derivation count(String name, String symbol, int number) {
    return Derivation.counted(name, symbol, number);
  }

  /** What the insulation of a wiring is made of, as {@link ShortCircuit#k} asks. */
  public String insulationOf(Wiring wiring) {
    return library.cable(wiring.type()).map(CableKind::material).orElse("thermoplastic");
  }
}
