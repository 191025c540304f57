package wattle.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

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

  /** What is done again on each change. */
  interface Check {
    /** Reads and judges, and gives the files that this depends on, those that could not be read as well. */
    Set<Path> read();

    /** Prints what was found when it was last read. */
    void tell();
  }

  void run(Check check) {
    Thread looking = Thread.currentThread();
    Thread interrupt = new Thread(() -> finish(looking), "interrupt");
    Runtime.getRuntime().addShutdownHook(interrupt);
    try {
      Set<Path> known = Set.of();
      while (!stopped) {
        Map<Path, Stamp> read = stamps(known);
        Set<Path> paths = check.read();
        // Files are looked at before they are read, so that no change of one in between is lost. One that was not known
        // to belong was not looked at: then all are read once more.
        if (!read.keySet().containsAll(paths)) {
          known = paths;
          continue;
        }
        check.tell();
        if (out.checkError()) {
          return;
        }
        known = paths;
        read.keySet().retainAll(paths);
        awaitChange(read);
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

  /** Waits until the files differ and stand still again. */
  private static void awaitChange(Map<Path, Stamp> read) throws InterruptedException {
    Map<Path, Stamp> now = stamps(read.keySet());
    while (now.equals(read)) {
      Thread.sleep(LOOK_MILLIS);
      now = stamps(read.keySet());
    }
    Map<Path, Stamp> last = Map.of();
    while (!now.equals(last)) {
      last = now;
      Thread.sleep(STILL_MILLIS);
      now = stamps(read.keySet());
    }
  }

  private static Map<Path, Stamp> stamps(Set<Path> of) {
    Map<Path, Stamp> now = new HashMap<>();
    of.forEach(path -> now.put(path, Stamp.of(path)));
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
