package wattle.server;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.MessageType;
import org.eclipse.lsp4j.jsonrpc.CompletableFutures;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.LanguageClient;

/**
 * What one editor has open, and what it has been told. The texts change on the thread that reads messages; findings are
 * told from the thread that compiles.
 */
final class Session implements AutoCloseable {
  /** Tells an editor that its question was about a text that is no more; it asks again by itself. */
  private static final ResponseErrorException OUTDATED = new ResponseErrorException(
      new ResponseError(ResponseErrorCode.ContentModified, "the text has changed since this was asked", null));

  private final Analyses analyses;
  private final LibraryTexts library = new LibraryTexts();
  private final AtomicLong changes = new AtomicLong();
  private volatile Buffers buffers = Buffers.NONE;
  private volatile Editor editor = Editor.PLAIN;
  private LanguageClient client;
  private Publisher publisher;
  /** For tasks of the thread that compiles. */
  private boolean saidWhatIsLeft;

  Session(Analyses analyses) {
    this.analyses = analyses;
  }

  void connect(LanguageClient connected) {
    client = connected;
    publisher = new Publisher(connected, library);
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

  /** Takes a change of an open text and sees to it that its findings are told, at the latest after the next change. */
  void change(Path file, UnaryOperator<Buffers> change) {
    buffers = change.apply(buffers);
    analyses.attend(file);
    refresh();
  }

  /** A file was opened, closed, saved or changed on disk: which plan it is part of may have changed as well. */
  void changeOf(Path file, UnaryOperator<Buffers> change) {
    buffers = change.apply(buffers);
    Buffers now = buffers;
    if (now.at(file).isPresent()) {
      analyses.attend(file);
    }
    analyses.run(() -> analyses.plans().explore(file, now));
    refresh();
  }

  /**
   * Tells of one open file after another, the one that was attended to last first: what is known at once, and then, unless something
   * has changed by then, what the later phases judge. Questions that are asked meanwhile are answered between two files.
   */
  private void refresh() {
    long mine = changes.incrementAndGet();
    Buffers now = buffers;
    analyses.run(() -> {
      if (mine == changes.get()) { // else a later change waits, and its findings are the ones to tell
        List<Path> looked = analyses.fitting(now);
        sayWhatIsLeft(now.open().size() - looked.size());
        next(mine, now, looked, looked.iterator(), new HashSet<>());
      }
    });
  }

  /** Says once, until all are looked at again, that some of the open files are not. */
  private void sayWhatIsLeft(int left) {
    if (left > 0 && !saidWhatIsLeft) {
      client.showMessage(new MessageParams(MessageType.Warning, "more files are open than there is memory for: " + left
          + " are checked when they are worked on; close some, or give more memory by WATTLE_HEAP, such as 1g"));
    }
    saidWhatIsLeft = left > 0;
  }

  private void next(long mine, Buffers now, List<Path> looked, Iterator<Path> files, Set<Path> plans) {
    if (mine != changes.get()) {
      return;
    }
    while (files.hasNext()) {
      Path file = files.next();
      Optional<Analysis> analysis = known(file, now);
      if (analysis.filter(a -> plans.add(a.plan())).isPresent()) {
        tell(() -> publisher.publish(analysis.get(), editor));
        tell(() -> judge(mine, now, file));
        analyses.run(() -> next(mine, now, looked, files, plans));
        return;
      }
    }
    tell(() -> publisher.publish(looked, now, analyses, editor));
  }

  private Optional<Analysis> known(Path file, Buffers now) {
    try {
      return analyses.of(file, now);
    } catch (RuntimeException | StackOverflowError e) {
      report(e);
      return Optional.empty();
    } catch (OutOfMemoryError e) {
      sayThatMemoryRanOut(file);
      return Optional.empty();
    }
  }

  private void judge(long mine, Buffers now, Path file) {
    analyses.judged(file, now).ifPresent(judged -> {
      judged.thenAccept(analysis -> tell(() -> publishUnlessLate(mine, analysis)));
      judged.whenComplete((analysis, problem) -> reportIfMistaken(file, problem));
    });
  }

  private void publishUnlessLate(long mine, Analysis analysis) {
    if (mine == changes.get()) {
      publisher.publish(analysis, editor);
    }
  }

  private void sayThatMemoryRanOut(Path file) {
    analyses.letGo();
    client.showMessage(new MessageParams(MessageType.Error, file.getFileName() + " was not checked: there is not enough memory for it;"
        + " close other files, or give more by WATTLE_HEAP, such as 1g"));
  }

  private void reportIfMistaken(Path file, Throwable problem) {
    if (problem instanceof OutOfMemoryError) {
      sayThatMemoryRanOut(file);
      return;
    }
    if (problem != null && !(problem instanceof CancellationException)) {
      report(problem);
    }
  }

  private void tell(Runnable what) {
    try {
      what.run();
    } catch (RuntimeException | StackOverflowError e) {
      report(e);
    }
  }

  private void report(Throwable mistake) {
    client.logMessage(
        new MessageParams(MessageType.Error, "internal error while checking: " + mistake + "; please report it with the plan"));
  }

  /** Answers from the plan that a document is part of; what stands for no answer where the plan cannot be read. */
  <T> CompletableFuture<T> ask(String uri, T nothing, Function<Question, T> answer) {
    Path file = Uris.path(uri);
    analyses.attend(file);
    return ask(asked -> analyses.of(file, asked).flatMap(a -> question(a, file)).map(answer).orElse(nothing));
  }

  /** The same, once every phase has judged the plan; refused where it changes before that. */
  <T> CompletableFuture<T> askJudged(String uri, T nothing, Function<Question, T> answer) {
    Path file = Uris.path(uri);
    analyses.attend(file);
    CompletableFuture<Optional<CompletableFuture<Analysis>>> begun = ask(asked -> analyses.judged(file, asked));
    return begun
        .thenCompose(Session::allIn)
        .thenApplyAsync(a -> a.flatMap(known -> question(known, file)).map(answer).orElse(nothing), analyses::run)
        .exceptionallyCompose(
            e -> CompletableFuture.failedFuture(e.getCause() instanceof CancellationException ? OUTDATED : e));
  }

  private static <T> CompletableFuture<Optional<T>> allIn(Optional<CompletableFuture<T>> begun) {
    return begun.map(b -> b.thenApply(Optional::of)).orElseGet(() -> CompletableFuture.completedFuture(Optional.empty()));
  }

  private static Optional<Question> question(Analysis analysis, Path file) {
    return analysis.tree(file).map(tree -> new Question(analysis, file, tree, analysis.lines(file)));
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
