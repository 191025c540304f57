package wattle.live;

import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/**
 * The pages that are open, each told by server-sent events which version of the plan is the latest. A page that was closed
 * is noticed when it can no longer be written to, so something is written every now and then.
 */
final class Listeners {
  /** Pages open at once; each takes a thread. */
  static final int MOST = 48;

  private static final long BEAT_MILLIS = 1500;

  private final Set<Object> open = ConcurrentHashMap.newKeySet();
  private final Object news = new Object();
  private volatile int version;
  private volatile boolean ended;
  private final AtomicLong lastSeen = new AtomicLong(System.nanoTime());

  /** Tells all of them. */
  void tell(int latest) {
    synchronized (news) {
      version = latest;
      news.notifyAll();
    }
  }

  boolean isFull() {
    return open.size() >= MOST;
  }

  /** Speaks to one page until it is closed; the thread is its own for so long. */
  void serve(HttpExchange exchange) throws IOException {
    Answer.protect(exchange.getResponseHeaders());
    exchange.getResponseHeaders().set("Content-Type", "text/event-stream; charset=utf-8");
    exchange.sendResponseHeaders(200, 0);
    open.add(exchange);
    try (OutputStream out = exchange.getResponseBody()) {
      int told = 0;
      while (!ended) {
        int now = version;
        out.write((now == told ? ":\n\n" : "event: plan\ndata: " + now + "\n\n").getBytes(StandardCharsets.UTF_8));
        out.flush();
        told = now;
        await(told);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      open.remove(exchange);
      lastSeen.set(System.nanoTime());
    }
  }

  private void await(int told) throws InterruptedException {
    long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(BEAT_MILLIS);
    synchronized (news) {
      while (version == told && !ended) {
        long left = TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime());
        if (left <= 0) {
          return;
        }
        news.wait(left);
      }
    }
  }

  /** For how long no page has been open; none where one is. */
  long idleMillis() {
    return open.isEmpty() ? TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - lastSeen.get()) : 0;
  }

  void end() {
    synchronized (news) {
      ended = true;
      news.notifyAll();
    }
  }
}
