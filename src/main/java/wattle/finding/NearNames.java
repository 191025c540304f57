package wattle.finding;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Names that a misspelled one may have meant. */
public final class NearNames {
  private static final int MOST = 3;

  private NearNames() {}

  /**
   * At most three names within a third of the word's length in edits (insert, delete, replace, swap of neighbours),
   * nearest first; letter case counts as no edit. Empty where nothing is near: none is better than a guess.
   */
  public static List<String> of(String word, Collection<String> names) {
    record Near(String name, int distance) {}
    int most = Math.max(1, Math.min(3, word.length() / 3));
    String sought = word.toLowerCase(Locale.ROOT);
    return names.stream()
        .filter(name -> Math.abs(name.length() - word.length()) <= most)
        .map(name -> new Near(name, distance(sought, name.toLowerCase(Locale.ROOT))))
        .filter(near -> near.distance <= most && near.distance < Math.max(2, word.length()))
        .sorted(Comparator.comparingInt(Near::distance).thenComparing(Near::name))
        .limit(MOST)
        .map(Near::name)
        .toList();
  }

  /** Optimal string alignment distance. */
  private static int distance(String a, String b) {
    int[][] cost = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          cost[i][j] = i + j;
          continue;
        }
        int replaced = cost[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        cost[i][j] = Math.min(replaced, Math.min(cost[i - 1][j], cost[i][j - 1]) + 1);
        if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
          cost[i][j] = Math.min(cost[i][j], cost[i - 2][j - 2] + 1);
        }
      }
    }
    return cost[a.length()][b.length()];
  }
}
