package wattle.cli;

import java.io.PrintWriter;
import wattle.emit.media.text.VisibleWriter;

/**
 * How many of many plans are done, in one line of the terminal that standard error goes to, written over itself; nothing where no
 * terminal shows it.
 */
final class Progress {
  private static final long EACH_NANOS = 100_000_000;

  private final PrintWriter to;
  private final boolean shown;
  private final int all;
  private int done;
  private int width;
  private long last;

  /** @param shown whether a terminal shows it */
  Progress(PrintWriter err, boolean shown, int all) {
    // The gate for text of plans lets no carriage return through, and this line has none of their text.
    to = err instanceof VisibleWriter visible ? visible.unchanged() : err;
    this.shown = shown;
    this.all = all;
  }

  /** One more is done. */
  void step() {
    done++;
    if (shown && (width == 0 || System.nanoTime() - last >= EACH_NANOS)) {
      last = System.nanoTime();
      String line = done + " of " + all;
      to.print("\r" + line);
      to.flush();
      width = line.length();
    }
  }

  /** Takes the line away, before something else is printed and at the end. */
  void clear() {
    if (width > 0) {
      to.print("\r" + " ".repeat(width) + "\r");
      to.flush();
      width = 0;
    }
  }
}
