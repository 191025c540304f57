package wattle.emit.media.file;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;

/** Prepared files of runs that were killed before they could put them into their place or remove them. */
final class Leftovers {
  static final String START = ".wattle-";
  static final String END = ".part";

  /** No run takes this long between preparing a file and putting it into its place. */
  private static final Duration OLD = Duration.ofHours(1);

  /** Removes those of a folder that no run can be working on any more. */
  static void sweep(Path folder) {
    Instant since = Instant.now().minus(OLD);
    try (DirectoryStream<Path> left = Files.newDirectoryStream(folder, START + "*" + END)) {
      for (Path part : left) {
        if (Files.getLastModifiedTime(part).toInstant().isBefore(since)) {
          Files.deleteIfExists(part);
        }
      }
    } catch (IOException e) {
      // They are in nobody's way; a folder that cannot be listed is told of when something is written there.
      return;
    }
  }

  private Leftovers() {}
}
