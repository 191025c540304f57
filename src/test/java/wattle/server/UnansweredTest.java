package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.jsonrpc.json.JsonRpcMethod;
import org.eclipse.lsp4j.jsonrpc.services.ServiceEndpoints;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;
import org.junit.jupiter.api.Test;

/** What the server does not offer is known by name before it is asked. */
class UnansweredTest {
  private static Unanswered ofOurs() throws Exception {
    try (Analyses analyses = new Analyses(); Session session = new Session(analyses)) {
      return new Unanswered(new PlanServer(session, "test", code -> {}));
    }
  }

  @Test
  void whatIsOfferedIsAnsweredAndTheRestIsNot() throws Exception {
    Unanswered unanswered = ofOurs();
    assertThat(unanswered.all()).contains("textDocument/moniker", "textDocument/onTypeFormatting", "textDocument/semanticTokens/range",
        "workspace/executeCommand", "textDocument/prepareCallHierarchy", "callHierarchy/incomingCalls", "codeLens/resolve");
    for (String offered : List.of("initialize", "shutdown", "textDocument/hover", "textDocument/completion", "textDocument/rename",
        "textDocument/semanticTokens/full", "workspace/symbol", "workspace/willRenameFiles", "textDocument/diagnostic")) {
      assertThat(unanswered.has(offered)).as(offered).isFalse();
    }
  }

  /** The names are those by which the library knows the requests; one that it does not know is none of them. */
  @Test
  void theNamesAreThoseOfTheProtocol() throws Exception {
    Map<String, JsonRpcMethod> known = ServiceEndpoints.getSupportedMethods(LanguageServer.class);
    Set<String> requests = known.values().stream().filter(m -> !m.isNotification()).map(JsonRpcMethod::getMethodName)
        .collect(Collectors.toCollection(TreeSet::new));
    Unanswered unanswered = ofOurs();
    assertThat(unanswered.all()).hasSizeGreaterThan(20).isSubsetOf(requests);
    assertThat(unanswered.has("wattle/unheard")).isFalse();
  }

  /** A server that implements nothing beyond what it must answers only that. */
  @Test
  void aServerThatAnswersNothingOffersNothing() {
    LanguageServer bare = new LanguageServer() {
      @Override
      public CompletableFuture<InitializeResult> initialize(InitializeParams params) {
        return CompletableFuture.completedFuture(new InitializeResult());
      }

      @Override
      public CompletableFuture<Object> shutdown() {
        return CompletableFuture.completedFuture(null);
      }

      @Override
      public void exit() {
        // nothing to end
      }

      @Override
      public TextDocumentService getTextDocumentService() {
        return new BareDocuments();
      }

      @Override
      public WorkspaceService getWorkspaceService() {
        return new BareWorkspace();
      }
    };
    Unanswered unanswered = new Unanswered(bare);
    assertThat(unanswered.all()).contains("textDocument/hover", "workspace/symbol").doesNotContain("initialize", "shutdown");
  }
}
