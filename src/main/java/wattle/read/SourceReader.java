package wattle.read;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import wattle.finding.Source;
import wattle.quantity.Quantity;

/**
 * Reads source texts from disk, or from an editor that holds them unsaved.
 *
 * @param unsaved texts by absolute path that stand in for what is on disk
 * @param mostBytes the largest plan that is read, all its files together
 * @param mostPlaced the most things that patterns of a plan may place
 */
public record SourceReader(Map<Path, String> unsaved, long mostBytes, int mostPlaced) {
  /** Most that patterns place unless told otherwise; a tower of 2,500 dwellings, each with a panel, ten branches and eight rooms. */
  public static final int USUAL_MOST_PLACED = 50_000;

  /** In MiB, the largest plan read unless told otherwise. */
  public static final int USUAL_MOST_MIB = 8;

  /**
   * The same in bytes. A plan of 100,000 lines is two thirds of it, and whatever a text of this size holds, 1 GiB of memory is enough to
   * say what is wrong with it.
   */
  public static final long USUAL_MOST_BYTES = (long) USUAL_MOST_MIB << 20;

  public static final SourceReader FROM_DISK = new SourceReader(Map.of(), USUAL_MOST_BYTES);

  public SourceReader(Map<Path, String> unsaved, long mostBytes) {
    this(unsaved, mostBytes, USUAL_MOST_PLACED);
  }

  public SourceReader {
    unsaved = Map.copyOf(unsaved);
  }

  /** A text that cannot be read; the message is one line and names the file. */
  public static final class Unreadable extends Exception {
    private static final long serialVersionUID = 1;

    Unreadable(String message) {
      super(message);
    }
  }

  /** The text of a file, under the name a reader is shown. */
  public Source read(Path path, String shownName) throws Unreadable {
    String held = unsaved.get(path.toAbsolutePath().normalize());
    if (held != null && held.length() > mostBytes) {
      throw tooLarge(shownName, held.length());
    }
    return held != null ? new Source(shownName, held) : decode(bytes(path, shownName), shownName);
  }

  /** The text of bytes that came another way, such as standard input. */
  public Source decode(byte[] bytes, String shownName) throws Unreadable {
    if (bytes.length > mostBytes) {
      throw tooLarge(shownName, bytes.length);
    }
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == 0) {
        throw new Unreadable(shownName + ": not a text: byte " + (i + 1) + " is zero; a plan is a UTF-8 text");
      }
    }
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return new Source(shownName, text.startsWith("\uFEFF") ? text.substring(1) : text);
    } catch (CharacterCodingException e) {
      throw new Unreadable(
          shownName + ":" + lineOfBadByte(bytes) + ": not UTF-8; save the file as UTF-8 and try again");
    }
  }

  /**
   * What can be read of a file that is not UTF-8: letters that cannot be are U+FFFD; nothing of one that is no text or too
   * large. Absent where there is no such file or it may not be read.
   */
  public Optional<String> readable(Path path) {
    try {
      if (Files.size(path) > mostBytes) {
        return Optional.of("");
      }
      String text = new String(Files.readAllBytes(path), StandardCharsets.UTF_8);
      return Optional.of(text.indexOf('\0') >= 0 ? "" : text);
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private byte[] bytes(Path path, String shownName) throws Unreadable {
    try {
      if (Files.isDirectory(path)) {
        throw new Unreadable(shownName + ": is a folder; name a plan in it, such as house.wattle");
      }
      if (Files.exists(path) && !Files.isRegularFile(path)) {
        throw new Unreadable(shownName + ": is not a plain file");
      }
      long size = Files.size(path);
      if (size > mostBytes) {
        throw tooLarge(shownName, size);
      }
      return Files.readAllBytes(path);
    } catch (NoSuchFileException e) {
      throw new Unreadable(shownName + ": no such file");
    } catch (AccessDeniedException e) {
      throw new Unreadable(shownName + ": may not be read; check its permissions");
    } catch (IOException e) {
      throw new Unreadable(shownName + ": cannot be read: " + e.getMessage());
    }
  }

  private Unreadable tooLarge(String shownName, long size) {
    return new Unreadable(
        shownName + ": " + Quantity.plain(Math.ceil(size / (double) (1 << 20) * 10) / 10, 3) + " MiB is over the limit of "
            + (mostBytes >> 20)
            + " MiB; raise it with --largest-file, or split the plan");
  }

  private static int lineOfBadByte(byte[] bytes) {
    var decoder = StandardCharsets.UTF_8.newDecoder();
    ByteBuffer in = ByteBuffer.wrap(bytes);
    decoder.decode(in, java.nio.CharBuffer.allocate(bytes.length), true);
    int line = 1;
    for (int i = 0; i < in.position(); i++) {
      line += bytes[i] == '\n' ? 1 : 0;
    }
    return line;
  }
}
