package wattle.trials;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import wattle.model.Branch;
import wattle.model.Event;
import wattle.model.House;

/**
 * What events can be about at a point of a branch, by the same reading that trials go by.
 *
 * @param conductors that arrive there and have a name in the notation
 * @param name by which events find the point: that of the box, or of a device where the box is first met on another branch;
 *     absent where neither leads there
 */
public record Reach(List<Event.Conductor> conductors, Optional<String> name) {
  public Reach {
    conductors = List.copyOf(conductors);
  }

  /** @param point of the branch; at the panel nothing arrives */
  public static Reach of(House house, Branch branch, int point) {
    Place place = new Place(branch, point);
    List<Event.Conductor> conductors = Arrays.stream(Event.Conductor.values())
        .filter(c -> c != Event.Conductor.HOT_3 && place.role(c).isPresent()).toList();
    List<String> names = new ArrayList<>();
    branch.points().get(point).box().ifPresent(names::add);
    names.addAll(branch.points().get(point).devices());
    return new Reach(conductors, names.stream()
        .filter(n -> Place.of(house, n).filter(p -> p.branch().equals(branch) && p.point() == point).isPresent()).findFirst());
  }
}
