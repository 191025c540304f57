package wattle.server;

import java.util.List;
import java.util.Optional;
import wattle.compiler.Glossary;
import wattle.library.Library;

/** What words say that stand in a plan and name nothing in it: traits, places, facts, measures, as {@code explain} tells them. */
final class WordPages {
  private WordPages() {}

  /** Every meaning that the word has, each with what it is there; absent for a word that has none. */
  static Optional<Page> of(String word, Library library) {
    List<Glossary.Entry> meanings = Glossary.of(library).stream().filter(e -> e.word().equals(word)).toList();
    if (meanings.isEmpty()) {
      return Optional.empty();
    }
    Page page = new Page().title(word, "");
    meanings.forEach(m -> page.line(m.kind() + ": " + m.meaning()));
    return Optional.of(page);
  }
}
