package wattle.server;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.Pipe;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Predicate;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;

/** An editor that follows a script: it keeps the same texts as the server should, and collects what it is told. */
final class ScriptedEditor implements LanguageClient, AutoCloseable {
  static final Duration PATIENCE = Duration.ofSeconds(30);

  private final ExecutorService threads = Executors.newCachedThreadPool();
  private final Pipe toServer;
  private final CompletableFuture<Integer> exitCode;
  private final LanguageServer server;
  private final Map<String, PublishDiagnosticsParams> told = new HashMap<>();
  private final Set<String> inOrder = new LinkedHashSet<>();
  private final Map<String, String> texts = new HashMap<>();
  private final Map<String, Integer> versions = new HashMap<>();
  private final List<String> complaints = new ArrayList<>();
  private final List<String> registrations = new ArrayList<>();

  ScriptedEditor() throws IOException {
    toServer = Pipe.open();
    Pipe fromServer = Pipe.open();
    InputStream serverIn = Channels.newInputStream(toServer.source());
    OutputStream serverOut = Channels.newOutputStream(fromServer.sink());
    exitCode = CompletableFuture.supplyAsync(() -> LanguageServerProcess.serve(serverIn, serverOut, "test"), threads);
    Launcher<LanguageServer> launcher = new Launcher.Builder<LanguageServer>()
        .setLocalService(this)
        .setRemoteInterface(LanguageServer.class)
        .setInput(Channels.newInputStream(fromServer.source()))
        .setOutput(Channels.newOutputStream(toServer.sink()))
        .setExecutorService(threads)
        .create();
    launcher.startListening();
    server = launcher.getRemoteProxy();
  }

  LanguageServer server() {
    return server;
  }

  InitializeResult start(ClientCapabilities capabilities, Path... folders) {
    InitializeParams params = new InitializeParams();
    params.setCapabilities(capabilities);
    params.setWorkspaceFolders(
        java.util.Arrays.stream(folders).map(f -> new WorkspaceFolder(f.toUri().toString(), f.toString())).toList());
    InitializeResult result = get(server.initialize(params));
    server.initialized(new InitializedParams());
    return result;
  }

  /** An answer, waited for no longer than patience lasts. */
  static <T> T get(CompletableFuture<T> answer) {
    try {
      return answer.get(PATIENCE.toSeconds(), TimeUnit.SECONDS);
    } catch (InterruptedException | ExecutionException | TimeoutException e) {
      throw new AssertionError("no answer: " + e, e);
    }
  }

  void open(String uri, String text) {
    texts.put(uri, text);
    versions.put(uri, 1);
    server.getTextDocumentService().didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(uri, "wattle", 1, text)));
  }

  /** Replaces the one place where a text stands. */
  void replace(String uri, String what, String by) {
    String text = texts.get(uri);
    int at = text.indexOf(what);
    if (at < 0 || text.indexOf(what, at + 1) >= 0) {
      throw new AssertionError("'" + what + "' does not stand once in " + uri);
    }
    change(uri, new Range(position(text, at), position(text, at + what.length())), by);
  }

  void change(String uri, Range range, String by) {
    String text = texts.get(uri);
    texts.put(uri, text.substring(0, offset(text, range.getStart())) + by + text.substring(offset(text, range.getEnd())));
    int version = versions.merge(uri, 1, Integer::sum);
    server
        .getTextDocumentService()
        .didChange(
            new DidChangeTextDocumentParams(
                new VersionedTextDocumentIdentifier(uri, version), List.of(new TextDocumentContentChangeEvent(range, by))));
  }

  /** Makes edits as an editor would: all of them speak of the text before. */
  void apply(String uri, List<TextEdit> edits) {
    edits.stream()
        .sorted((a, b) -> offset(texts.get(uri), b.getRange().getStart()) - offset(texts.get(uri), a.getRange().getStart()))
        .forEach(e -> change(uri, e.getRange(), e.getNewText()));
  }

  void close(String uri) {
    texts.remove(uri);
    server.getTextDocumentService().didClose(new DidCloseTextDocumentParams(new TextDocumentIdentifier(uri)));
  }

  String text(String uri) {
    return texts.get(uri);
  }

  int version(String uri) {
    return versions.get(uri);
  }

  /** A position worked out here by itself, for texts whose lines end in LF. */
  static Position position(String text, int offset) {
    String before = text.substring(0, offset);
    return new Position((int) before.chars().filter(c -> c == '\n').count(), offset - before.lastIndexOf('\n') - 1);
  }

  private static int offset(String text, Position position) {
    int at = 0;
    for (int line = 0; line < position.getLine(); line++) {
      at = text.indexOf('\n', at) + 1;
    }
    return at + position.getCharacter();
  }

  /** The findings of the version of a document that was sent last. */
  List<Diagnostic> findings(String uri) {
    return await(uri, p -> p.getVersion() != null && p.getVersion().equals(versions.get(uri)));
  }

  /** The findings of a document, as soon as they are as they should be. */
  synchronized List<Diagnostic> await(String uri, Predicate<PublishDiagnosticsParams> ready) {
    long end = System.nanoTime() + PATIENCE.toNanos();
    while (!told.containsKey(uri) || !ready.test(told.get(uri))) {
      long left = TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime());
      if (left <= 0) {
        throw new AssertionError("findings never came for " + uri + "; last were " + told.get(uri) + "; " + complaints);
      }
      try {
        wait(left);
      } catch (InterruptedException e) {
        throw new AssertionError(e);
      }
    }
    return told.get(uri).getDiagnostics();
  }

  static List<String> rules(List<Diagnostic> diagnostics) {
    return diagnostics.stream().map(d -> d.getCode().getLeft()).toList();
  }

  /** The documents that findings were told of, each where it was first. */
  synchronized List<String> toldInOrder() {
    return List.copyOf(inOrder);
  }

  synchronized List<String> complaints() {
    return List.copyOf(complaints);
  }

  synchronized List<String> registrations() {
    return List.copyOf(registrations);
  }

  /** Closes the server's input, as an editor that is killed does; its exit code. */
  int hangUp() throws IOException {
    toServer.sink().close();
    return get(exitCode);
  }

  CompletableFuture<Integer> exitCode() {
    return exitCode;
  }

  @Override
  public synchronized void publishDiagnostics(PublishDiagnosticsParams diagnostics) {
    told.put(diagnostics.getUri(), diagnostics);
    inOrder.add(diagnostics.getUri());
    notifyAll();
  }

  @Override
  public synchronized CompletableFuture<Void> registerCapability(RegistrationParams params) {
    params.getRegistrations().forEach(r -> registrations.add(r.getMethod()));
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public void telemetryEvent(Object object) {
    throw new AssertionError("the server tells nobody what is done with it");
  }

  @Override
  public synchronized void showMessage(MessageParams message) {
    complaints.add(message.getMessage());
  }

  @Override
  public CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams params) {
    throw new AssertionError("the server asks nothing");
  }

  @Override
  public synchronized void logMessage(MessageParams message) {
    complaints.add(message.getMessage());
  }

  @Override
  public void close() throws IOException {
    toServer.sink().close();
    threads.shutdownNow();
  }
}
