package wattle.server;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.services.TextDocumentService;

/** What an editor tells and asks about one document. */
final class DocumentRequests implements TextDocumentService {
  private final Session session;

  DocumentRequests(Session session) {
    this.session = session;
  }

  @Override
  public void didOpen(DidOpenTextDocumentParams params) {
    TextDocumentItem opened = params.getTextDocument();
    Path path = Uris.path(opened.getUri());
    session.changeOf(path, b -> b.with(path, new Buffer(opened.getUri(), opened.getVersion(), opened.getText())));
  }

  @Override
  public void didChange(DidChangeTextDocumentParams params) {
    Path path = Uris.path(params.getTextDocument().getUri());
    int version = params.getTextDocument().getVersion();
    // A change of a document that was never opened has no text to change.
    session.change(
        b -> b.at(path).map(t -> b.with(path, t.changed(version, params.getContentChanges()))).orElse(b));
  }

  @Override
  public void didClose(DidCloseTextDocumentParams params) {
    Path path = Uris.path(params.getTextDocument().getUri());
    session.changeOf(path, b -> b.without(path));
  }

  @Override
  public void didSave(DidSaveTextDocumentParams params) {
    session.changeOf(Uris.path(params.getTextDocument().getUri()), b -> b);
  }

  @Override
  public CompletableFuture<List<? extends TextEdit>> formatting(DocumentFormattingParams params) {
    return session.ask(params.getTextDocument().getUri(), List.of(), Formatting::edits);
  }

  @Override
  public CompletableFuture<List<FoldingRange>> foldingRange(FoldingRangeRequestParams params) {
    return session.ask(params.getTextDocument().getUri(), List.of(), Folding::ranges);
  }

  @Override
  public CompletableFuture<List<Either<SymbolInformation, DocumentSymbol>>> documentSymbol(DocumentSymbolParams params) {
    return session.ask(
        params.getTextDocument().getUri(), List.of(), q -> Outline.answer(q, session.editor().nestedSymbols()));
  }

  @Override
  public CompletableFuture<List<Either<Command, CodeAction>>> codeAction(CodeActionParams params) {
    return session.ask(
        params.getTextDocument().getUri(), List.of(), q -> QuickFixes.answer(q, params, session.editor()));
  }
}
