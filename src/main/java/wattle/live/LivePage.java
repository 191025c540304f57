package wattle.live;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.file.Path;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import wattle.compiler.Compilation;
import wattle.read.Reading;
import wattle.read.SourceReader;

/**
 * Serves one plan on the loop-back address. Whoever watches the files calls {@link #reread} and {@link #tell} when one has
 * changed; each open page then asks again for what it shows, with its own clicks, so that pages know nothing of each other
 * and the server keeps nothing of them.
 */
public final class LivePage implements AutoCloseable {
  /** Threads beside those of open pages. */
  private static final int WORKERS = 8;

  static {
    // The server of the JDK waits forever for the rest of a request, unless told otherwise before it is first used. A page on
    // this machine sends a request at once; one that comes in halves holds a worker, and may come from anyone here.
    if (System.getProperty("sun.net.httpserver.maxReqTime") == null) {
      System.setProperty("sun.net.httpserver.maxReqTime", "2");
    }
  }

  private final LivePlan plan;
  private final Listeners listeners = new Listeners();
  private final HttpServer server;
  private final ExecutorService workers;
  private final URI address;

  private LivePage(LivePlan plan, HttpServer server, Consumer<String> complain) {
    this.plan = plan;
    this.server = server;
    Gate gate = Gate.of(server.getAddress().getPort());
    address = gate.address();
    workers = Executors.newFixedThreadPool(
        Listeners.MOST + WORKERS,
        task -> {
          // As deep as an expression may nest.
          Thread made = new Thread(null, task, "wattle live", 16L << 20);
          made.setDaemon(true);
          return made;
        });
    server.setExecutor(workers);
    server.createContext("/", new Requests(gate, plan::latest, listeners, complain));
    listeners.tell(plan.latest().number());
    server.start();
  }

  /**
   * Reads a plan and listens.
   *
   * @param port 0 for any that is free
   * @param complain told, in one line, of mistakes of ours
   * @throws SourceReader.Unreadable where the plan cannot be read
   * @throws IOException where the port cannot be listened on
   */
  public static LivePage open(Path file, SourceReader reader, Reading reading, int port, Consumer<String> complain)
      throws SourceReader.Unreadable, IOException {
    LivePlan plan = new LivePlan(file, reader, reading);
    byte[] loopBack = {127, 0, 0, 1};
    HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getByAddress(loopBack), port), 0);
    return new LivePage(plan, server, complain);
  }

  /** Where a browser finds it; the only copy of the token. */
  public URI address() {
    return address;
  }

  /** Reads the files again. */
  public Compilation reread() {
    return plan.reread();
  }

  /** Tells all pages of what was read last: of the house at once, then of what the phases that judge have found. */
  public void tell() {
    listeners.tell(plan.show().number());
    listeners.tell(plan.judge().number());
  }

  /** For how long no page has been open, in milliseconds; 0 where one is. */
  public long idleMillis() {
    return listeners.idleMillis();
  }

  @Override
  public void close() {
    listeners.end();
    server.stop(0);
    workers.shutdownNow();
  }
}
