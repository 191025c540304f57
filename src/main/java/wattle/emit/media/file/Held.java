package wattle.emit.media.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;

/**
 * A file that is being revised, held open from the last look at it until its revision is in its place. Another command of ours waits
 * for it, and finds it changed; an editor waits for nobody, but what it writes into the file that is held is seen here.
 */
final class Held implements AutoCloseable {
  private final Path place;
  private final FileChannel channel;
  private final Object key;

  private Held(Path place, FileChannel channel, Object key) {
    this.place = place;
    this.channel = channel;
    this.key = key;
  }

  /**
   * Opens and locks a file, and waits until who holds it lets it go.
   *
   * @return absent where the file system tells one file from another by its name alone: there no revision can be put in the place of a
   *     file that is open
   * @throws ChangedException if another thread of this process holds it, and is about to change it
   */
  static Optional<Held> of(Path place) throws IOException {
    Object key = key(place);
    if (key == null) {
      return Optional.empty();
    }
    FileChannel channel = FileChannel.open(place, StandardOpenOption.READ, StandardOpenOption.WRITE);
    try {
      lock(channel);
      Leftovers.dropNamesOf(place, key);
      return Optional.of(new Held(place, channel, key));
    } catch (IOException e) {
      channel.close();
      throw e;
    }
  }

  /** The lock goes with the channel. */
  private static void lock(FileChannel channel) throws ChangedException {
    try {
      channel.lock();
    } catch (OverlappingFileLockException e) {
      throw new ChangedException();
    } catch (IOException e) {
      // Some shared folders know no locks; what the file holds is looked at all the same.
      return;
    }
  }

  /** The file no longer holds what was revised. */
  static final class ChangedException extends IOException {
    private static final long serialVersionUID = 1;
  }

  private static Object key(Path place) throws IOException {
    try {
      return Files.readAttributes(place, BasicFileAttributes.class).fileKey();
    } catch (NoSuchFileException e) {
      return null;
    }
  }

  /** Whether the held file still has its name, and this content. */
  boolean isInPlaceWith(byte[] content) throws IOException {
    return Arrays.equals(content(), content) && Objects.equals(key(place), key);
  }

  /**
   * Puts another file in the place of the held one.
   *
   * @param before what the held file must hold until then
   * @throws ChangedException if somebody has written into it, or put another in its place; then that stays. What is put there by renaming
   *     in the very moment between this look and our own renaming, some millionths of a second, cannot be seen
   */
  void replaceBy(Path prepared, byte[] before) throws IOException {
    Path kept = Leftovers.nameBeside(place);
    boolean isKept = keep(kept);
    try {
      if (!isInPlaceWith(before)) {
        throw new ChangedException();
      }
      Placement.rename(prepared, place);
      if (isKept && !Arrays.equals(content(), before)) {
        // Somebody is saving into the file that was there: it is put back as it is, and what is still written goes on into it.
        Placement.rename(kept, place);
        throw new ChangedException();
      }
    } finally {
      Files.deleteIfExists(kept);
    }
  }

  /** Gives the held file a second name, so that it can be put back; false on a file system that knows of none. */
  private boolean keep(Path kept) throws IOException {
    try {
      Files.createLink(kept, place);
      return Objects.equals(key(kept), key);
    } catch (UnsupportedOperationException | FileSystemException e) {
      return false; // such as on a memory stick; what the file holds is still looked at before the renaming
    }
  }

  private byte[] content() throws IOException {
    // To open it once more and close it would give the lock back.
    ByteBuffer content = ByteBuffer.allocate(Math.toIntExact(channel.size()));
    while (content.hasRemaining() && channel.read(content, content.position()) >= 0) {
      continue;
    }
    return Arrays.copyOf(content.array(), content.position());
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
