package wattle.server;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.MessageType;
import org.eclipse.lsp4j.jsonrpc.CompletableFutures;
import org.eclipse.lsp4j.services.LanguageClient;

/**
 * What one editor has open, and what it has been told. The texts change on the thread that reads messages; findings are
 * told from the thread that compiles.
 */
final class Session implements AutoCloseable {
  private final Analyses analyses;
  private final LibraryTexts library = new LibraryTexts();
  private final AtomicLong changes = new AtomicLong();
  private volatile Buffers buffers = Buffers.NONE;
  private volatile Editor editor = Editor.PLAIN;
  private LanguageClient client;
  private Publisher publisher;

  Session(Analyses analyses) {
    this.analyses = analyses;
  }

  void connect(LanguageClient connected) {
    client = connected;
    publisher = new Publisher(connected);
  }

  LanguageClient client() {
    return client;
  }

  void setEditor(Editor capabilities) {
    editor = capabilities;
  }

  Editor editor() {
    return editor;
  }

  Buffers buffers() {
    return buffers;
  }

  /** Takes a change of the open texts and sees to it that its findings are told, at the latest after the next change. */
  void change(UnaryOperator<Buffers> change) {
    buffers = change.apply(buffers);
    refresh();
  }

  /** A file was opened, closed, saved or changed on disk: which plan it is part of may have changed as well. */
  void changeOf(Path file, UnaryOperator<Buffers> change) {
    buffers = change.apply(buffers);
    Buffers now = buffers;
    analyses.run(() -> analyses.plans().explore(file, now));
    refresh();
  }

  /** Tells first what is known at once; what the later phases judge waits until nothing else does. */
  private void refresh() {
    long mine = changes.incrementAndGet();
    Buffers now = buffers;
    analyses.run(
        () -> {
          if (mine == changes.get()) { // else a later change waits, and its findings are the ones to tell
            tell(now, analyses::of);
            analyses.run(() -> judge(mine, now));
          }
        });
  }

  private void judge(long mine, Buffers now) {
    if (mine == changes.get()) {
      tell(now, analyses::judge);
    }
  }

  private void tell(Buffers now, BiFunction<Path, Buffers, Optional<Analysis>> lookUp) {
    try {
      publisher.publish(now, lookUp);
    } catch (RuntimeException | StackOverflowError e) {
      client.logMessage(new MessageParams(MessageType.Error, "a mistake of ours while checking: " + e + "; please report it with the plan"));
    }
  }

  /** Answers from the plan that a document is part of; what stands for no answer where the plan cannot be read. */
  <T> CompletableFuture<T> ask(String uri, T nothing, Function<Question, T> answer) {
    return ask(uri, nothing, answer, analyses::of);
  }

  /** The same, once every phase has judged the plan. */
  <T> CompletableFuture<T> askJudged(String uri, T nothing, Function<Question, T> answer) {
    return ask(uri, nothing, answer, analyses::judge);
  }

  private <T> CompletableFuture<T> ask(
      String uri, T nothing, Function<Question, T> answer, BiFunction<Path, Buffers, Optional<Analysis>> lookUp) {
    Path file = Uris.path(uri);
    return ask(
        asked ->
            lookUp
                .apply(file, asked)
                .flatMap(a -> a.tree(file).map(tree -> new Question(a, file, tree, a.lines(file))))
                .map(answer)
                .orElse(nothing));
  }

  /** Answers from no plan in particular. */
  <T> CompletableFuture<T> ask(Function<Buffers, T> answer) {
    Buffers asked = buffers;
    return CompletableFutures.computeAsync(
        analyses::run,
        cancel -> {
          cancel.checkCanceled();
          return answer.apply(asked);
        });
  }

  LibraryTexts library() {
    return library;
  }

  @Override
  public void close() throws IOException {
    library.close();
  }

  Analyses analyses() {
    return analyses;
  }
}
