package wattle.emit.media.file;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/**
 * A result and where it is to go.
 *
 * @param target the file, as the user named it
 * @param content its bytes; not copied, so leave them alone
 */
public record Output(Path target, byte[] content) {

  /** A text, written as UTF-8. */
  public static Output text(Path target, String content) {
    return new Output(target, content.getBytes(StandardCharsets.UTF_8));
  }
}
