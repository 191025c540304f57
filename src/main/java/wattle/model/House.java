package wattle.model;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import wattle.finding.Source;

/**
 * A whole plan, bound: every thing in the order written, and found by name.
 *
 * @param codes names of the code packs it asks for, in order
 * @param assumed what was not said and was taken as usual, in reading order
 */
public record House(
    Source source,
    Optional<String> title,
    Optional<String> revision,
    List<String> codes,
    Map<String, Dwelling> dwellings,
    Map<String, Service> services,
    Map<String, Panel> panels,
    Map<String, Branch> branches,
    Map<String, Raceway> raceways,
    Map<String, Room> rooms,
    Map<String, Box> boxes,
    Map<String, Device> devices,
    Map<String, Trial> trials,
    List<Expectation> expectations,
    List<Silence> silences,
    List<String> assumed) {
  public House {
    codes = List.copyOf(codes);
    dwellings = ordered(dwellings);
    services = ordered(services);
    panels = ordered(panels);
    branches = ordered(branches);
    raceways = ordered(raceways);
    rooms = ordered(rooms);
    boxes = ordered(boxes);
    devices = ordered(devices);
    trials = ordered(trials);
    expectations = List.copyOf(expectations);
    silences = List.copyOf(silences);
    assumed = List.copyOf(assumed);
  }

  // Map.copyOf would lose the order in which the plan was written.
  private static <T> Map<String, T> ordered(Map<String, T> map) {
    return java.util.Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }

  /** Index by name, in order; of two with one name the first stays. */
  public static <T> Map<String, T> byName(List<T> things, Function<T, String> name) {
    Map<String, T> map = new LinkedHashMap<>();
    for (T thing : things) {
      map.putIfAbsent(name.apply(thing), thing);
    }
    return map;
  }

  /** The first dwelling, which is the only one in a plan of one house. */
  public Optional<Dwelling> dwelling() {
    return dwellings.values().stream().findFirst();
  }

  /** The breaker with this place. */
  public Optional<Breaker> breaker(BreakerId id) {
    return Optional.ofNullable(panels.get(id.panel()))
        .flatMap(p -> p.breakers().stream().filter(b -> b.id().equals(id)).findFirst());
  }

  /** The service that a panel hangs on in the end; absent where its feeders lead nowhere or round in a circle. */
  public Optional<Service> serviceOf(Panel panel) {
    Panel at = panel;
    for (int steps = 0; steps <= panels.size(); steps++) {
      if (at.supply() instanceof PanelSupply.FromService from) {
        return Optional.ofNullable(services.get(from.service()));
      }
      if (!(at.supply() instanceof PanelSupply.FromBreaker from) || !panels.containsKey(from.breaker().panel())) {
        return Optional.empty();
      }
      at = panels.get(from.breaker().panel());
    }
    return Optional.empty();
  }
}
