package wattle.emit.media.file;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
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

/** One output on its way to its place: looked at, written beside it, renamed. */
final class Placement {
  private static final byte[] BYTE_ORDER_MARK = "\uFEFF".getBytes(StandardCharsets.UTF_8);

  private final Output output;
  private final Path place;
  private final Optional<byte[]> before;
  private final boolean force;
  private Optional<Path> part = Optional.empty();
  private Optional<Held> held = Optional.empty();

  private Placement(Output output, Path place, Optional<byte[]> before, boolean force) {
    this.output = output;
    this.place = place;
    this.before = before;
    this.force = force;
  }

  Path place() {
    return place;
  }

  /** Looks at what lies at the target, and refuses what must not or cannot be written. */
  static Placement of(Output output, boolean force) throws OutputException {
    Path target = output.target();
    try {
      // A link keeps its place; what it names is replaced.
      if (Files.isSymbolicLink(target) && !Files.exists(target)) {
        throw refused(target, "it is a link to " + Files.readSymbolicLink(target) + ", which is not there; name that file");
      }
      Path place = Files.exists(target) ? target.toRealPath() : target.toAbsolutePath();
      if (Files.isDirectory(place)) {
        throw refused(target, "it is a folder; name a file in it");
      }
      if (isDevice(place)) {
        return new Placement(output, place, Optional.empty(), force);
      }
      Path folder = place.getParent();
      if (!Files.isDirectory(folder)) {
        String named = String.valueOf(target.getParent());
        throw refused(target, Files.exists(folder) ? named + " is not a folder" : "there is no folder " + named);
      }
      if (!exists(place)) {
        return new Placement(output, place, Optional.empty(), force);
      }
      byte[] before = Files.readAllBytes(place);
      if (output.was().isPresent()) {
        return revision(output, place, before);
      }
      if (!force && !isOurs(place, before) && !Arrays.equals(before, output.content())) {
        throw refused(target,
            "it exists and was not made by Wattle, or was changed since; choose another name, or replace it with --force");
      }
      if (!force && !Files.isWritable(place)) {
        throw refused(target, "it is write-protected; replace it with --force");
      }
      return new Placement(output, place, Optional.of(before), force);
    } catch (OutputException e) {
      throw e;
    } catch (IOException e) {
      throw refused(target, e);
    }
  }

  /** A file that is revised must hold what was revised; the byte order mark that it may begin with is kept. */
  private static Placement revision(Output output, Path place, byte[] before) throws OutputException {
    byte[] was = output.was().orElseThrow().getBytes(StandardCharsets.UTF_8);
    boolean marked = Arrays.equals(before, joined(BYTE_ORDER_MARK, was));
    if (!marked && !Arrays.equals(before, was)) {
      throw changed(output.target());
    }
    if (!Files.isWritable(place)) {
      throw refused(output.target(), "it is write-protected; make it writable first");
    }
    byte[] content = marked ? joined(BYTE_ORDER_MARK, output.content()) : output.content();
    return new Placement(new Output(output.target(), content, output.was(), false), place, Optional.of(before), false);
  }

  private static byte[] joined(byte[] first, byte[] second) {
    byte[] both = Arrays.copyOf(first, first.length + second.length);
    System.arraycopy(second, 0, both, first.length, second.length);
    return both;
  }

  /** Whether what lies there is an earlier result into which nobody wrote, or nothing. */
  private static boolean isOurs(Path place, byte[] before) {
    return before.length == 0 || Mark.isIn(before) || Digest.isNoted(place, before);
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
    Leftovers.sweep(place.getParent());
    Path beside = Leftovers.nameBeside(place);
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
      if (output.was().isEmpty() && !output.handedOver()) {
        Digest.note(beside, output.content());
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
      if (part.isPresent() && hasOtherNames(place)) {
        refuseWhatIsWrittenMeanwhile();
        // A new file in its place would leave the other names with the old content. What was prepared stays until this is done.
        Files.write(place, output.content(), StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING, StandardOpenOption.SYNC);
      } else if (part.isPresent()) {
        putInPlace(part.get());
      } else {
        try (OutputStream out = Files.newOutputStream(place, StandardOpenOption.WRITE)) {
          out.write(output.content());
        }
      }
      return before.isPresent() ? Written.REPLACED : Written.CREATED;
    } catch (OutputException e) {
      throw e;
    } catch (Held.ChangedException e) {
      throw changed(output.target());
    } catch (IOException e) {
      throw refused(output.target(), e);
    }
  }

  /** Looks once more: what somebody has written there since is not replaced. What is revised is held until it is done. */
  void lookAgain() throws OutputException {
    try {
      if (part.isPresent() && output.was().isPresent() && held.isEmpty()) {
        held = Held.of(place);
      }
      refuseWhatIsWrittenMeanwhile();
    } catch (OutputException e) {
      throw e;
    } catch (Held.ChangedException | NoSuchFileException e) {
      throw changed(output.target());
    } catch (IOException e) {
      throw refused(output.target(), e);
    }
  }

  private void putInPlace(Path prepared) throws IOException {
    if (before.isEmpty() && !force && isNew(prepared)) {
      return;
    }
    if (held.isPresent()) {
      held.get().replaceBy(prepared, before.orElseThrow());
    } else {
      refuseWhatIsWrittenMeanwhile();
      rename(prepared, place);
    }
    part = Optional.empty();
  }

  /** Gives what was prepared its name without taking the name from another file; false where one has it by now, or cannot have two. */
  private boolean isNew(Path prepared) throws IOException {
    try {
      Files.createLink(place, prepared);
      return true; // the name that it was prepared under goes in the end
    } catch (UnsupportedOperationException | FileSystemException e) {
      return false; // the caller looks again whether a file is there, and renames where none is
    }
  }

  private void refuseWhatIsWrittenMeanwhile() throws IOException {
    if (part.isPresent() && !force && isWrittenMeanwhile()) {
      throw output.was().isPresent()
          ? changed(output.target())
          : refused(output.target(), "it was changed in the meantime; choose another name, or replace it with --force");
    }
  }

  /** What Wattle itself made meanwhile is no loss, but in a revision. */
  private boolean isWrittenMeanwhile() throws IOException {
    if (!exists(place)) {
      return output.was().isPresent();
    }
    if (held.isPresent()) {
      return !held.get().isInPlaceWith(before.orElseThrow());
    }
    byte[] now = Files.readAllBytes(place);
    boolean asBefore = before.isPresent() && Arrays.equals(now, before.get());
    return !asBefore && (output.was().isPresent() || !isOurs(place, now) && !Arrays.equals(now, output.content()));
  }

  /** Whether the file has hard links, where the file system knows of such. */
  private static boolean hasOtherNames(Path place) throws IOException {
    return Files.exists(place) && Files.getFileStore(place).supportsFileAttributeView("unix")
        && Files.getAttribute(place, "unix:nlink") instanceof Integer names && names > 1;
  }

  static void rename(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /** Removes what was prepared and not put into its place, and lets go what was held. */
  void discard() {
    held.ifPresent(file -> {
      try {
        file.close();
      } catch (IOException e) {
        throw new UncheckedIOException(e); // nothing was written through it
      }
    });
    part.ifPresent(left -> {
      try {
        Files.deleteIfExists(left);
      } catch (IOException e) {
        left.toFile().deleteOnExit(); // the failure before this one is told; this is the last that can be done
      }
    });
  }

  private static OutputException changed(Path target) {
    return refused(target, "it was changed in the meantime; run the command again");
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
