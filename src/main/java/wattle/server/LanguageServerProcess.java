package wattle.server;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.lang.reflect.InvocationTargetException;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.LanguageClient;

/**
 * One run of the language server: from the first byte that an editor sends to the end of its input. A thread reads
 * messages and keeps the open texts; a second one compiles and answers. Messages that cannot be read are answered with an
 * error or passed over, and reading goes on with the next.
 */
public final class LanguageServerProcess {
  /**
   * The library logs each message that it cannot read, with a trace, where an editor may show it as a crash; the editor is
   * told of them by the protocol. Held here, since loggers that nobody holds forget how they were set.
   */
  private static final Logger PROTOCOL_LOG = Logger.getLogger("org.eclipse.lsp4j");

  private LanguageServerProcess() {}

  /**
   * Serves until the editor says exit, its end of the streams closes, or an answer cannot be written.
   *
   * @param version told to the editor
   * @return 0 where the editor said that it would end, or simply went away; 1 where it said exit without shutdown
   */
  public static int serve(InputStream in, OutputStream out, String version) {
    PROTOCOL_LOG.setLevel(Level.OFF);
    ExecutorService reading = Executors.newSingleThreadExecutor(task -> daemon(task, "messages"));
    CompletableFuture<Integer> ended = new CompletableFuture<>();
    try (Analyses analyses = new Analyses();
        Session session = new Session(analyses)) {
      PlanServer server = new PlanServer(session, version, ended::complete);
      Launcher<LanguageClient> launcher = new EditorLauncher(new EditorInput(in), new Unanswered(server))
          .setLocalService(server)
          .setRemoteInterface(LanguageClient.class)
          .setInput(in)
          .validateMessages(true)
          .setOutput(new EditorOutput(out, () -> ended.complete(0)))
          .setExecutorService(reading)
          .setExceptionHandler(LanguageServerProcess::answer)
          .create();
      server.connect(launcher.getRemoteProxy());
      Future<Void> listening = launcher.startListening();
      daemon(() -> await(listening, ended), "end of input").start();
      return ended.join();
    } catch (IOException e) {
      return 0; // the session is over; a file of the library that would not go lies with other temporary ones
    } finally {
      reading.shutdownNow();
    }
  }

  /** What the editor is told of a question that was not answered: the refusal itself, or one line about a bug. */
  private static ResponseError answer(Throwable problem) {
    Throwable cause = problem;
    while ((cause instanceof CompletionException || cause instanceof InvocationTargetException) && cause.getCause() != null) {
      cause = cause.getCause();
    }
    return cause instanceof ResponseErrorException refusal
        ? refusal.getResponseError()
        : new ResponseError(ResponseErrorCode.InternalError, "internal error: " + cause + "; please report it with the plan", null);
  }

  private static void await(Future<Void> listening, CompletableFuture<Integer> ended) {
    try {
      listening.get();
      ended.complete(0);
    } catch (InterruptedException | CancellationException e) {
      ended.complete(0); // the session was ended from elsewhere
    } catch (ExecutionException e) {
      ended.completeExceptionally(e.getCause());
    }
  }

  private static Thread daemon(Runnable task, String name) {
    Thread thread = new Thread(task, "wattle " + name);
    thread.setDaemon(true);
    return thread;
  }
}
