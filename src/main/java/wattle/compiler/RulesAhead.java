package wattle.compiler;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import wattle.library.Library;
import wattle.library.StandardLibrary;
import wattle.rules.RuleBook;

/**
 * The rules of a library, checked on another processor from the moment that the library is known, while its house is
 * being bound. Those of the packs that ship are kept for all plans of a process; those of a plan that adds to its library
 * until another library is asked about.
 */
final class RulesAhead {
  private static final Map<Library, CompletableFuture<RuleBook>> SHIPPED = Collections.synchronizedMap(new IdentityHashMap<>());

  private Library library;
  private CompletableFuture<RuleBook> book;

  /** Begins with the rules of a library. */
  synchronized void begin(Library known) {
    if (known != library) {
      library = known;
      book = StandardLibrary.isShipped(known) ? shipped(known) : check(known);
    }
  }

  private static CompletableFuture<RuleBook> shipped(Library known) {
    CompletableFuture<RuleBook> shared = SHIPPED.computeIfAbsent(known, RulesAhead::check);
    // One that memory ran out for is not the last word for plans to come.
    return shared.whenComplete((made, problem) -> {
      if (problem != null) {
        SHIPPED.remove(known, shared);
      }
    });
  }

  private static CompletableFuture<RuleBook> check(Library library) {
    return CompletableFuture.supplyAsync(() -> RuleBook.of(library));
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
