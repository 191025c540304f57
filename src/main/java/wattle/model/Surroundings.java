package wattle.model;

import java.util.List;
import java.util.Optional;
import wattle.quantity.Quantity;

/**
 * Where a run goes.
 *
 * @param place such as {@code attic}; absent where none was said
 * @param ambient the air around it; absent where none was said, and 30 °C is then listed as assumed
 * @param bundledWith how many cables lie together with this one counted; 1 for a cable by itself
 * @param raceways named raceways or bored holes it passes through, in order
 * @param buried depth in the ground; empty where it is not buried or no depth was said
 * @param supported the greatest distance between two of its supports; absent where not said
 * @param held the greatest distance from a box to the support nearest it; absent where not said
 * @param underground whether it is buried at all
 */
public record Surroundings(
    Optional<String> place,
    Optional<Quantity> ambient,
    int bundledWith,
    List<String> raceways,
    Optional<Quantity> buried,
    Optional<Quantity> supported,
    Optional<Quantity> held,
    boolean underground) {
  public static final Surroundings UNSTATED = new Surroundings(Optional.empty(), Optional.empty(), 1, List.of(), Optional.empty(),
      Optional.empty(), Optional.empty(), false);

  public Surroundings {
    raceways = List.copyOf(raceways);
  }
}
