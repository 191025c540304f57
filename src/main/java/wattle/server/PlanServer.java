package wattle.server;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.IntConsumer;
import java.util.stream.Stream;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.DidChangeWatchedFilesRegistrationOptions;
import org.eclipse.lsp4j.FileSystemWatcher;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.Registration;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.ServerInfo;
import org.eclipse.lsp4j.SetTraceParams;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageClientAware;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;

/** The life of a session, from initialize to exit. */
final class PlanServer implements LanguageServer, LanguageClientAware {
  private final String version;
  private final IntConsumer exit;
  private final Session session;
  private final DocumentRequests documents;
  private final WorkspaceRequests workspace;
  private boolean watches;
  private boolean shutDown;

  /**
   * @param exit told the exit code when the editor ends the session
   */
  PlanServer(Session session, String version, IntConsumer exit) {
    this.version = version;
    this.exit = exit;
    this.session = session;
    this.documents = new DocumentRequests(session);
    this.workspace = new WorkspaceRequests(session);
  }

  @Override
  public void connect(LanguageClient client) {
    session.connect(client);
  }

  @Override
  public CompletableFuture<InitializeResult> initialize(InitializeParams params) {
    ClientCapabilities client = params.getCapabilities() == null ? new ClientCapabilities() : params.getCapabilities();
    session.setEditor(Editor.of(client));
    watches = Editor.watchesFiles(client);
    List<Path> folders = folders(params);
    Analyses analyses = session.analyses();
    analyses.run(() -> analyses.plans().setFolders(folders));
    endWith(params.getProcessId());
    return CompletableFuture.completedFuture(
        new InitializeResult(Abilities.of(session.editor()), new ServerInfo("wattle", version)));
  }

  // Old editors name one root, in one of two ways that the protocol has given up since.
  @SuppressWarnings("deprecation")
  private static List<Path> folders(InitializeParams params) {
    Stream<String> uris = params.getWorkspaceFolders() != null
        ? params.getWorkspaceFolders().stream().map(WorkspaceFolder::getUri)
        : params.getRootUri() != null ? Stream.of(params.getRootUri()) : Stream.empty();
    return uris.map(Uris::path).toList();
  }

  /** An editor that dies may leave the streams open in a process it started; then its own end is the sign. */
  private void endWith(Integer process) {
    if (process != null) {
      ProcessHandle.of(process)
          .ifPresentOrElse(editor -> editor.onExit().thenRun(() -> exit.accept(0)), () -> exit.accept(0));
    }
  }

  @Override
  public void initialized(InitializedParams params) {
    if (watches) {
      var plans = new FileSystemWatcher(Either.forLeft("**/*.wattle"));
      session
          .client()
          .registerCapability(
              new RegistrationParams(
                  List.of(
                      new Registration(
                          "plans on disk", "workspace/didChangeWatchedFiles",
                          new DidChangeWatchedFilesRegistrationOptions(List.of(plans))))));
    }
  }

  @Override
  public CompletableFuture<Object> shutdown() {
    shutDown = true;
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public void exit() {
    exit.accept(shutDown ? 0 : 1);
  }

  @Override
  public void setTrace(SetTraceParams params) {
    // Nothing is traced.
  }

  @Override
  public TextDocumentService getTextDocumentService() {
    return documents;
  }

  @Override
  public WorkspaceService getWorkspaceService() {
    return workspace;
  }
}
