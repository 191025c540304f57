package wattle.server;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.Optional;

/**
 * How a file stood on disk, to notice that it has changed.
 *
 * @param changed absent for a file that is not there
 */
record FileStamp(Optional<FileTime> changed, long bytes) {
  static FileStamp of(Path file) {
    try {
      BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
      return new FileStamp(Optional.of(attributes.lastModifiedTime()), attributes.size());
    } catch (IOException e) {
      return new FileStamp(Optional.empty(), 0); // gone, or as good as gone; the compiler will say what is wrong with it
    }
  }
}
