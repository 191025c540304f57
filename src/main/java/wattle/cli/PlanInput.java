package wattle.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Option;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.SheetBounds;
import wattle.finding.Source;
import wattle.library.StandardLibrary;
import wattle.read.Reading;
import wattle.read.SourceReader;

/** How a command reads plans: from files, or from standard input as {@code -}. */
final class PlanInput {
  private static final String USUAL_LARGEST = "" + SourceReader.USUAL_MOST_MIB;

  @Option(
      names = "--largest-file",
      paramLabel = "MIB",
      defaultValue = USUAL_LARGEST,
      description = "Largest plan to read, all its files together, in MiB (default: ${DEFAULT-VALUE}).")
  private int largestFile;

  @Option(
      names = "--most-placed",
      paramLabel = "NUMBER",
      defaultValue = "" + SourceReader.USUAL_MOST_PLACED,
      description = "Most items that patterns may place (default: ${DEFAULT-VALUE}).")
  private int mostPlaced;

  @Option(names = "--code", paramLabel = "PACK", completionCandidates = KnownWords.Codes.class,
      description = "Use this code pack instead of the one in the plan.")
  private String code;

  /** As it is where no option says otherwise. */
  static PlanInput usual() {
    PlanInput usual = new PlanInput();
    usual.largestFile = SourceReader.USUAL_MOST_MIB;
    usual.mostPlaced = SourceReader.USUAL_MOST_PLACED;
    return usual;
  }

  /** Compiles a plan; a plan that cannot be read ends the command. */
  Compilation compile(String name) {
    return compile(read(name), name);
  }

  /** Reads and binds a plan, and judges nothing; a plan that cannot be read ends the command. */
  Compilation structure(String name) {
    return compiler(reader()).structure(read(name), name.equals("-") ? Path.of("standard-input") : path(name));
  }

  /** Compiles a text that stands in for a plan. */
  Compilation compile(Source text, String name) {
    return compiler(reader()).compile(text, name.equals("-") ? Path.of("standard-input") : path(name));
  }

  /** Compiles a plan as it would be with some of its files changed, by path; nothing is written. */
  Compilation compile(String name, Map<Path, String> changed) {
    SourceReader reader = new SourceReader(changed, reader().mostBytes(), mostPlaced);
    try {
      return compiler(reader).compile(reader.read(path(name), name), path(name));
    } catch (SourceReader.Unreadable e) {
      throw new Failure(e.getMessage());
    }
  }

  /** Compiles a plan together with texts that belong to it for this once. */
  Compilation compile(String name, List<Source> beside) {
    return compiler(reader()).compile(read(name), name.equals("-") ? Path.of("standard-input") : path(name), beside);
  }

  private Compiler compiler(SourceReader reader) {
    return code == null ? new Compiler(reader) : new Compiler(reader, underCode());
  }

  /** How a plan is read that will be read again; one under another code is read afresh each time. */
  Reading reading() {
    return code == null ? new Reading.Remembering() : underCode();
  }

  private Reading underCode() {
    if (!StandardLibrary.packNames().contains(code)) {
      throw new Failure("no code pack is called '" + code + "'; there are " + String.join(", ", StandardLibrary.packNames()));
    }
    return new Reading.UnderCode(code);
  }

  /** The text of a plan; one that cannot be read ends the command. */
  Source read(String name) {
    SourceReader reader = reader();
    try {
      return name.equals("-") ? reader.decode(standardInput(), "standard-input") : reader.read(path(name), name);
    } catch (SourceReader.Unreadable e) {
      throw new Failure(e.getMessage());
    } catch (IOException e) {
      throw new Failure("standard input cannot be read: " + e.getMessage());
    }
  }

  /** The text of a sheet of comma-separated cells; one that cannot be read ends the command. */
  Source readSheet(String name) {
    try {
      if (!name.equals("-") && Files.isRegularFile(path(name)) && Files.size(path(name)) > SheetBounds.MOST_BYTES) {
        throw new Failure(name + ": has " + Files.size(path(name)) + " bytes; a sheet of at most " + SheetBounds.MOST_BYTES
            + " bytes is read, so split it");
      }
    } catch (IOException e) {
      throw new Failure(name + ": cannot be read: " + e.getMessage());
    }
    return read(name);
  }

  /**
   * A text as far as it can be read, for tools that stop where a command fails: what is no UTF-8 becomes U+FFFD; a file that
   * is no text at all is empty.
   *
   * @param note why it could not be read as it is; empty where it could
   */
  record Legible(Source source, String note) {}

  Legible legible(String name) {
    SourceReader reader = reader();
    try {
      return new Legible(reader.read(path(name), name), "");
    } catch (SourceReader.Unreadable e) {
      String readable = reader.readable(path(name)).orElseThrow(() -> new Failure(e.getMessage()));
      return new Legible(new Source(name, readable), e.getMessage());
    }
  }

  private static Path path(String name) {
    if (name.isBlank()) {
      throw new Failure("the name of a file is empty; a variable of the shell may not be set");
    }
    try {
      return Path.of(name);
    } catch (InvalidPathException e) {
      throw new Failure("'" + name + "' is not a file path");
    }
  }

  /** From files of at most the size that was asked for. */
  SourceReader reader() {
    if (largestFile < 1 || largestFile > 1024) {
      throw new Failure("--largest-file takes 1 to 1024 MiB");
    }
    if (mostPlaced < 1) {
      throw new Failure("--most-placed takes a number of 1 or more");
    }
    return new SourceReader(Map.of(), (long) largestFile << 20, mostPlaced);
  }

  private byte[] standardInput() throws IOException {
    InputStream in = System.in;
    // One byte past the bound is enough to know that it is passed.
    return in.readNBytes((int) Math.min(Integer.MAX_VALUE - 8, ((long) largestFile << 20) + 1));
  }
}
