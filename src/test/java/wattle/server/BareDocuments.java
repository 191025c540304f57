package wattle.server;

import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.services.TextDocumentService;

/** Answers no request: only what the interface demands is there. */
final class BareDocuments implements TextDocumentService {
  @Override
  public void didOpen(DidOpenTextDocumentParams params) {
    // nothing is kept
  }

  @Override
  public void didChange(DidChangeTextDocumentParams params) {
    // nothing is kept
  }

  @Override
  public void didClose(DidCloseTextDocumentParams params) {
    // nothing is kept
  }

  @Override
  public void didSave(DidSaveTextDocumentParams params) {
    // nothing is kept
  }
}
