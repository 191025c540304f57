package wattle.emit.media.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.UserDefinedFileAttributeView;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * A short digest by which a content is known again. For formats that have no place for a {@link Mark} it is kept beside the
 * content, as an attribute of the file: a CSV into which somebody wrote a reading no longer has the content that we wrote.
 */
final class Digest {
  private static final String ATTRIBUTE = "wattle.digest";
  private static final int DIGITS = 16;

  /** The digest of a text as UTF-8. */
  static String of(String text) {
    return of(text.getBytes(StandardCharsets.UTF_8));
  }

  /** Sixteen hexadecimal digits of the SHA-256 of a content. */
  static String of(byte[] content) {
    try {
      byte[] whole = MessageDigest.getInstance("SHA-256").digest(content);
      return HexFormat.of().formatHex(whole).substring(0, DIGITS);
    } catch (NoSuchAlgorithmException e) {
      throw new AssertionError("every Java machine has SHA-256", e);
    }
  }

  /** Notes at a file that we wrote this content; a file system that keeps no such notes makes the next run ask for --force. */
  static void note(Path file, byte[] content) {
    UserDefinedFileAttributeView notes = Files.getFileAttributeView(file, UserDefinedFileAttributeView.class);
    if (notes == null) {
      return;
    }
    try {
      notes.write(ATTRIBUTE, StandardCharsets.US_ASCII.encode(of(content)));
    } catch (IOException e) {
      // Without the note the file counts as somebody else's, which loses nothing.
      return;
    }
  }

  /** Whether a file has the very content of which we noted that we wrote it. */
  static boolean isNoted(Path file, byte[] content) {
    UserDefinedFileAttributeView notes = Files.getFileAttributeView(file, UserDefinedFileAttributeView.class);
    if (notes == null) {
      return false;
    }
    try {
      ByteBuffer noted = ByteBuffer.allocate(DIGITS);
      return notes.list().contains(ATTRIBUTE) && notes.size(ATTRIBUTE) == DIGITS && notes.read(ATTRIBUTE, noted) == DIGITS
          && StandardCharsets.US_ASCII.decode(noted.flip()).toString().equals(of(content));
    } catch (IOException e) {
      return false; // what cannot be known is somebody else's
    }
  }

  private Digest() {}
}
