package wattle.finding;

import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.function.Consumer;

/**
 * Names in the order of their letters, or of their letters from the end, so that all that begin alike are compared with a word at once and
 * left out at once.
 */
final class NameIndex {
  private record Entry(String letters, String name) {}

  private final Entry[] entries;
  /** How many letters each name has in common with the one before it. */
  private final int[] common;
  /** The next name after each that has fewer letters in common with the one before it. */
  private final int[] next;
  private final boolean fromEnd;

  NameIndex(Collection<String> names, boolean fromEnd) {
    this.fromEnd = fromEnd;
    entries = names.stream().map(n -> new Entry(letters(n), n)).sorted(Comparator.comparing(Entry::letters)).toArray(Entry[]::new);
    common = new int[entries.length];
    for (int i = 1; i < entries.length; i++) {
      int differs = Arrays.mismatch(entries[i - 1].letters.toCharArray(), entries[i].letters.toCharArray());
      common[i] = differs < 0 ? entries[i].letters.length() : differs;
    }
    next = new int[entries.length];
    for (int i = entries.length - 1; i >= 0; i--) {
      next[i] = after(i, common[i]);
    }
  }

  private String letters(String name) {
    String lower = name.toLowerCase(Locale.ROOT);
    return fromEnd ? new StringBuilder(lower).reverse().toString() : lower;
  }

  /** The next name that does not begin with so many letters of one. */
  private int after(int entry, int letters) {
    int i = entry + 1;
    while (i < entries.length && common[i] >= letters) {
      i = next[i];
    }
    return i;
  }

  /**
   * Finds names that a number of edits leads to, of which no more than half lie in the first half of the word. Of the edits that lead to a
   * name either its first half has no more than that, or its second half: who asks from both ends misses none.
   *
   * @param found takes each such name, and perhaps a few that are not
   * @return how many letters of names were compared with the word
   */
  int search(String word, int edits, Consumer<String> found) {
    Search search = new Search(letters(word), edits);
    int i = 0;
    int depth = 0;
    while (i < entries.length) {
      String letters = entries[i].letters;
      depth = Math.min(depth, common[i]);
      boolean leads = true;
      while (leads && depth < letters.length()) {
        depth++;
        leads = search.leadsOn(depth, letters);
      }
      if (leads) {
        if (search.reaches(depth)) {
          found.accept(entries[i].name);
        }
        i++;
      } else {
        i = after(i, depth);
      }
    }
    return search.compared;
  }

  /** One search: for each letter of a name the edits from the beginnings of the word that are about as long. */
  private final class Search {
    private final String word;
    private final int edits;
    /** How many letters at the beginning of the word have room for half of the edits only. */
    private final int firstHalf;
    /** For each count of letters the cells of the distance from that many less than as many as may be inserted, a bound at each side. */
    private final int[][] cells;
    private int compared;

    private Search(String word, int edits) {
      this.word = word;
      this.edits = edits;
      int half = word.length() / 2;
      this.firstHalf = fromEnd ? word.length() - half - 1 : half;
      this.cells = new int[word.length() + edits + 1][2 * edits + 3];
      for (int[] row : cells) {
        Arrays.fill(row, edits + 1);
      }
      for (int j = 0; j <= Math.min(edits, word.length()); j++) {
        cells[0][j + edits + 1] = allowed(j, j);
      }
    }

    private int allowed(int cost, int inWord) {
      return cost <= (inWord <= firstHalf ? edits / 2 : edits) ? cost : edits + 1;
    }

    /** Compares the letter that is at a depth of a name, those before it being compared; whether any name that goes on so may be near. */
    private boolean leadsOn(int depth, String letters) {
      if (depth > word.length() + edits) {
        return false;
      }
      compared++;
      int[] row = cells[depth];
      int[] last = cells[depth - 1];
      char letter = letters.charAt(depth - 1);
      boolean leads = false;
      for (int j = Math.max(0, depth - edits); j <= Math.min(word.length(), depth + edits); j++) {
        int at = j - depth + edits + 1;
        int cost = last[at + 1] + 1;
        if (j > 0) {
          boolean same = letter == word.charAt(j - 1);
          cost = Math.min(Math.min(cost, row[at - 1] + 1), last[at] + (same ? 0 : 1));
          if (depth > 1 && j > 1 && letter == word.charAt(j - 2) && letters.charAt(depth - 2) == word.charAt(j - 1)) {
            cost = Math.min(cost, cells[depth - 2][at] + 1);
          }
          // The letter may also be the first of two that stand the other way around in the word.
          leads |= j > 1 && same && last[at - 1] < edits;
        }
        row[at] = allowed(cost, j);
        leads |= row[at] <= edits;
      }
      return leads;
    }

    private boolean reaches(int depth) {
      int at = word.length() - depth + edits + 1;
      return at > 0 && at < cells[depth].length && cells[depth][at] <= edits;
    }
  }
}
