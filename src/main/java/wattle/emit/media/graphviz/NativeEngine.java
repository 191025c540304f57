package wattle.emit.media.graphviz;

import guru.nidi.graphviz.engine.Engine;
import guru.nidi.graphviz.engine.Format;
import guru.nidi.graphviz.engine.GraphvizException;
import java.io.File;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.stream.Stream;

/**
 * Runs an installed {@code dot}, a process a graph, through its standard streams: no shell and no temporary file, so
 * neither a path with spaces nor a hostile label needs care.
 */
final class NativeEngine extends DotEngine {
  private final Path program;

  NativeEngine(Path program) {
    this.program = program;
  }

  static Path find(String program) throws FileNotFoundException {
    Stream<Path> candidates = program.contains(File.separator)
        ? Stream.of(Path.of(program))
        : Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
            .filter(folder -> !folder.isEmpty())
            .flatMap(folder -> Stream.of(Path.of(folder, program), Path.of(folder, program + ".exe")));
    return candidates.filter(path -> Files.isRegularFile(path) && Files.isExecutable(path)).findFirst()
        .orElseThrow(() -> new FileNotFoundException("there is no program '" + program
            + "' to run; install Graphviz, or leave the choice of engine out to use the one that is built in"));
  }

  @Override
  protected void doInit() {}

  @Override
  public void warmUp() {}

  @Override
  public Rendering render(String dot, Engine layout, Format format) {
    try {
      Process process = new ProcessBuilder(program.toString(), "-K" + nameOf(layout), "-T" + nameOf(format)).start();
      CompletableFuture<String> messages = CompletableFuture.supplyAsync(() -> read(process.getErrorStream()));
      CompletableFuture<Void> sent = CompletableFuture.runAsync(() -> send(dot, process.getOutputStream()));
      String picture = read(process.getInputStream());
      int code = process.waitFor();
      String said = messages.join().strip();
      if (code != 0) {
        throw new GraphvizException(program + " ended with code " + code + ": " + said.replace("\n", "; "));
      }
      sent.join();
      return new Rendering(picture, said.isEmpty() ? List.of() : said.lines().toList());
    } catch (IOException | CompletionException e) {
      throw new GraphvizException("cannot run " + program + ": " + e.getMessage(), e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new GraphvizException("interrupted while " + program + " was running", e);
    }
  }

  private static String read(InputStream in) {
    try (in) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new CompletionException(e);
    }
  }

  private static void send(String dot, OutputStream out) {
    try (out) {
      out.write(dot.getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new CompletionException(e);
    }
  }
}
