package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wattle.derivation.Derivation;
import wattle.model.LoadClass;

/** Load added to what was measured, by NFPA 70 220.87: the peak of a year and a quarter more, and the new loads in full. */
final class MeasuredMethod implements Calculation {
  @Override
  public List<Objection> objections(Inputs inputs, Figures figures) {
    return inputs.measuredPeak().isPresent()
        ? Stream.of(Conditions.areas(inputs), Conditions.standing(inputs)).flatMap(List::stream).toList()
        : List.of(peakMissing(inputs));
  }

  static Objection peakMissing(Inputs inputs) {
    return Objection.error(
        "peak-demand-missing", inputs.name(), "the measured peak of '" + inputs.name() + "' is not stated",
        "This method starts from the highest demand of a year, from a meter or the utility.",
        "write peak-demand 9.6 kW, with the true figure, in the service block");
  }

  @Override
  public Worksheet calculate(Method method, Inputs inputs, Figures figures) {
    Tally load = new Tally();
    Derivation peak = Derivation.stated("measured peak", "P", inputs.measuredPeak().orElseThrow());
    load.add("measured peak", peak, figures.limit("measured-peak"), List.of());
    List<ConnectedLoad> added = added(inputs, figures);
    if (!added.isEmpty()) {
      Derivation connected = Sums.ofLoads("loads that are added", added);
      load.add("loads that are added", connected, Optional.empty(), connected, Sums.names(added), "");
    }
    return Capacity.of(
        method, inputs, figures, load, StandardMethod.neutral(inputs, figures), Optional.empty());
  }

  private static List<ConnectedLoad> added(Inputs inputs, Figures figures) {
    List<ConnectedLoad> added = new ArrayList<>();
    for (LoadClass loadClass : LoadClass.values()) {
      List<ConnectedLoad> loads = inputs.all(loadClass).stream().filter(ConnectedLoad::added).toList();
      if (loadClass == LoadClass.VEHICLE_CHARGING) {
        loads = Appliances.atLeast(loads, figures.limit("vehicle-least"));
      }
      if (loadClass != LoadClass.SOURCE) {
        added.addAll(loads);
      }
    }
    inputs.farm().forEach(f -> f.loads().stream().filter(ConnectedLoad::added).forEach(added::add));
    return added;
  }
}
