package wattle.server;

import java.util.List;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionOptions;
import org.eclipse.lsp4j.CodeLensOptions;
import org.eclipse.lsp4j.CompletionOptions;
import org.eclipse.lsp4j.RenameOptions;
import org.eclipse.lsp4j.SaveOptions;
import org.eclipse.lsp4j.SemanticTokensWithRegistrationOptions;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.TextDocumentSyncKind;
import org.eclipse.lsp4j.TextDocumentSyncOptions;
import org.eclipse.lsp4j.WorkspaceFoldersOptions;
import org.eclipse.lsp4j.WorkspaceServerCapabilities;

/** What the server tells an editor that it can do. */
final class Abilities {
  private Abilities() {}

  static ServerCapabilities all() {
    ServerCapabilities all = new ServerCapabilities();
    TextDocumentSyncOptions sync = new TextDocumentSyncOptions();
    sync.setOpenClose(true);
    sync.setChange(TextDocumentSyncKind.Incremental);
    sync.setSave(new SaveOptions(false));
    all.setTextDocumentSync(sync);
    all.setDocumentFormattingProvider(true);
    all.setFoldingRangeProvider(true);
    all.setDocumentSymbolProvider(true);
    all.setCodeActionProvider(new CodeActionOptions(List.of(CodeActionKind.QuickFix)));
    all.setHoverProvider(true);
    all.setCompletionProvider(new CompletionOptions(false, List.of(".", "+", ":", " ")));
    all.setDefinitionProvider(true);
    all.setReferencesProvider(true);
    all.setDocumentHighlightProvider(true);
    all.setRenameProvider(new RenameOptions(true));
    all.setWorkspaceSymbolProvider(true);
    all.setInlayHintProvider(true);
    all.setCodeLensProvider(new CodeLensOptions(false));
    SemanticTokensWithRegistrationOptions tokens = new SemanticTokensWithRegistrationOptions(TokenColours.legend());
    tokens.setFull(true);
    all.setSemanticTokensProvider(tokens);
    WorkspaceFoldersOptions folders = new WorkspaceFoldersOptions();
    folders.setSupported(true);
    folders.setChangeNotifications(true);
    all.setWorkspace(new WorkspaceServerCapabilities(folders));
    return all;
  }
}
