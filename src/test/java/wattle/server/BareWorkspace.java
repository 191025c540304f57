package wattle.server;

import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.services.WorkspaceService;

/** Answers no request: only what the interface demands is there. */
final class BareWorkspace implements WorkspaceService {
  @Override
  public void didChangeConfiguration(DidChangeConfigurationParams params) {
    // nothing is kept
  }

  @Override
  public void didChangeWatchedFiles(DidChangeWatchedFilesParams params) {
    // nothing is kept
  }
}
