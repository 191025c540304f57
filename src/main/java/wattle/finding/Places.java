package wattle.finding;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Where a fact is found, in few words: {@code the same at front.r2 … front.r6}. */
final class Places {
  private static final int NAMED = 4;

  private static final int LEAST_RANGE = 3;

  private static final Pattern NUMBER = Pattern.compile("\\p{Nd}+");

  private Places() {}

  /** The marks of a fact, no span twice. */
  static List<Mark> of(Finding finding) {
    Map<Span, Mark> marks = new LinkedHashMap<>();
    finding.each().forEach(f -> f.place().ifPresent(m -> marks.putIfAbsent(m.span(), m)));
    return List.copyOf(marks.values());
  }

  /** What follows the headline: the other things by name, or how many places there are; empty where there is one. */
  static String behind(Finding finding) {
    if (finding.alike().isEmpty()) {
      return "";
    }
    String own = finding.subject().orElse("");
    List<String> others = finding.alike().stream().flatMap(f -> f.subject().stream()).filter(n -> !n.equals(own)).distinct()
        .sorted(Comparator.comparing(Places::padded)).toList();
    if (others.isEmpty()) {
      int places = of(finding).size();
      return places > 1 ? " at " + places + " places" : "";
    }
    List<List<String>> ranges = ranges(others);
    int left = ranges.stream().skip(NAMED).mapToInt(List::size).sum();
    return "; the same at " + String.join(", ", ranges.stream().limit(NAMED).map(Places::shown).toList())
        + (left > 0 ? " and " + left + " more" : "");
  }

  /** Numbers in a name by their value, so that r2 comes before r10. */
  private static String padded(String name) {
    return NUMBER.matcher(name).replaceAll(n -> "0".repeat(Math.max(0, 12 - n.group().length())) + n.group());
  }

  private static List<List<String>> ranges(List<String> names) {
    List<List<String>> ranges = new ArrayList<>();
    List<String> open = new ArrayList<>();
    for (String name : names) {
      if (!open.isEmpty() && !goesOn(open, name)) {
        close(open, ranges);
        open = new ArrayList<>();
      }
      open.add(name);
    }
    close(open, ranges);
    return ranges;
  }

  private static void close(List<String> open, List<List<String>> ranges) {
    if (open.size() < LEAST_RANGE) {
      open.forEach(n -> ranges.add(List.of(n)));
    } else {
      ranges.add(open);
    }
  }

  private static String shown(List<String> range) {
    return range.size() == 1 ? range.get(0) : range.get(0) + " … " + range.get(range.size() - 1);
  }

  /** Whether a name counts on from the last in the number in which the last did from the one before. */
  private static boolean goesOn(List<String> open, String name) {
    int counted = counted(open.get(open.size() - 1), name);
    return counted >= 0 && (open.size() == 1 || counted == counted(open.get(open.size() - 2), open.get(open.size() - 1)));
  }

  /** Which number of a name is one more in another that is otherwise the same; -1 where none is. */
  private static int counted(String name, String next) {
    Matcher own = NUMBER.matcher(name);
    for (int i = 0; own.find(); i++) {
      String more = new BigInteger(own.group()).add(BigInteger.ONE).toString();
      if (next.equals(name.substring(0, own.start()) + more + name.substring(own.end()))) {
        return i;
      }
    }
    return -1;
  }
}
