package wattle.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/**
 * The folder of a plan as a version-control revision had it, unpacked where it can be read and removed when closed. Git
 * itself is asked, with the revision as one argument of its own, so that no name can become an option or a command.
 */
final class Revision implements AutoCloseable {
  private final Path folder;
  private final Path plan;

  private Revision(Path folder, Path plan) {
    this.folder = folder;
    this.plan = plan;
  }

  /** Where the plan of that revision lies. */
  Path plan() {
    return plan;
  }

  static Revision of(String revision, Path plan) {
    Path absolute = plan.toAbsolutePath().normalize();
    Path parent = absolute.getParent();
    if (revision.startsWith("-")) {
      throw new Failure("'" + revision + "' is not a revision");
    }
    // Checked before the archive is asked for, so that the message speaks of the revision and not of trees.
    try {
      git("the repository of " + plan + " has no revision '" + revision + "'", parent, "rev-parse", "--verify", "--quiet",
          "--end-of-options", revision + "^{commit}");
    } catch (Failure e) {
      prefix(plan, parent); // fails where there is no repository, and says so
      throw e;
    }
    byte[] archive = git("git cannot pack revision " + revision, parent, "archive", "--format=zip", revision, "--", ".");
    try {
      Path folder = Files.createTempDirectory("wattle-revision");
      unpack(archive, folder);
      Path at = folder.resolve(absolute.getFileName());
      if (!Files.exists(at)) {
        at = folder.resolve(prefix(plan, parent)).resolve(absolute.getFileName());
      }
      Revision unpacked = new Revision(folder, at);
      if (!Files.exists(at)) {
        unpacked.close();
        throw new Failure("revision " + revision + " has no " + plan);
      }
      return unpacked;
    } catch (IOException e) {
      throw new Failure("cannot unpack revision " + revision + ": " + e.getMessage());
    }
  }

  /** The folder of the plan within its repository. */
  private static String prefix(Path plan, Path parent) {
    return new String(git("'" + plan + "' is not in a git "
        + "repository", parent, "rev-parse", "--show-prefix"), StandardCharsets.UTF_8).strip();
  }

  private static void unpack(byte[] archive, Path folder) throws IOException {
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(archive))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        Path target = folder.resolve(entry.getName()).normalize();
        if (!entry.isDirectory() && target.startsWith(folder) && entry.getName().endsWith(".wattle")) {
          Files.createDirectories(target.getParent());
          Files.copy(zip, target);
        }
      }
    }
  }

  /** What git answers, line by line; nothing where it has no answer, such as for a revision that is not there. */
  static List<String> lines(Path folder, String... arguments) {
    try {
      return new String(git("", folder, arguments), StandardCharsets.UTF_8).lines().toList();
    } catch (Failure e) {
      return List.of();
    }
  }

  /** @param otherwise what a failure means, in words for the user */
  private static byte[] git(String otherwise, Path folder, String... arguments) {
    List<String> command = new ArrayList<>(List.of("git", "-C", folder.toString()));
    command.addAll(List.of(arguments));
    try {
      Process git = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.PIPE).start();
      git.getOutputStream().close();
      byte[] out;
      String err;
      try (InputStream errors = git.getErrorStream(); InputStream in = git.getInputStream()) {
        out = in.readAllBytes();
        err = new String(errors.readAllBytes(), StandardCharsets.UTF_8).strip();
      }
      if (git.waitFor() != 0) {
        throw new Failure(otherwise + err.lines().findFirst().map(said -> " (" + said + ")").orElse(""));
      }
      return out;
    } catch (IOException e) {
      throw new Failure("git cannot be run: " + e.getMessage());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new Failure("interrupted while git was running");
    }
  }

  @Override
  public void close() {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new Failure("cannot remove " + folder + ": " + e.getMessage());
    }
  }
}
