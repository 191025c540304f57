package wattle.worksheet;

import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;

/** The standard method of NFPA 70 Article 220, for one dwelling and for several, services and feeders. */
final class StandardMethod implements Calculation {
  private final boolean several;

  StandardMethod(boolean several) {
    this.several = several;
  }

  @Override
  public List<Objection> objections(Inputs inputs, Figures figures) {
    return several ? Conditions.several(inputs, 2) : Conditions.single(inputs);
  }

  @Override
  public Worksheet calculate(Method method, Inputs inputs, Figures figures) {
    Tally load = new Tally();
    Tally neutral = new Tally();
    add(inputs, figures, load, neutral);
    boolean least = inputs.scope() == Inputs.Scope.SERVICE && inputs.dwellingCount() == 1;
    Optional<Derivation> leastRating = least ? Optional.of(figures.limit("service-least")) : Optional.empty();
    return Capacity.of(method, inputs, figures, load, neutral, leastRating);
  }

  static void add(Inputs inputs, Figures figures, Tally load, Tally neutral) {
    load.partAllByConnection();
    neutral.partAllByConnection();
    new GeneralLoad(inputs, figures).add(load, neutral);
    CommonOutlets.add(inputs, figures, load, neutral);
    Cooking cooking = new Cooking(inputs, figures);
    Appliances appliances = new Appliances(inputs, figures);
    appliances.addFixed(load, neutral, cooking.tooSmall());
    cooking.add(load, neutral);
    appliances.addDryers(load, neutral);
    Climate climate = new Climate(inputs, figures);
    climate.add(load, neutral);
    appliances.addVehicles(load, neutral);
    appliances.addMotors(load, neutral);
    climate.addLargestMotor(load, neutral);
    new FarmLoads(inputs, figures).add(load, neutral);
  }

  /** The neutral by the standard method, which the optional methods take too: NFPA 70 220.61. */
  static Tally neutral(Inputs inputs, Figures figures) {
    Tally neutral = new Tally();
    add(inputs, figures, new Tally(), neutral);
    return neutral;
  }
}
