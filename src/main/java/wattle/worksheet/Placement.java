package wattle.worksheet;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.loads.Ends;
import wattle.model.Leg;

/**
 * Where the loads of a calculation are connected.
 *
 * @param ends of loads by name, those that are not known left out
 * @param dwellings the legs that each dwelling has, by name; those that are not known left out
 * @param continuous names of loads that last three hours or more
 * @param drawn by name, what loads draw that are rated for another voltage than they get, such as {@code 3380 VA at the voltage that it
 * gets}
 * @param managed names of loads that an energy management system holds back
 */
public record Placement(
    Map<String, Ends> ends, Map<String, List<Leg>> dwellings, Set<String> continuous, Map<String, String> drawn,
    Set<String> managed) {
  /** Nothing is known, and everything counts as spread evenly. */
  public static final Placement NONE = new Placement(Map.of(), Map.of(), Set.of(), Map.of());

  /** Of loads that nothing holds back. */
  public Placement(Map<String, Ends> ends, Map<String, List<Leg>> dwellings, Set<String> continuous, Map<String, String> drawn) {
    this(ends, dwellings, continuous, drawn, Set.of());
  }

  public Placement {
    ends = Map.copyOf(ends);
    dwellings = Map.copyOf(dwellings);
    continuous = Set.copyOf(continuous);
    drawn = Map.copyOf(drawn);
    managed = Set.copyOf(managed);
  }

  /** Where all of a dwelling is, if it is on one leg or between two. */
  Optional<Ends> ofDwelling(DwellingUnit unit) {
    List<Leg> legs = dwellings.getOrDefault(unit.name(), List.of());
    // Those alike are drawn once, and may be on any legs.
    return unit.alike() > 1 || legs.isEmpty() || legs.size() > 2
        ? Optional.empty()
        : Optional.of(legs.size() == 1 ? Ends.toNeutral(legs.get(0)) : Ends.between(legs.get(0), legs.get(1)));
  }

  /** Where one load is; of several alike that is not known. */
  Optional<Ends> of(ConnectedLoad load) {
    return load.count() > 1 ? Optional.empty() : Optional.ofNullable(ends.get(load.name()));
  }

  /** A line that says which of its loads draw something else than their nameplates say; as it is where none does. */
  Line remarked(Line line) {
    List<String> own = line.devices().stream().filter(drawn::containsKey).toList();
    if (own.isEmpty() || line.result().isEmpty()) {
      return line;
    }
    String more = own.size() > 1 ? " and " + (own.size() - 1) + " more" : "";
    String remark = "By nameplate; " + own.get(0) + " draws " + drawn.get(own.get(0)) + more + ".";
    return new Line(
        line.name(), line.article(), line.connected(), line.factor(), line.result(), line.runningSum(), line.devices(),
        line.remark().isEmpty() ? remark : line.remark() + " " + remark);
  }

  boolean isContinuous(ConnectedLoad load) {
    return continuous.contains(load.name());
  }

  boolean isManaged(ConnectedLoad load) {
    return managed.contains(load.name());
  }
}
