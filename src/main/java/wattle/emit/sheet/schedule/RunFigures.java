package wattle.emit.sheet.schedule;

import java.util.Optional;
import wattle.conductors.Ampacity;
import wattle.conductors.Conditions;
import wattle.conductors.Conductors;
import wattle.conductors.RacewayFill;
import wattle.derivation.Derivation;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Section;
import wattle.model.Service;
import wattle.model.Stretch;
import wattle.model.Wiring;
import wattle.quantity.Quantity;

/** What each run of a house may carry, as its tables show it. */
public final class RunFigures {
  private final House house;
  private final Conductors conductors;

  public RunFigures(House house, Conductors conductors) {
    this.house = house;
    this.conductors = conductors;
  }

  /**
   * Of one run.
   *
   * @param ampacity by itself; absent where no table has the conductor
   * @param between its terminals; absent where that or the rating of its breaker is not known
   * @param fill part of the area inside its raceway that the conductors take; absent for a cable
   */
  public record Carried(Optional<Derivation> ampacity, Optional<Derivation> between, Optional<Derivation> fill) {}

  /** Of the run of a service. */
  public Carried of(Service service, Stretch run) {
    Optional<Derivation> ampacity = ampacity(conductors.runs().of(run, service.system(), run.wiring().hot()));
    return new Carried(ampacity, Optional.empty(), fill(run.wiring(), run.length()));
  }

  /** Of a feeder. */
  public Carried of(Panel panel, Stretch run) {
    Conditions conditions = conductors.runs().of(run, panel.system(), run.wiring().hot());
    Optional<Derivation> between = supplyRating(panel)
        .flatMap(r -> conductors.ampacities().between(conditions, r, conductors.terminations().of(panel, run, r)));
    return new Carried(ampacity(conditions), between, fill(run.wiring(), run.length()));
  }

  /** Of a run of a branch. */
  public Carried of(Branch branch, Section section) {
    Optional<Conditions> conditions = conductors.runs().of(branch, section, section.wiring().hot());
    Optional<Derivation> rating = branch.hots().stream().findFirst().flatMap(h -> rating(h.breaker()));
    Optional<Derivation> between = conditions.flatMap(
        c -> rating.flatMap(r -> conductors.ampacities().between(c, r, conductors.terminations().of(branch, section, r))));
    return new Carried(conditions.flatMap(this::ampacity), between, fill(section.wiring(), section.length()));
  }

  /** What figures call a run of a branch: {@code hall from P to hall.o1}. */
  public static String nameOf(Branch branch, Section section) {
    return branch.name() + " from " + pointOf(branch, section.from()) + " to " + pointOf(branch, section.to());
  }

  /** Name of the panel or box at a point of a branch. */
  public static String pointOf(Branch branch, int index) {
    return branch.points().get(index).box().orElse(branch.panel().orElse("?"));
  }

  private Optional<Derivation> ampacity(Conditions conditions) {
    return conductors.ampacities().of(conditions).map(Ampacity::allowed);
  }

  private Optional<Derivation> fill(Wiring wiring, Optional<Quantity> length) {
    return conductors.raceways().of(wiring, length).map(RacewayFill.Fill::fill);
  }

  private Optional<Derivation> supplyRating(Panel panel) {
    return panel.supply() instanceof PanelSupply.FromBreaker from ? rating(from.breaker()) : Optional.empty();
  }

  private Optional<Derivation> rating(BreakerId breaker) {
    return house.breaker(breaker).flatMap(Breaker::rating).map(r -> Derivation.stated("rating of the breaker", "I_n", r));
  }
}
