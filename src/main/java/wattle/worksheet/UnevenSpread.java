package wattle.worksheet;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import wattle.finding.Citation;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Span;
import wattle.loads.Ends;
import wattle.model.SupplySystem;

/** Dwellings that are spread over three phases so that their ranges and dryers count for more than they need to. */
final class UnevenSpread {
  static final String NAME = "dwellings-unevenly-spread";
  /** Volt-amperes below which another spread is worth nothing. */
  private static final double WORTH = 500;

  private UnevenSpread() {}

  static Optional<Finding> finding(HouseInputs.Read read, HouseWorksheets worksheets, Span place) {
    Inputs inputs = read.inputs();
    if (inputs.system().kind() != SupplySystem.Kind.THREE_PHASE_WYE || inputs.dwellings().stream().anyMatch(u -> u.alike() > 1)
        || read.objections().stream().anyMatch(o -> o.severity() == Severity.ERROR)) {
      return Optional.empty();
    }
    Map<Ends, Integer> spread = new EnumMap<>(Ends.class);
    Stream.of(Ends.A_B, Ends.B_C, Ends.C_A).forEach(e -> spread.put(e, 0));
    inputs.dwellings().stream().flatMap(u -> inputs.placement().ofDwelling(u).stream())
        .filter(e -> e.legs().size() == 2)
        .forEach(e -> spread.merge(e, 1, Integer::sum));
    int count = spread.values().stream().mapToInt(Integer::intValue).sum();
    int most = spread.values().stream().mapToInt(Integer::intValue).max().orElse(0);
    int even = (count + 2) / 3;
    Optional<Worksheet> wired = worksheets.least(read);
    Optional<Worksheet> other = worksheets.least(new HouseInputs.Read(inputs.evenly(), read.objections()));
    if (most <= even || wired.isEmpty() || other.isEmpty() || !wired.get().method().equals(other.get().method())) {
      return Optional.empty();
    }
    double saved = wired.get().total().si() - other.get().total().si();
    if (saved < WORTH) {
      return Optional.empty();
    }
    Ends fullest = spread.entrySet().stream().max(Comparator.comparingInt(Map.Entry::getValue)).orElseThrow().getKey();
    List<String> parts = spread.entrySet().stream().map(e -> e.getValue() + " between " + legs(e.getKey())).toList();
    String headline = "dwellings on '" + inputs.name() + "' are spread " + String.join(", ", parts);
    return Optional.of(
        Finding.advice(NAME, headline)
            .at(place, "at most " + even + " between any two legs is enough")
            .because(
                "Ranges and dryers are figured at twice the largest number between any two phases, on all three: as wired the "
                    + "calculated load is "
                    + Math.round(saved) + " VA more than with an even spread.")
            .figure("calculated load as wired", Math.round(wired.get().total().si()) + " VA")
            .figure("calculated load, evenly spread", Math.round(other.get().total().si()) + " VA")
            .fix("feed some of the dwellings between " + legs(fullest) + " from other legs")
            .source(new Citation("NFPA 70", "220.54, 220.55", false))
            .about(inputs.name())
            .build());
  }

  private static String legs(Ends ends) {
    return ends.legs().get(0) + " and " + ends.legs().get(1);
  }
}
