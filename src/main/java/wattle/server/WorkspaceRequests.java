package wattle.server;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidChangeWorkspaceFoldersParams;
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
    params.getChanges().forEach(change -> session.changeOf(Uris.path(change.getUri()), b -> b));
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
}
