package wattle.emit.document.findings;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import wattle.finding.Finding;
import wattle.finding.Severity;

/**
 * How many facts there are, of one plan or of many.
 *
 * @param standing by severity, of those that stand and bind the work as it is
 * @param ifNew that stand only if existing work were new
 * @param silenced with a reason
 */
public record FindingCounts(Map<Severity, Long> standing, long ifNew, long silenced) {
  /** Of nothing yet. */
  public static final FindingCounts NONE = of(List.of());

  public FindingCounts {
    standing = Map.copyOf(standing);
  }

  public static FindingCounts of(List<Finding> facts) {
    Map<Severity, Long> standing = new EnumMap<>(Severity.class);
    for (Severity severity : Severity.values()) {
      standing.put(severity,
          facts.stream().filter(f -> f.silenced().isEmpty() && f.severity() == severity && f.ofNewWork().isEmpty()).count());
    }
    return new FindingCounts(standing, facts.stream().filter(f -> f.silenced().isEmpty() && f.ofNewWork().isPresent()).count(),
        facts.stream().filter(f -> f.silenced().isPresent()).count());
  }

  /** Both together. */
  public FindingCounts plus(FindingCounts other) {
    Map<Severity, Long> sum = new EnumMap<>(Severity.class);
    standing.forEach((severity, count) -> sum.put(severity, count + other.standing.get(severity)));
    return new FindingCounts(sum, ifNew + other.ifNew, silenced + other.silenced);
  }

  /** In words, gravest first, such as {@code 1 error, 2 warnings}. */
  public String words() {
    List<String> counts = new ArrayList<>();
    for (Severity severity : Severity.values()) {
      long count = standing.get(severity);
      if (count > 0) {
        String word = severity == Severity.ADVICE ? "piece of advice" : severity.toString();
        String plural = severity == Severity.ADVICE ? "pieces of advice" : severity + "s";
        counts.add(count + " " + (count == 1 ? word : plural));
      }
    }
    if (ifNew > 0) {
      counts.add(ifNew + " if existing work were new");
    }
    if (silenced > 0) {
      counts.add(silenced + " silenced");
    }
    return counts.isEmpty() ? "nothing found" : String.join(", ", counts);
  }
}
