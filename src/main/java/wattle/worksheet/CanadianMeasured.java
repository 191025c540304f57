package wattle.worksheet;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wattle.derivation.Derivation;
import wattle.model.LoadClass;

/**
 * Load added to an existing dwelling by CSA C22.1 8-106 8): the highest demand of the last twelve months as measured, and the new loads.
 * The rule puts the sum under 8-104 5) and 6), so that a rating that is not marked for more carries 80 % of it.
 */
final class CanadianMeasured implements Calculation {
  @Override
  public List<Objection> objections(Inputs inputs, Figures figures) {
    return inputs.measuredPeak().isPresent()
        ? Stream.of(Conditions.single(inputs), Conditions.standing(inputs)).flatMap(List::stream).toList()
        : List.of(MeasuredMethod.peakMissing(inputs));
  }

  @Override
  public Worksheet calculate(Method method, Inputs inputs, Figures figures) {
    Tally load = new Tally();
    Derivation peak = Derivation.stated("measured peak", "P", inputs.measuredPeak().orElseThrow());
    load.add(
        "measured peak", peak,
        figures.limit("measured-peak").remarking("Averages of an hour are below the true peak: the authority says how to correct them."),
        List.of());
    List<ConnectedLoad> added = Stream.of(LoadClass.values())
        .filter(c -> c != LoadClass.SOURCE)
        .flatMap(c -> inputs.all(c).stream())
        .filter(l -> l.added() && l.total() > 0)
        .toList();
    List<ConnectedLoad> managed = added.stream().filter(inputs.placement()::isManaged).toList();
    List<ConnectedLoad> counted = added.stream().filter(l -> !managed.contains(l)).toList();
    if (!counted.isEmpty()) {
      Derivation connected = Sums.ofLoads("loads that are added", counted);
      load.add("loads that are added", connected, Optional.empty(), connected, Sums.names(counted), "");
    }
    if (!managed.isEmpty()) {
      load.leaveOut(
          "added loads under energy management, left out", Sums.ofLoads("managed loads", managed), Sums.names(managed), "8-106 11)",
          "A system that watches the service holds them back.");
    }
    Tally neutral = new Tally();
    CanadianSingle.add(inputs, figures, new Tally(), neutral);
    return Capacity.of(method, inputs, figures, load, neutral, Optional.empty());
  }
}
