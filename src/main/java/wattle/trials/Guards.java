package wattle.trials;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;

/** What opens by itself on the way to a place in a trial. */
final class Guards {
  private final TrialResult result;
  private final House house;

  Guards(TrialResult result) {
    this.result = result;
    house = result.house();
  }

  /**
   * What opens on the way to a box, device or panel, and when; {@code nothing opens} where none does.
   *
   * @param at name of the box, device or panel
   */
  String opens(String at) {
    List<String> all = opening(at);
    return all.isEmpty() ? "nothing opens" : String.join("; ", all);
  }

  /** Whether something opens on the way to a place, sooner or later, without waiting for a person's hand. */
  boolean opensUntouched(String at) {
    Set<String> way = way(at);
    return result.overcurrents().stream().anyMatch(o -> way.contains(o.feeds()) && o.opens().flatMap(t -> t.most()).isPresent())
        || result.allProtections().stream()
            .anyMatch(p -> guards(p, at, way) && p.verdict() == ProtectionReading.Verdict.TRIPS);
  }

  private List<String> opening(String at) {
    Set<String> way = way(at);
    List<String> all = new ArrayList<>();
    for (TrialResult.OvercurrentReading o : result.overcurrents()) {
      if (way.contains(o.feeds())) {
        all.add(o.name()
            + o.opens().map(t -> t.most().isPresent() ? " opens in " + t.text() : " carries more than its rating and may not open")
                .orElse(" opens by its maker's curve"));
      }
    }
    for (ProtectionReading p : result.allProtections()) {
      if (guards(p, at, way) && p.verdict() != ProtectionReading.Verdict.HOLDS && p.verdict() != ProtectionReading.Verdict.UNKNOWN) {
        all.add(p.kind() + " protection of " + p.name() + " " + p.verdict().words());
      }
    }
    return all;
  }

  private boolean guards(ProtectionReading p, String at, Set<String> way) {
    return way.contains(p.guards()) || p.guards().equals(at)
        || Place.of(house, p.name()).filter(there -> way.contains(there.branch().name()) && isBefore(there, at)).isPresent();
  }

  /** Whether a place is on the way from the panel to another one of the same branch. */
  private boolean isBefore(Place there, String at) {
    Optional<Place> here = Place.of(house, at).filter(p -> p.branch().name().equals(there.branch().name()));
    while (here.isPresent()) {
      if (here.get().point() == there.point()) {
        return true;
      }
      here = here.get().arriving().map(s -> new Place(there.branch(), s.from()));
    }
    return false;
  }

  /** The branch of a place, its panel, and all panels before it. */
  private Set<String> way(String at) {
    Set<String> way = new HashSet<>();
    Optional<String> panel = house.panels().containsKey(at) ? Optional.of(at) : Optional.empty();
    if (panel.isEmpty()) {
      Optional<Place> place = Place.of(house, at);
      place.ifPresent(p -> way.add(p.branch().name()));
      panel = place.flatMap(p -> p.branch().panel());
    }
    while (panel.isPresent() && way.add(panel.get())) {
      panel = Optional.ofNullable(house.panels().get(panel.get())).flatMap(Guards::before);
    }
    return way;
  }

  private static Optional<String> before(Panel panel) {
    return panel.supply() instanceof PanelSupply.FromBreaker from ? Optional.of(from.breaker().panel()) : Optional.empty();
  }
}
