package wattle.library;

import java.util.List;
import java.util.Map;
import java.util.Set;
import wattle.model.Metal;

/**
 * A type of cable, or of single conductor, as the trade knows it.
 *
 * @param metal what its conductors are made of unless the plan says otherwise
 * @param insulationCelsius temperature rating of its insulation
 * @param material of its insulation: {@code thermoplastic}, {@code thermoset} or {@code rubber}, which says how hot it may
 *     become in a short circuit
 * @param ampacityCelsius column of the ampacity table that its use is held to; equals the former where nothing lowers it
 * @param single whether it is a single conductor, to be pulled into a raceway
 * @param ground {@code bare}, {@code insulated} or {@code none}
 * @param hots how many hots it has where the plan gives a size and no count; 0 where a count must be given
 * @param neutral whether it then has a neutral
 * @param colors of its hots, in order
 * @param neutralColor of its neutral
 * @param groundSizes size of its ground for a size of its hots, both as written on plans; a size not listed has a ground
 *     of its own size
 * @param places where it may be used, such as {@code dry}, {@code damp}, {@code wet}, {@code buried}, {@code sunlight}
 */
public record CableKind(
    String name,
    String label,
    Metal metal,
    double insulationCelsius,
    String material,
    double ampacityCelsius,
    boolean single,
    String ground,
    int hots,
    boolean neutral,
    List<String> colors,
    String neutralColor,
    Map<String, String> groundSizes,
    Set<String> places) {
  public CableKind {
    colors = List.copyOf(colors);
    groundSizes = Map.copyOf(groundSizes);
    places = Set.copyOf(places);
  }
}
