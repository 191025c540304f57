package wattle.cli;

import java.io.FileNotFoundException;
import java.util.Optional;
import picocli.CommandLine.Option;
import wattle.emit.media.graphviz.DotEngine;

/** Which engine for graphs lays the one-line diagram out, where somebody wants one. */
final class EngineOption {
  /** Where the engine comes from. */
  enum Place {
    EMBEDDED, NATIVE
  }

  @Option(
      names = "--engine",
      description = "The Graphviz that lays out the one-line diagram: embedded, or native for the dot program on this computer.")
  private Place engine;

  @Option(names = "--dot", paramLabel = "PROGRAM", description = "The dot program that --engine native runs (default: dot).",
      defaultValue = "dot")
  private String program;

  boolean isAsked() {
    return engine != null;
  }

  /** The engine that somebody asked for, starting in the background. */
  Optional<DotEngine> start() {
    if (engine == null) {
      return Optional.empty();
    }
    try {
      DotEngine chosen = engine == Place.NATIVE ? DotEngine.installed(program) : DotEngine.builtIn();
      chosen.warmUp();
      return Optional.of(chosen);
    } catch (FileNotFoundException e) {
      throw new Failure("there is no program " + program + " to lay diagrams out; leave out --engine native, or name it with --dot");
    }
  }
}
