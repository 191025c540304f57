package wattle.finding;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Names that a misspelled one may have meant. */
public final class NearNames {
  static final int MOST = 3;
  static final int MOST_EDITS = 3;

  private NearNames() {}

  /**
   * At most three names within a third of the word's length in edits (insert, delete, replace, swap of neighbors),
   * nearest first; letter case counts as no edit. Empty where nothing is near: none is better than a guess.
   */
  public static List<String> of(String word, Collection<String> names) {
    record Near(String name, int distance) {}
    int most = mostEdits(word);
    String sought = word.toLowerCase(Locale.ROOT);
    return names.stream()
        .filter(name -> Math.abs(name.length() - word.length()) <= most)
        .map(name -> new Near(name, distance(sought, name.toLowerCase(Locale.ROOT), most)))
        .filter(near -> near.distance <= most && near.distance < Math.max(2, word.length()))
        .sorted(Comparator.comparingInt(Near::distance).thenComparing(Near::name))
        .limit(MOST)
        .map(Near::name)
        .toList();
  }

  static int mostEdits(String word) {
    return Math.max(1, Math.min(MOST_EDITS, word.length() / 3));
  }

  /** Optimal string alignment distance; where it is more than asked for, some number that is more too. */
  private static int distance(String some, String other, int most) {
    // What both begin and end with costs nothing, and names of one house have most of it in common.
    int shorter = Math.min(some.length(), other.length());
    int start = 0;
    while (start < shorter && some.charAt(start) == other.charAt(start)) {
      start++;
    }
    int end = 0;
    while (end < shorter - start && some.charAt(some.length() - 1 - end) == other.charAt(other.length() - 1 - end)) {
      end++;
    }
    return distanceOf(some.substring(start, some.length() - end), other.substring(start, other.length() - end), most);
  }

  private static int distanceOf(String a, String b, int most) {
    if (a.isEmpty() || b.isEmpty()) {
      return Math.max(a.length(), b.length());
    }
    int[] beforeLast = new int[b.length() + 1];
    int[] last = new int[b.length() + 1];
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    int leastOfLast = 0;
    for (int i = 1; i <= a.length(); i++) {
      int[] free = beforeLast;
      beforeLast = last;
      last = row;
      row = free;
      row[0] = i;
      int least = i;
      for (int j = 1; j <= b.length(); j++) {
        int replaced = last[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        int cost = Math.min(replaced, Math.min(last[j], row[j - 1]) + 1);
        if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
          cost = Math.min(cost, beforeLast[j - 2] + 1);
        }
        row[j] = cost;
        least = Math.min(least, cost);
      }
      // What follows is reached from one of the last two rows, and never gets less on the way.
      if (least > most && leastOfLast > most) {
        return least;
      }
      leastOfLast = least;
    }
    return row[b.length()];
  }
}
