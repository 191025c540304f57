package wattle.server;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidChangeWorkspaceFoldersParams;
import org.eclipse.lsp4j.RenameFilesParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.services.WorkspaceService;

/** What an editor tells and asks about its folders as a whole. */
final class WorkspaceRequests implements WorkspaceService {
  private final Session session;

  WorkspaceRequests(Session session) {
    this.session = session;
  }

  @Override
  public void didChangeConfiguration(DidChangeConfigurationParams params) {
    // There is nothing to set.
  }

  @Override
  public void didChangeWatchedFiles(DidChangeWatchedFilesParams params) {
    session.analyses().run(session.analyses()::forget);
    params.getChanges().forEach(change -> session.changeOf(Uris.path(change.getUri()), b -> b));
  }

  @Override
  public CompletableFuture<WorkspaceEdit> willRenameFiles(RenameFilesParams params) {
    return session.ask(buffers -> UseLinks.moved(params.getFiles(), plans(params, buffers), session.editor()));
  }

  /** Every plan that a file which moves is part of, and the open ones. */
  private List<Analysis> plans(RenameFilesParams params, Buffers buffers) {
    List<Path> files = new ArrayList<>(buffers.open().keySet());
    params.getFiles().forEach(f -> files.add(Uris.path(f.getOldUri())));
    files.forEach(f -> session.analyses().plans().explore(f, buffers));
    return files.stream().filter(f -> f.toString().endsWith(".wattle")).flatMap(f -> session.analyses().of(f, buffers).stream())
        .distinct().toList();
  }

  @Override
  public void didChangeWorkspaceFolders(DidChangeWorkspaceFoldersParams params) {
    List<Path> added = params.getEvent().getAdded().stream().map(f -> Uris.path(f.getUri())).toList();
    List<Path> removed = params.getEvent().getRemoved().stream().map(f -> Uris.path(f.getUri())).toList();
    Analyses analyses = session.analyses();
    analyses.run(
        () -> {
          List<Path> folders = new ArrayList<>(analyses.plans().folders());
          folders.removeAll(removed);
          folders.addAll(added);
          analyses.plans().setFolders(folders);
        });
  }

  @Override
  public CompletableFuture<Either<List<? extends SymbolInformation>, List<? extends WorkspaceSymbol>>> symbol(
      WorkspaceSymbolParams params) {
    return session.ask(buffers -> Either.forRight(WorkspaceSymbols.find(params.getQuery(), buffers, session.analyses())));
  }
}
