package wattle.emit.media.file;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.ThreadLocalRandom;

/** Prepared files of runs that were killed before they could put them into their place or remove them. */
final class Leftovers {
  private static final String START = ".wattle-";
  private static final String END = ".part";

  /** No run takes this long between preparing a file and putting it into its place. */
  private static final Duration OLD = Duration.ofHours(1);

  /** A name that no file has, in the folder of another. */
  static Path nameBeside(Path place) {
    return place.resolveSibling(START + Long.toHexString(ThreadLocalRandom.current().nextLong()) + END);
  }

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

  /** Removes second names of a file that a killed run gave it; to be called by who holds it, since others give such names too. */
  static void dropNamesOf(Path place, Object key) throws IOException {
    try (DirectoryStream<Path> left = Files.newDirectoryStream(place.getParent(), START + "*" + END)) {
      for (Path part : left) {
        if (Files.readAttributes(part, BasicFileAttributes.class).fileKey().equals(key)) {
          Files.delete(part);
        }
      }
    } catch (NoSuchFileException | DirectoryIteratorException e) {
      return; // another run has just removed its own
    }
  }

  private Leftovers() {}
}
