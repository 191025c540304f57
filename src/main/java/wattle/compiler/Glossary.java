package wattle.compiler;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import wattle.bind.NotationWords;
import wattle.library.CableKind;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.model.DeviceKind;
import wattle.quantity.Dimension;
import wattle.quantity.Unit;
import wattle.quantity.Units;
import wattle.trials.Expectations;

/**
 * Every name that the notation or a message can show, by kind, with what it means. Which words there are comes from the grammar, from
 * the lists that binding reads by and from the library; what a word of the notation means stands in {@code words.txt}.
 */
public final class Glossary {
  /**
   * A word.
   *
   * @param kind what it is, such as {@code trait of a device}
   * @param meaning a sentence; empty only where the text of this build lacks it
   */
  public record Entry(String kind, String word, String meaning) {}

  private Glossary() {}

  /** All words, those of one kind together. */
  public static List<Entry> of(Library library) {
    Map<String, String> meanings = meanings();
    List<Entry> entries = new ArrayList<>();
    NotationWords.byKind().forEach((kind, words) -> add(entries, kind, words, meanings));
    add(entries, "measure", Expectations.measures(), meanings);
    library.parts().values().forEach(p -> entries.add(new Entry("kind of device", p.name(), part(p))));
    library.cables().values().forEach(c -> entries.add(new Entry("type of cable", c.name(), cable(c))));
    library.limits().values().forEach(l -> entries.add(new Entry("limit", l.name(), limit(l))));
    for (String spelling : Units.spellings()) {
      Unit unit = Units.find(spelling).orElseThrow();
      if (!spelling.isEmpty()) {
        entries.add(new Entry("unit", spelling, unit(unit)));
      }
    }
    return List.copyOf(entries);
  }

  private static void add(List<Entry> entries, String kind, Collection<String> words, Map<String, String> meanings) {
    words.forEach(word -> entries.add(new Entry(kind, word, meanings.getOrDefault(kind + "|" + word, ""))));
  }

  /** What words mean, by kind and word with a bar between them. */
  static Map<String, String> meanings() {
    Map<String, String> meanings = new HashMap<>();
    BuildText.of("words.txt").lines().forEach(line -> {
      int bar = line.lastIndexOf('|');
      meanings.put(line.substring(0, bar), line.substring(bar + 1));
    });
    return meanings;
  }

  private static String part(DeviceKind part) {
    String needs = part.needs().stream().sorted().map(n -> n.name().toLowerCase(Locale.ROOT).replace('_', ' '))
        .collect(Collectors.joining(", "));
    String rating = part.rating().map(r -> ", rated " + r).orElse("");
    String load = part.loadClass().map(c -> ", load of class " + c.name().toLowerCase(Locale.ROOT).replace('_', '-')).orElse("");
    String family = part.family().name().toLowerCase(Locale.ROOT);
    return ("aeiou".indexOf(family.charAt(0)) < 0 ? "A " : "An ") + family + (needs.isEmpty() ? "" : " on " + needs) + rating + load + ".";
  }

  private static String cable(CableKind cable) {
    return cable.label() + ", insulation for " + Math.round(cable.insulationCelsius()) + " °C.";
  }

  private static String limit(Limit limit) {
    return (limit.label().isEmpty() ? limit.name() : limit.label()) + ": " + limit.value() + ".";
  }

  private static String unit(Unit unit) {
    return "Unit for " + unit.dimension().trade() + (unit.dimension().equals(Dimension.NONE) ? "; a part of a hundred" : "") + ".";
  }
}
