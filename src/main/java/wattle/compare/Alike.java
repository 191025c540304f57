package wattle.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A change, and the other placements of its pattern in which the same changed: one edit of a pattern is one line to read.
 *
 * @param first in the first of the placements, or in none
 * @param others names of the other placements, in the order of the changes
 */
public record Alike(Change first, List<String> others) {
  private static final Pattern WORD = Pattern.compile("[\\p{L}\\d_]+(?:[.-][\\p{L}\\d_]+)*");

  public Alike {
    others = List.copyOf(others);
  }

  static List<Alike> of(List<Change> changes, Map<String, String> placements) {
    if (placements.isEmpty()) {
      return changes.stream().map(c -> new Alike(c, List.of())).toList();
    }
    Map<String, Change> first = new LinkedHashMap<>();
    Map<String, List<String>> others = new LinkedHashMap<>();
    int alone = 0;
    for (Change change : changes) {
      Optional<String> placement = placementIn(change.thing().name(), placements);
      String key = placement.map(p -> placements.get(p) + "\n" + common(change, p)).orElse("\n" + alone++);
      if (first.putIfAbsent(key, change) == null) {
        others.put(key, new ArrayList<>());
      } else {
        others.get(key).add(placement.orElseThrow());
      }
    }
    List<Alike> alike = new ArrayList<>();
    first.forEach((key, change) -> alike.add(new Alike(change, others.get(key))));
    return alike;
  }

  /** The innermost placement that something named in a text belongs to. */
  private static Optional<String> placementIn(String text, Map<String, String> placements) {
    Matcher word = WORD.matcher(text);
    while (word.find()) {
      for (String name = word.group(); !name.isEmpty(); name = name.substring(0, Math.max(0, name.lastIndexOf('.')))) {
        if (placements.containsKey(name)) {
          return Optional.of(name);
        }
      }
    }
    return Optional.empty();
  }

  /** A change in the words of the pattern. */
  private static String common(Change change, String placement) {
    return WORD.matcher(change.toString()).replaceAll(m -> Matcher.quoteReplacement(common(m.group(), placement)));
  }

  private static String common(String word, String placement) {
    String prefix = placement;
    for (int outwards = 0; !prefix.isEmpty(); outwards++) {
      if (word.equals(prefix) || word.startsWith(prefix + ".")) {
        return "<" + outwards + ">" + word.substring(prefix.length());
      }
      prefix = prefix.substring(0, Math.max(0, prefix.lastIndexOf('.')));
    }
    return word;
  }
}
