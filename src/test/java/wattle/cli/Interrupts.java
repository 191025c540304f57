package wattle.cli;

import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Whether a process that a test starts can be interrupted at all. */
final class Interrupts {
  private static final Path STATUS = Path.of("/proc/self/status");
  /** The second signal, counted from the lowest bit; signal(7). */
  private static final long INTERRUPT = 0b10;

  private Interrupts() {}

  /** A shell that is not interactive lets what it runs in the background ignore interrupts, and so does all that this starts. */
  static void assumeNotIgnored() throws IOException {
    List<String> lines = Files.exists(STATUS) ? Files.readAllLines(STATUS) : List.of();
    boolean ignored = lines.stream().filter(l -> l.startsWith("SigIgn:"))
        .anyMatch(l -> (Long.parseUnsignedLong(l.substring("SigIgn:".length()).strip(), 16) & INTERRUPT) != 0);
    assumeFalse(ignored, "interrupts are ignored here, as in the background of a script: run the tests in the foreground");
  }
}
