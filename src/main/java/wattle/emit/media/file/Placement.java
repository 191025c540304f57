package wattle.emit.media.file;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.ThreadLocalRandom;

/** One output on its way to its place: looked at, written beside it, renamed. */
final class Placement {
  private final Output output;
  private final Path place;
  private final Optional<byte[]> before;
  private Optional<Path> part = Optional.empty();

  private Placement(Output output, Path place, Optional<byte[]> before) {
    this.output = output;
    this.place = place;
    this.before = before;
  }

  /** Looks at what lies at the target, and refuses what must not or cannot be written. */
  static Placement of(Output output, boolean force) throws OutputException {
    Path target = output.target();
    try {
      // A link keeps its place; what it names is replaced.
      Path place = Files.exists(target) ? target.toRealPath() : target.toAbsolutePath();
      if (Files.isDirectory(place)) {
        throw refused(target, "it is a folder; name a file in it");
      }
      if (isDevice(place)) {
        return new Placement(output, place, Optional.empty());
      }
      Path folder = place.getParent();
      if (!Files.isDirectory(folder)) {
        String named = String.valueOf(target.getParent());
        throw refused(target, Files.exists(folder) ? named + " is not a folder" : "there is no folder " + named);
      }
      if (!exists(place)) {
        return new Placement(output, place, Optional.empty());
      }
      byte[] before = Files.readAllBytes(place);
      if (!force && !Ownership.isOurs(before, output.content())) {
        throw refused(target, "it exists and was not made by Wattle; choose another name, or replace it with --force");
      }
      if (!force && !Files.isWritable(place)) {
        throw refused(target, "it is write-protected; replace it with --force");
      }
      return new Placement(output, place, Optional.of(before));
    } catch (OutputException e) {
      throw e;
    } catch (IOException e) {
      throw refused(target, e);
    }
  }

  /** Whether a file is there; a name that no file can have is found out before anything is written. */
  private static boolean exists(Path place) throws IOException {
    try {
      Files.readAttributes(place, BasicFileAttributes.class);
      return true;
    } catch (NoSuchFileException e) {
      return false;
    }
  }

  /** Such as /dev/stdout or a named pipe: there is nothing to keep and nothing to rename. */
  private static boolean isDevice(Path place) {
    return Files.exists(place) && !Files.isRegularFile(place) && !Files.isDirectory(place);
  }

  private boolean isUnchanged() {
    return before.isPresent() && Arrays.equals(before.get(), output.content());
  }

  /** Writes the content beside its place, where it differs from what lies there. */
  void prepare() throws OutputException {
    if (isUnchanged() || isDevice(place)) {
      return;
    }
    Path beside = place.resolveSibling(".wattle-" + Long.toHexString(ThreadLocalRandom.current().nextLong()) + ".part");
    try (FileChannel channel = FileChannel.open(beside, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      part = Optional.of(beside);
      ByteBuffer rest = ByteBuffer.wrap(output.content());
      while (rest.hasRemaining()) {
        channel.write(rest);
      }
      channel.force(false); // so that a loss of power cannot leave a name without its content
      if (before.isPresent()) {
        keepPermissions(place, beside);
      }
    } catch (IOException e) {
      throw refused(output.target(), e);
    }
  }

  private static void keepPermissions(Path from, Path to) throws IOException {
    PosixFileAttributeView old = Files.getFileAttributeView(from, PosixFileAttributeView.class);
    if (old != null) {
      Files.setPosixFilePermissions(to, old.readAttributes().permissions());
    }
  }

  /** Puts what was prepared into its place. */
  Written finish() throws OutputException {
    if (isUnchanged()) {
      return Written.UNCHANGED;
    }
    try {
      if (part.isPresent()) {
        rename(part.get(), place);
        part = Optional.empty();
      } else {
        try (OutputStream out = Files.newOutputStream(place, StandardOpenOption.WRITE)) {
          out.write(output.content());
        }
      }
      return before.isPresent() ? Written.REPLACED : Written.CREATED;
    } catch (IOException e) {
      throw refused(output.target(), e);
    }
  }

  private static void rename(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /** Removes what was prepared and not put into its place. */
  void discard() {
    part.ifPresent(left -> {
      try {
        Files.deleteIfExists(left);
      } catch (IOException e) {
        left.toFile().deleteOnExit(); // the failure before this one is told; this is the last that can be done
      }
    });
  }

  private static OutputException refused(Path target, String why) {
    return new OutputException("cannot write " + target + ": " + why);
  }

  private static OutputException refused(Path target, IOException e) {
    String why = String.valueOf(e.getMessage());
    if (e instanceof AccessDeniedException) {
      why = "you may not write there";
    } else if (e instanceof FileSystemException system && system.getReason() != null) {
      why = system.getReason();
    }
    return new OutputException("cannot write " + target + ": " + why, e);
  }
}
