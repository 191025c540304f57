package wattle.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/**
 * Runs a check again whenever one of the files it depends on has changed, appeared or gone, until the process is
 * interrupted or nobody reads what it prints. Files are looked at a few times a second: that works on every file system
 * and with editors that save by renaming, and a plan has few files.
 */
final class WatchLoop {
  private static final long LOOK_MILLIS = 150;
  /** A change counts once the files have stood still so long, since a save may take several writes. */
  private static final long STILL_MILLIS = 40;
  private static final long FINISH_SECONDS = 2;

  private final PrintWriter out;
  private final CountDownLatch ended = new CountDownLatch(1);
  private volatile boolean stopped;

  WatchLoop(PrintWriter out) {
    this.out = out;
  }

  /** What is seen of a file without reading it. */
  private record Stamp(Instant changed, long size, Optional<Object> key) {
    static final Stamp GONE = new Stamp(Instant.EPOCH, -1, Optional.empty());

    static Stamp of(Path path) {
      try {
        BasicFileAttributes seen = Files.readAttributes(path, BasicFileAttributes.class);
        return new Stamp(seen.lastModifiedTime().toInstant(), seen.size(), Optional.ofNullable(seen.fileKey()));
      } catch (IOException e) {
        return GONE; // not there, or not to be seen: the check itself says which
      }
    }
  }

  /** @param check prints what it finds and gives the files it depends on, those that could not be read as well */
  void run(Supplier<Collection<Path>> check) {
    Thread looking = Thread.currentThread();
    Thread interrupt = new Thread(() -> finish(looking), "interrupt");
    Runtime.getRuntime().addShutdownHook(interrupt);
    try {
      Map<Path, Stamp> before = Map.of();
      while (!stopped) {
        Instant began = Instant.now();
        Map<Path, Stamp> read = new HashMap<>();
        for (Path path : check.get()) {
          Stamp now = Stamp.of(path);
          // What changed while it was being read is read once more.
          read.put(path, now.changed().isAfter(began) ? Stamp.GONE : before.getOrDefault(path, now));
        }
        if (out.checkError()) {
          return;
        }
        before = awaitChange(read);
      }
    } catch (InterruptedException e) {
      stopped = true;
    } finally {
      ended.countDown();
    }
    if (!stopped) {
      Runtime.getRuntime().removeShutdownHook(interrupt);
    }
  }

  /** Waits until the files differ and stand still again; how they are then comes back. */
  private Map<Path, Stamp> awaitChange(Map<Path, Stamp> read) throws InterruptedException {
    Map<Path, Stamp> now = stamps(read);
    while (now.equals(read)) {
      Thread.sleep(LOOK_MILLIS);
      now = stamps(read);
    }
    Map<Path, Stamp> last = Map.of();
    while (!now.equals(last)) {
      last = now;
      Thread.sleep(STILL_MILLIS);
      now = stamps(read);
    }
    return now;
  }

  private static Map<Path, Stamp> stamps(Map<Path, Stamp> of) {
    Map<Path, Stamp> now = new HashMap<>();
    of.keySet().forEach(path -> now.put(path, Stamp.of(path)));
    return now;
  }

  /** On interrupt: a check that is running ends its line, and then the process ends. */
  private void finish(Thread looking) {
    stopped = true;
    looking.interrupt();
    try {
      if (ended.await(FINISH_SECONDS, TimeUnit.SECONDS)) {
        out.flush();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
