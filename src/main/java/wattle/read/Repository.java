package wattle.read;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** The folder that a plan is under version control in. */
public final class Repository {
  private Repository() {}

  /** The nearest folder at or above that of a file which is under version control with git. */
  public static Optional<Path> of(Path file) {
    for (Path folder = file.toAbsolutePath().normalize().getParent(); folder != null; folder = folder.getParent()) {
      if (Files.exists(folder.resolve(".git"))) {
        return Optional.of(folder);
      }
    }
    return Optional.empty();
  }
}
