package wattle.syntax;

import java.util.Arrays;

/**
 * Words of a text, each once. Names recur all over a plan, and a tree holds every word of it: each copy would be there as long
 * as the tree, and hash anew in every map. For one thread.
 */
final class WordPool {
  private final String text;
  private String[] words = new String[256];
  private int count;

  /** @param text that the words stand in */
  WordPool(String text) {
    this.text = text;
  }

  /** The word that stands in a range of the text; found without a copy of it being made. */
  String of(int start, int end) {
    int hash = 0;
    for (int i = start; i < end; i++) {
      hash = 31 * hash + text.charAt(i); // as String has it
    }
    int at = place(hash);
    for (String word = words[at]; word != null; word = words[at]) {
      if (word.hashCode() == hash && word.length() == end - start && text.startsWith(word, start)) {
        return word;
      }
      at = at + 1 & words.length - 1;
    }
    String word = text.substring(start, end);
    words[at] = word;
    if (2 * ++count > words.length) {
      grow();
    }
    return word;
  }

  private int place(int hash) {
    return (hash ^ hash >>> 16) & words.length - 1;
  }

  private void grow() {
    String[] before = words;
    words = new String[2 * before.length];
    Arrays.stream(before).filter(w -> w != null).forEach(this::put);
  }

  private void put(String word) {
    int at = place(word.hashCode());
    while (words[at] != null) {
      at = at + 1 & words.length - 1;
    }
    words[at] = word;
  }
}
