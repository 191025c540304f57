package wattle.bench;

import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.channels.Pipe;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import wattle.server.LanguageServerProcess;

/**
 * One key stroke in a plan of 10,000 lines, from the message of the editor to the findings that come back: the language
 * server over pipes, warm. Every other stroke takes a character off somewhere in the plan, so that a finding comes, and the
 * next puts it back. Between strokes passes the time that a quick typist takes, in which the later phases judge.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 10)
@Measurement(iterations = 5, time = 10)
public class KeyStrokeBench implements LanguageClient {
  private static final String URI = Path.of("tower.wattle").toUri().toString();
  private static final int HOUSES = 45;
  private static final long BETWEEN_STROKES_MS = 150;

  /** What is typed at. */
  public enum At {
    /** The unit of a breaker's rating in a slot line. */
    RATING("15 A  arc-fault", 3),
    /** The unit of a run's length in a branch. */
    LENGTH("--4 m--", 4),
    /** The unit of what a device draws. */
    LOAD("light 12 W", 9),
    /** The end of a name that a switch controls. */
    NAME("switch for lamp", 14),
    /** The end of a device's own name, which a branch leads to. */
    DEVICE("o1: receptacle", 1);

    private final String piece;
    private final int character;

    At(String piece, int character) {
      this.piece = piece;
      this.character = character;
    }
  }

  /** What is typed at. */
  @Param
  public At at;

  /** Whether each of the 900 rooms has an error, which the editor is told anew with each change of the findings. */
  @Param({"false", "true"})
  public boolean faulty;

  private final BlockingQueue<PublishDiagnosticsParams> told = new LinkedBlockingQueue<>();
  private final ExecutorService threads = Executors.newCachedThreadPool();
  private Pipe toServer;
  private LanguageServer server;
  private List<Position> pieces;
  private volatile int version = 1;
  private int stroke;

  /** Opens the plan. */
  @Setup
  public void open() throws IOException, InterruptedException {
    String plan = Tower.plan(HOUSES, faulty);
    pieces = Tower.places(plan, at.piece);
    toServer = Pipe.open();
    Pipe fromServer = Pipe.open();
    var in = Channels.newInputStream(toServer.source());
    var out = Channels.newOutputStream(fromServer.sink());
    threads.execute(() -> LanguageServerProcess.serve(in, out, "bench"));
    Launcher<LanguageServer> launcher = new Launcher.Builder<LanguageServer>()
        .setLocalService(this)
        .setRemoteInterface(LanguageServer.class)
        .setInput(Channels.newInputStream(fromServer.source()))
        .setOutput(Channels.newOutputStream(toServer.sink()))
        .setExecutorService(threads)
        .create();
    launcher.startListening();
    server = launcher.getRemoteProxy();
    InitializeParams params = new InitializeParams();
    params.setCapabilities(new ClientCapabilities());
    server.initialize(params).join();
    server.getTextDocumentService().didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(URI, "wattle", 1, plan)));
    told.take();
    told.take(); // what the later phases judge is told once before anything is typed, and stands from then on
  }

  /** The pause of a typist. */
  @Setup(Level.Invocation)
  public void pause() throws InterruptedException {
    Thread.sleep(BETWEEN_STROKES_MS);
  }

  /** From the stroke to its findings. */
  @Benchmark
  public int stroke() throws InterruptedException {
    Position piece = pieces.get(stroke / 2 * 37 % pieces.size());
    boolean off = stroke++ % 2 == 0;
    int character = piece.getCharacter() + at.character;
    Range range = new Range(new Position(piece.getLine(), character), new Position(piece.getLine(), character + (off ? 1 : 0)));
    version++;
    server
        .getTextDocumentService()
        .didChange(
            new DidChangeTextDocumentParams(
                new VersionedTextDocumentIdentifier(URI, version),
                List.of(new TextDocumentContentChangeEvent(range, off ? "" : at.piece.substring(at.character, at.character + 1)))));
    PublishDiagnosticsParams answer = told.take();
    while (answer.getVersion() != version) {
      answer = told.take(); // what was judged of a version before has come meanwhile
    }
    // What a plan has silenced is shown as well.
    int found = (int) answer.getDiagnostics().stream()
        .filter(shown -> shown.getSeverity() == DiagnosticSeverity.Error && !shown.getCode().getLeft().equals(Tower.FAULT)).count();
    if ((found > 0) != off) {
      throw new IllegalStateException(found + " findings after stroke " + stroke);
    }
    return found;
  }

  /** Ends the session. */
  @TearDown
  public void close() throws IOException {
    toServer.sink().close();
    threads.shutdownNow();
  }

  @Override
  public void publishDiagnostics(PublishDiagnosticsParams diagnostics) {
    told.add(diagnostics);
  }

  @Override
  public void telemetryEvent(Object object) {
    throw new IllegalStateException("the server tells nobody what is done with it");
  }

  @Override
  public void showMessage(MessageParams message) {
    throw new IllegalStateException(message.getMessage());
  }

  @Override
  public CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams params) {
    throw new IllegalStateException("the server asks nothing");
  }

  @Override
  public void logMessage(MessageParams message) {
    throw new IllegalStateException(message.getMessage());
  }
}
