package wattle.server;

import java.util.Optional;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.DocumentSymbolCapabilities;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.eclipse.lsp4j.WorkspaceClientCapabilities;

/**
 * What the editor can take, where answers depend on it.
 *
 * @param versionedEdits whether edits may name the version of the text that they are for
 * @param nestedSymbols whether the outline may be a tree
 */
record Editor(boolean versionedEdits, boolean nestedSymbols) {
  /** The least that an editor can do. */
  static final Editor PLAIN = new Editor(false, false);

  static Editor of(ClientCapabilities client) {
    Optional<WorkspaceClientCapabilities> workspace = Optional.ofNullable(client.getWorkspace());
    Optional<TextDocumentClientCapabilities> document = Optional.ofNullable(client.getTextDocument());
    return new Editor(
        workspace.map(WorkspaceClientCapabilities::getWorkspaceEdit).map(e -> e.getDocumentChanges()).orElse(false),
        document
            .map(TextDocumentClientCapabilities::getDocumentSymbol)
            .map(DocumentSymbolCapabilities::getHierarchicalDocumentSymbolSupport)
            .orElse(false));
  }

  /** Whether it can be asked to tell of changes on disk. */
  static boolean watchesFiles(ClientCapabilities client) {
    return Optional.ofNullable(client.getWorkspace())
        .map(WorkspaceClientCapabilities::getDidChangeWatchedFiles)
        .map(w -> w.getDynamicRegistration())
        .orElse(false);
  }
}
