package wattle.bind;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import wattle.model.Device;
import wattle.model.Load;
import wattle.model.Status;
import wattle.quantity.Quantity;

/**
 * What is assumed of loads stated in watts whose power factor the plan does not state: that of their kind. Circuits, legs and trials take
 * the watts divided by it; load calculations count the watts themselves.
 */
final class UnstatedPowerFactors {
  /** More names than these are not read. */
  private static final int NAMED = 3;

  private UnstatedPowerFactors() {}

  /** One line for each power factor. */
  static List<String> assumptions(Collection<Device> devices) {
    Map<Double, List<String>> byFactor = new TreeMap<>();
    for (Device device : devices) {
      if (device.status() != Status.TO_REMOVE && !device.facts().containsKey("power-factor")) {
        device.loads().stream().filter(Load::isInWatts).mapToDouble(Load::powerFactor).filter(f -> f < 1).distinct()
            .forEach(f -> byFactor.computeIfAbsent(f, k -> new ArrayList<>()).add(device.name()));
      }
    }
    return byFactor.entrySet().stream().map(e -> line(e.getKey(), e.getValue())).toList();
  }

  private static String line(double factor, List<String> names) {
    String first = String.join(", ", names.subList(0, Math.min(NAMED, names.size())));
    String more = names.size() > NAMED ? " and " + (names.size() - NAMED) + " more" : "";
    String shown = Quantity.plain(factor, 3);
    return first + more + (names.size() == 1 ? " has" : " have") + " the power factor of the kind, " + shown
        + "; circuits carry the watts divided by it, load calculations count the watts";
  }
}
