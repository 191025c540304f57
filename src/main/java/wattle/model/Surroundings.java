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
 * @param fromEdge the least distance from the edge of the framing that it goes through or along; absent where not said
 * @param nailPlated whether steel plates guard it where it is nearer to that edge than the code has it
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
    Optional<Quantity> fromEdge,
    boolean nailPlated,
    boolean underground) {
  public static final Surroundings UNSTATED = new Surroundings(Optional.empty(), Optional.empty(), 1, List.of(), Optional.empty(),
      Optional.empty(), Optional.empty(), Optional.empty(), false, false);

  public Surroundings {
    raceways = List.copyOf(raceways);
  }
}
