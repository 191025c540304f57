package wattle.live;

import java.nio.file.Path;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.Completeness;
import wattle.finding.Finding;
import wattle.read.Reading;
import wattle.read.SourceReader;

/**
 * The plan on disk, version after version. A text of which something cannot be understood does not take the place of one
 * that could: its findings are told, and pictures stay those of the last that was whole. One thread reads; any may look.
 */
final class LivePlan {
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm:ss");

  private final Path file;
  private final SourceReader reader;
  private final Compiler compiler;
  private Compilation read;
  private Optional<String> gone = Optional.empty();
  private volatile Version latest;

  /**
   * Reads the plan for the first time.
   *
   * @param reading remembers what it has read, so that a save is quick
   * @throws SourceReader.Unreadable where it cannot be read
   */
  LivePlan(Path file, SourceReader reader, Reading reading) throws SourceReader.Unreadable {
    this.file = file;
    this.reader = reader;
    compiler = new Compiler(reader, reading);
    read = structure();
    latest = new Version(1, read, read.findings(), trouble(read, read), now());
  }

  private Compilation structure() throws SourceReader.Unreadable {
    return compiler.structure(reader.read(file, file.toString()), file, List.of());
  }

  /** Reads the files again; that the plan is gone is kept for {@link #show}. */
  Compilation reread() {
    try {
      read = structure();
      gone = Optional.empty();
    } catch (SourceReader.Unreadable e) {
      gone = Optional.of(e.getMessage());
    }
    return read;
  }

  /** Makes what was read last the latest version, with the findings of reading and binding it. */
  Version show() {
    Compilation shown = isWhole(read) || !isWhole(latest.shown()) ? read : latest.shown();
    List<Finding> findings = gone.isPresent() ? latest.findings() : read.findings();
    Optional<String> trouble = gone.map(why -> why + ". The page shows the plan as last read.").or(() -> trouble(read, shown));
    latest = new Version(latest.number() + 1, shown, findings, trouble, now());
    return latest;
  }

  /** The same version with what the phases that judge have found as well. */
  Version judge() {
    if (gone.isEmpty()) {
      List<Finding> all = compiler.judge(read).findings();
      latest = new Version(latest.number() + 1, latest.shown(), all, latest.trouble(), latest.read());
    }
    return latest;
  }

  Version latest() {
    return latest;
  }

  private static boolean isWhole(Compilation plan) {
    return plan.completeness() != Completeness.IN_PIECES;
  }

  private static Optional<String> trouble(Compilation read, Compilation shown) {
    if (isWhole(read)) {
      return Optional.empty();
    }
    return Optional.of(
        read == shown
            ? "Part of the plan was not understood and is left out; the figures are for the rest."
            : "Part of the plan cannot be understood; the page shows the last version that could be.");
  }

  private static String now() {
    return LocalTime.now().format(TIME);
  }
}
