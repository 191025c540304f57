package wattle.cli;

import java.io.PrintWriter;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Option;
import wattle.emit.media.file.Output;
import wattle.emit.media.file.OutputException;
import wattle.emit.media.file.OutputFiles;
import wattle.emit.media.text.VisibleWriter;

/** Where a command puts its result: on standard output, or in a file whose name also tells the format. */
final class ResultOutput {
  @Option(names = {"-o", "--out"}, paramLabel = "FILE", description = "Write the result to a file instead of standard output.")
  private String out;

  @Option(names = "--force", description = "Replace a file that Wattle did not make.")
  private boolean force;

  /** The file, where one is named. */
  Optional<Path> file() {
    return Optional.ofNullable(out).map(ResultOutput::path);
  }

  static Path path(String name) {
    if (name.isBlank()) {
      // Java takes it for the folder in which the command runs, and all plans there would be set in order.
      throw new Failure("the name of a file is empty; a variable of the shell may not be set");
    }
    try {
      return Path.of(name);
    } catch (InvalidPathException e) {
      throw new Failure("'" + name + "' is not a file path");
    }
  }

  /** The ending of the file's name in lower case, without the dot; absent where no file is named or it has none. */
  Optional<String> ending() {
    return file().flatMap(ResultOutput::ending);
  }

  static Optional<String> ending(Path file) {
    return Optional.ofNullable(file.getFileName())
        .map(Path::toString)
        .filter(n -> n.lastIndexOf('.') > 0)
        .map(n -> n.substring(n.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT));
  }

  /** Puts a text where the user wants it. */
  void write(String text, PrintWriter standardOutput) {
    Optional<Path> file = file();
    if (file.isEmpty()) {
      standardOutput.print(text);
    } else {
      write(List.of(Output.text(file.get(), text)));
    }
  }

  /** The same of what programs read: its lines stay whole on a terminal too. */
  void writeWhole(String text, PrintWriter standardOutput) {
    if (file().isEmpty()) {
      VisibleWriter.printWhole(standardOutput, text);
    } else {
      write(text, standardOutput);
    }
  }

  /** Writes files, all or none. */
  void write(List<Output> outputs) {
    write(outputs, force);
  }

  /** Puts the revised text of a file into its place; refused where the file no longer holds the text that was revised. */
  static void revise(Path file, String was, String now) {
    write(List.of(Output.revision(file, was, now)), false);
  }

  /** A new plan, which is the one result that is a plan. */
  static void writePlan(Output plan, boolean force) {
    put(List.of(plan), force);
  }

  /** Refuses results that would take the place of a plan, with --force too: it is never an earlier result, and often the input. */
  static void write(List<Output> outputs, boolean force) {
    for (Output output : outputs) {
      if (String.valueOf(output.target().getFileName()).endsWith(".wattle") && output.was().isEmpty()) {
        throw new Failure("cannot write " + output.target() + ": that name is for plans, and this result is not a plan; choose "
            + "another name");
      }
    }
    put(outputs, force);
  }

  private static void put(List<Output> outputs, boolean force) {
    try {
      OutputFiles.write(outputs, force);
    } catch (OutputException e) {
      throw new Failure(e.getMessage());
    }
  }
}
