package wattle.server;

import java.util.List;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionOptions;
import org.eclipse.lsp4j.CodeLensOptions;
import org.eclipse.lsp4j.CompletionOptions;
import org.eclipse.lsp4j.DiagnosticRegistrationOptions;
import org.eclipse.lsp4j.DocumentLinkOptions;
import org.eclipse.lsp4j.FileOperationFilter;
import org.eclipse.lsp4j.FileOperationOptions;
import org.eclipse.lsp4j.FileOperationPattern;
import org.eclipse.lsp4j.FileOperationsServerCapabilities;
import org.eclipse.lsp4j.RenameOptions;
import org.eclipse.lsp4j.SaveOptions;
import org.eclipse.lsp4j.SemanticTokensWithRegistrationOptions;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.SignatureHelpOptions;
import org.eclipse.lsp4j.TextDocumentSyncKind;
import org.eclipse.lsp4j.TextDocumentSyncOptions;
import org.eclipse.lsp4j.WorkspaceFoldersOptions;
import org.eclipse.lsp4j.WorkspaceServerCapabilities;

/** What the server tells an editor that it can do. */
final class Abilities {
  private Abilities() {}

  static ServerCapabilities of(Editor editor) {
    ServerCapabilities all = new ServerCapabilities();
    TextDocumentSyncOptions sync = new TextDocumentSyncOptions();
    sync.setOpenClose(true);
    sync.setChange(TextDocumentSyncKind.Incremental);
    sync.setSave(new SaveOptions(false));
    all.setTextDocumentSync(sync);
    all.setDocumentFormattingProvider(true);
    all.setDocumentRangeFormattingProvider(true);
    all.setSelectionRangeProvider(true);
    all.setDocumentLinkProvider(new DocumentLinkOptions(false));
    all.setSignatureHelpProvider(new SignatureHelpOptions(List.of("(", ",")));
    if (editor.pulls()) {
      all.setDiagnosticProvider(new DiagnosticRegistrationOptions(true, false));
    }
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
    SemanticTokensWithRegistrationOptions tokens = new SemanticTokensWithRegistrationOptions(TokenColors.legend());
    tokens.setFull(true);
    all.setSemanticTokensProvider(tokens);
    WorkspaceFoldersOptions folders = new WorkspaceFoldersOptions();
    folders.setSupported(true);
    folders.setChangeNotifications(true);
    WorkspaceServerCapabilities workspace = new WorkspaceServerCapabilities(folders);
    FileOperationsServerCapabilities files = new FileOperationsServerCapabilities();
    files.setWillRename(new FileOperationOptions(List.of(new FileOperationFilter(new FileOperationPattern("**")))));
    workspace.setFileOperations(files);
    all.setWorkspace(workspace);
    return all;
  }
}
