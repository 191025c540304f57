package wattle.emit.media.file;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;

/**
 * A result and where it is to go.
 *
 * @param target the file, as the user named it
 * @param content its bytes; not copied, so leave them alone
 * @param was the text that the file must still have, where the content is a revision of it; a byte order mark before it is kept
 * @param handedOver whether it is the user's own work once it is written, such as a first plan, which no later result replaces unasked
 */
public record Output(Path target, byte[] content, Optional<String> was, boolean handedOver) {

  /** A result of its own, for a file that holds nothing or an earlier result. */
  public Output(Path target, byte[] content) {
    this(target, content, Optional.empty(), false);
  }

  /** A text, written as UTF-8. */
  public static Output text(Path target, String content) {
    return new Output(target, content.getBytes(StandardCharsets.UTF_8));
  }

  /** A text that is the user's own work from now on. */
  public static Output handedOver(Path target, String content) {
    return new Output(target, content.getBytes(StandardCharsets.UTF_8), Optional.empty(), true);
  }

  /** A file that somebody wrote, revised: refused if it no longer holds the text that was revised. */
  public static Output revision(Path target, String was, String now) {
    return new Output(target, now.getBytes(StandardCharsets.UTF_8), Optional.of(was), false);
  }
}
