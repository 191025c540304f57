package wattle.cli;

import java.io.FileNotFoundException;
import picocli.CommandLine.Option;
import wattle.emit.media.graphviz.DotEngine;

/** Which engine lays diagrams out. */
final class EngineOption {
  /** Where the engine comes from. */
  enum Place {
    EMBEDDED, NATIVE
  }

  @Option(
      names = "--engine",
      description = "embedded, or native for the dot program of this machine (default: embedded).",
      defaultValue = "EMBEDDED")
  private Place engine;

  @Option(names = "--dot", paramLabel = "PROGRAM", description = "The dot program that --engine native runs (default: dot).",
      defaultValue = "dot")
  private String program;

  /** The engine, starting in the background. */
  DotEngine start() {
    try {
      DotEngine chosen = engine == Place.NATIVE ? DotEngine.installed(program) : DotEngine.builtIn();
      chosen.warmUp();
      return chosen;
    } catch (FileNotFoundException e) {
      throw new Failure("there is no program " + program + " to lay diagrams out; leave out --engine native, or name it with --dot");
    }
  }
}
