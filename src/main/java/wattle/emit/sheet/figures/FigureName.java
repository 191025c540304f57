package wattle.emit.sheet.figures;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import wattle.finding.NearNames;

/** How what a reader asks for is held against the names of figures. */
final class FigureName {
  private static final Set<String> SMALL = Set.of("of", "at", "the", "in", "on", "from", "to", "a");

  private FigureName() {}

  private static List<String> words(String name) {
    return List.of(name.strip().toLowerCase(Locale.ROOT).replace(",", " ").split("\\s+"));
  }

  private static List<String> telling(String name) {
    return words(name).stream().filter(w -> !SMALL.contains(w)).toList();
  }

  static boolean isSame(String name, String asked) {
    return words(name).equals(words(asked)) || telling(name).equals(telling(asked));
  }

  /** Whether the words asked for stand in the name, in order. */
  static boolean has(String name, String asked) {
    List<String> sought = telling(asked);
    int at = 0;
    for (String word : telling(name)) {
      if (at < sought.size() && begins(word, sought.get(at))) {
        at++;
      }
    }
    return !sought.isEmpty() && at == sought.size();
  }

  /** {@code kitchen.c1} stands for its halves as well. */
  private static boolean begins(String word, String sought) {
    return word.equals(sought) || word.startsWith(sought + ".");
  }

  /** Names, or beginnings of names, that a misspelled one may have meant. */
  static List<String> near(String asked, Collection<String> names) {
    Set<String> beginnings = new LinkedHashSet<>();
    for (String name : names) {
      List<String> so = new ArrayList<>();
      for (String word : name.split(" ")) {
        so.add(word);
        beginnings.add(String.join(" ", so));
        int dot = word.lastIndexOf('.');
        if (dot > 0 && word.indexOf('.') < dot) {
          List<String> whole = new ArrayList<>(so);
          whole.set(whole.size() - 1, word.substring(0, dot));
          beginnings.add(String.join(" ", whole));
        }
      }
    }
    List<String> near = NearNames.of(asked.strip(), beginnings);
    return near.isEmpty() ? byWord(asked, names) : near;
  }

  /** What is asked for with the one word that no name has put right. */
  private static List<String> byWord(String asked, Collection<String> names) {
    Set<String> known = new LinkedHashSet<>();
    names.forEach(n -> words(n).forEach(w -> {
      known.add(w);
      int dot = w.lastIndexOf('.');
      if (dot > 0) {
        known.add(w.substring(0, dot));
      }
    }));
    List<String> words = new ArrayList<>(words(asked));
    for (int i = 0; i < words.size(); i++) {
      if (known.contains(words.get(i)) || SMALL.contains(words.get(i))) {
        continue;
      }
      List<String> mended = new ArrayList<>();
      for (String near : NearNames.of(words.get(i), known)) {
        List<String> one = new ArrayList<>(words);
        one.set(i, near);
        String name = String.join(" ", one);
        if (names.stream().anyMatch(n -> has(n, name))) {
          mended.add(name);
        }
      }
      return mended;
    }
    return List.of();
  }
}
