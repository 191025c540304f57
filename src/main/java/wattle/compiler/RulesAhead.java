package wattle.compiler;

import java.util.concurrent.CompletableFuture;
import wattle.library.Library;
import wattle.rules.RuleBook;

/**
 * The rules of a library, checked on another processor from the moment that the library is known, while its house is
 * being bound; kept until another library is asked about.
 */
final class RulesAhead {
  private Library library;
  private CompletableFuture<RuleBook> book;

  /** Begins with the rules of a library. */
  synchronized void begin(Library known) {
    if (known != library) {
      library = known;
      book = CompletableFuture.supplyAsync(() -> RuleBook.of(known));
    }
  }

  /** The rules of a library, ready. */
  RuleBook of(Library known) {
    CompletableFuture<RuleBook> asked;
    synchronized (this) {
      begin(known);
      asked = book;
    }
    return asked.join();
  }
}
