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
 * @param pulls whether it asks for the findings of open documents, and can be told to ask again; they are then not sent unasked
 */
record Editor(boolean versionedEdits, boolean nestedSymbols, boolean pulls) {
  /** The least that an editor can do. */
  static final Editor PLAIN = new Editor(false, false, false);

  static Editor of(ClientCapabilities client) {
    Optional<WorkspaceClientCapabilities> workspace = Optional.ofNullable(client.getWorkspace());
    Optional<TextDocumentClientCapabilities> document = Optional.ofNullable(client.getTextDocument());
    return new Editor(
        workspace.map(WorkspaceClientCapabilities::getWorkspaceEdit).map(e -> e.getDocumentChanges()).orElse(false),
        document
            .map(TextDocumentClientCapabilities::getDocumentSymbol)
            .map(DocumentSymbolCapabilities::getHierarchicalDocumentSymbolSupport)
            .orElse(false),
        document.map(TextDocumentClientCapabilities::getDiagnostic).isPresent()
            && workspace.map(WorkspaceClientCapabilities::getDiagnostics).map(d -> d.getRefreshSupport()).orElse(false));
  }

  /** Whether it can be asked to tell of changes on disk. */
  static boolean watchesFiles(ClientCapabilities client) {
    return Optional.ofNullable(client.getWorkspace())
        .map(WorkspaceClientCapabilities::getDidChangeWatchedFiles)
        .map(w -> w.getDynamicRegistration())
        .orElse(false);
  }
}
