package wattle.server;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CodeLens;
import org.eclipse.lsp4j.CodeLensParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.DocumentDiagnosticParams;
import org.eclipse.lsp4j.DocumentDiagnosticReport;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.eclipse.lsp4j.DocumentLink;
import org.eclipse.lsp4j.DocumentLinkParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.LocationLink;
import org.eclipse.lsp4j.PrepareRenameDefaultBehavior;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.PrepareRenameResult;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RelatedFullDocumentDiagnosticReport;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SelectionRange;
import org.eclipse.lsp4j.SelectionRangeParams;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureHelpParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either3;
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
        path, b -> b.at(path).map(t -> b.with(path, t.changed(version, params.getContentChanges()))).orElse(b));
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
  public CompletableFuture<List<? extends TextEdit>> rangeFormatting(DocumentRangeFormattingParams params) {
    return session.ask(params.getTextDocument().getUri(), List.of(), q -> Formatting.edits(q, params.getRange()));
  }

  @Override
  public CompletableFuture<List<SelectionRange>> selectionRange(SelectionRangeParams params) {
    return session.ask(params.getTextDocument().getUri(), List.of(), q -> Selections.of(q, params.getPositions()));
  }

  @Override
  public CompletableFuture<List<DocumentLink>> documentLink(DocumentLinkParams params) {
    return session.ask(params.getTextDocument().getUri(), List.of(), UseLinks::of);
  }

  @Override
  public CompletableFuture<SignatureHelp> signatureHelp(SignatureHelpParams params) {
    return session.ask(params.getTextDocument().getUri(), null, q -> Signatures.at(q, params.getPosition()).orElse(null));
  }

  @Override
  public CompletableFuture<DocumentDiagnosticReport> diagnostic(DocumentDiagnosticParams params) {
    return session.askJudged(
        params.getTextDocument().getUri(),
        new DocumentDiagnosticReport(new RelatedFullDocumentDiagnosticReport(List.of())),
        q -> new DocumentDiagnosticReport(new RelatedFullDocumentDiagnosticReport(
            Diagnostics.of(q.analysis(), session.library()).getOrDefault(q.file(), List.of()))));
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

  @Override
  public CompletableFuture<Hover> hover(HoverParams params) {
    return session.ask(params.getTextDocument().getUri(), null, q -> Hovers.at(q, params.getPosition(), session.library()).orElse(null));
  }

  @Override
  public CompletableFuture<Either<List<CompletionItem>, CompletionList>> completion(CompletionParams params) {
    return session.ask(
        params.getTextDocument().getUri(), Either.forLeft(List.of()), q -> Either.forLeft(Completions.at(q, params.getPosition())));
  }

  @Override
  public CompletableFuture<Either<List<? extends Location>, List<? extends LocationLink>>> definition(
      DefinitionParams params) {
    return session.ask(
        params.getTextDocument().getUri(),
        Either.forLeft(List.of()),
        q -> Either.forLeft(References.definition(q, params.getPosition(), session.library())));
  }

  @Override
  public CompletableFuture<List<? extends Location>> references(ReferenceParams params) {
    return session.ask(
        params.getTextDocument().getUri(),
        List.of(),
        q -> References.references(q, params.getPosition(), params.getContext().isIncludeDeclaration()));
  }

  @Override
  public CompletableFuture<List<? extends DocumentHighlight>> documentHighlight(DocumentHighlightParams params) {
    return session.ask(params.getTextDocument().getUri(), List.of(), q -> References.highlights(q, params.getPosition()));
  }

  @Override
  public CompletableFuture<Either3<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>> prepareRename(
      PrepareRenameParams params) {
    return session.ask(
        params.getTextDocument().getUri(),
        null,
        q -> Renaming.prepare(q, params.getPosition()).map(Either3::<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>forSecond)
            .orElse(null));
  }

  @Override
  public CompletableFuture<WorkspaceEdit> rename(RenameParams params) {
    return session.ask(
        params.getTextDocument().getUri(),
        null,
        q -> Renaming.rename(q, params.getPosition(), params.getNewName(), session.editor()));
  }

  @Override
  public CompletableFuture<SemanticTokens> semanticTokensFull(SemanticTokensParams params) {
    return session.ask(params.getTextDocument().getUri(), new SemanticTokens(List.of()), TokenColors::of);
  }

  @Override
  public CompletableFuture<List<InlayHint>> inlayHint(InlayHintParams params) {
    return session.ask(params.getTextDocument().getUri(), List.of(), q -> Inlays.in(q, params.getRange()));
  }

  @Override
  public CompletableFuture<List<? extends CodeLens>> codeLens(CodeLensParams params) {
    return session.askJudged(params.getTextDocument().getUri(), List.of(), TrialLenses::of);
  }
}
